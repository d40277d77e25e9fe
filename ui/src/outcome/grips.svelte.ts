// The handle that is held: what it was, and what is typed for where it is dragged or stepped to.
import type { Handle } from '../bindings'
import type { Course } from '../common/course.svelte'
import type { Part, Place } from '../common/pixels'
import { draggedTo, held, steppedTo } from './grip'

/** `at`: the stop it is dragged to, which the plan follows. */
type Dragged = { handle: Handle; from: Place; part: Part; scale: number; at: number }

export class Grips {
  /** The handle under the pointer, as it was when it was taken hold of. */
  dragged: Dragged | undefined = $state.raw()
  #course: Course
  /** What stood in the file when this handle was come to, and what a stop there would type. */
  #start: { key: string; text: string; typed: string } | undefined

  constructor(course: Course) {
    this.#course = course
  }

  /** A handle is come to: what follows is one change to undo. */
  enter(handle: Handle) {
    this.#start = {
      key: handle.key,
      text: this.#course.view?.values[handle.key] ?? '',
      typed: handle.stops[handle.now]?.typed ?? '',
    }
    this.#course.enter(handle.key)
  }

  leave() {
    if (this.#start) this.#course.leave(this.#start.key)
    this.#start = undefined
    this.dragged = undefined
  }

  grab(handle: Handle, from: Place, part: Part, scale: number) {
    this.enter(handle)
    this.dragged = { handle, from, part, scale, at: handle.now }
  }

  drag(to: Place) {
    if (!this.dragged) return
    const { handle, from, scale } = this.dragged
    const at = draggedTo(handle, [to[0] - from[0], to[1] - from[1]], scale)
    if (at !== this.dragged.at) this.dragged = { ...this.dragged, at }
    this.#put(handle, at)
  }

  /** Gives whether the key meant the handle. */
  key(handle: Handle, key: string): boolean {
    if (key === 'Escape') return this.#back()
    const at = steppedTo(key, this.#now(handle), handle.stops.length)
    if (at === undefined) return false
    if (!this.#start) this.enter(handle)
    this.#put(handle, at)
    return true
  }

  /** The part of a drawing made anew that lies as it did when its handle was taken hold of. */
  part(handles: readonly Handle[]): Part | undefined {
    const before = this.dragged
    const after = handles.find((it) => it.id === before?.handle.id)
    return before && after && held(before.part, before.handle, after)
  }

  /** As it was before this handle was come to. */
  #back(): boolean {
    const start = this.#start
    if (!start || this.#course.text(start.key) === start.text) return false
    this.#course.type(start.key, start.text)
    this.leave()
    return true
  }

  /** The stop that was typed last, or the one the handle is at. */
  #now(handle: Handle): number {
    const typed = this.#course.refused[handle.key] ? undefined : this.#course.text(handle.key)
    const at = handle.stops.findIndex((it) => it.typed === typed)
    return at < 0 ? handle.now : at
  }

  #put(handle: Handle, at: number) {
    const typed = handle.stops[at]?.typed ?? ''
    // Back at where it began, the file says it in its own words again.
    const text = typed === this.#start?.typed ? this.#start.text : typed
    if (text !== this.#course.text(handle.key)) this.#course.type(handle.key, text)
  }
}
