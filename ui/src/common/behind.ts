// What stands behind figures and words, at hand in every place without being passed through all of them.
import { getContext, setContext } from 'svelte'
import { Glossary } from './glossary.svelte'
import { Reasons } from './reasons.svelte'

export type Behind = { reasons: Reasons; glossary: Glossary }
type Rust = ConstructorParameters<typeof Reasons>[0] & ConstructorParameters<typeof Glossary>[0]

const KEY = Symbol('behind')
const made = (rust: Rust): Behind => ({ reasons: new Reasons(rust), glossary: new Glossary(rust) })

/** Made once, by the window itself. */
export const putBehind = (rust: Rust): Behind => setContext(KEY, made(rust))

const trouble = { code: 'no-window', key: '', what: 'there is no window', cure: '' }
const none = async () => ({ ok: false, trouble }) as const

/** What the window has put there; a part that is shown by itself has no words and no reasons. */
export const behind = (): Behind => getContext<Behind | undefined>(KEY) ?? made({ reasons: none, words: none, sketch: none })
