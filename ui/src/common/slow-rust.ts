// Rust as far as editing goes, for tests: it refuses what it is told to, and answers when told to.
import { vi } from 'vitest'
import type { Reply } from '../backend'
import type { Trouble, View } from '../bindings'
import { Course } from './course.svelte'

export const trouble = (key: string): Trouble => ({ code: 'no', key, what: 'not that', cure: 'this' })

export class Rust {
  values: Record<string, string> = { 'wall.height': '1 m', 'wall.length': 'auto' }
  asked: [key: string, text: string][] = []
  /** Of each of them, whether it went on with the one before. */
  wentOn: boolean[] = []
  refuses = (_key: string, text: string): boolean => text === 'bad'
  #open: (() => void)[] = []
  held = false

  edit = async (key: string, text: string, goesOn: boolean): Promise<Reply<View>> => {
    this.asked.push([key, text])
    this.wentOn.push(goesOn)
    if (this.held) await new Promise<void>((resolve) => this.#open.push(resolve))
    if (this.refuses(key, text)) return { ok: false, trouble: trouble(key) }
    this.values = { ...this.values, [key]: text }
    return this.view()
  }

  view = (): Reply<View> => ({ ok: true, value: { values: this.values, advised: true } as View })

  async answer() {
    this.#open.shift()?.()
    await vi.advanceTimersByTimeAsync(0)
  }
}

/** A course that lies open over it, in a time that only goes on when told to. */
export async function openSlowly(): Promise<{ rust: Rust; course: Course }> {
  vi.useFakeTimers()
  const rust = new Rust()
  const course = new Course(rust)
  await course.replace(async () => rust.view())
  return { rust, course }
}

/** What was typed goes out, and its answer comes in. */
export const pause = () => vi.advanceTimersByTimeAsync(0)
