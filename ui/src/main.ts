import { mount } from 'svelte'
import './look/fonts.css'
import './look/colours.css'
import './look/base.css'
import './look/frame.css'
import './look/sheet.css'
import './look/drawing.css'
import './look/print.css'
import App from './App.svelte'

export default mount(App, { target: document.body })
