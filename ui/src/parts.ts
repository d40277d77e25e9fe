// What lies on the desk beside the view of the course, and what the places ask of it.
import type { ComponentProps } from 'svelte'
import type AfterPlace from './after/AfterPlace.svelte'
import type { Clock } from './clock.svelte'
import type DaysPlace from './days/DaysPlace.svelte'
import type GroupPlace from './group/GroupPlace.svelte'
import type LessonsPlace from './lessons/LessonsPlace.svelte'
import type LinePlace from './line/LinePlace.svelte'
import type LoadPlace from './load/LoadPlace.svelte'
import type OnTheDay from './OnTheDay.svelte'
import type PagesPlace from './pages/PagesPlace.svelte'
import type ReadyPlace from './ready/ReadyPlace.svelte'
import type StorePlace from './store/StorePlace.svelte'

/** One thing for each place that keeps something while another is open. */
export type Parts = Pick<ComponentProps<typeof GroupPlace>, 'course' | 'running' | 'paste'> &
  Pick<ComponentProps<typeof StorePlace>, 'store' | 'lots'> &
  Pick<ComponentProps<typeof LoadPlace>, 'ticks' | 'home'> &
  Pick<ComponentProps<typeof OnTheDay>, 'telling'> &
  Pick<ComponentProps<typeof PagesPlace>, 'printing' | 'sheet'> &
  ComponentProps<typeof LessonsPlace> &
  ComponentProps<typeof AfterPlace> & { clock: Clock }

/** What a press in a place does to the course. */
export type Actions = ComponentProps<typeof DaysPlace>['actions'] &
  ComponentProps<typeof LinePlace>['actions'] &
  ComponentProps<typeof LoadPlace>['actions'] &
  Pick<ComponentProps<typeof ReadyPlace>, 'mark'> &
  Pick<ComponentProps<typeof OnTheDay>, 'undo'>
