// The only file that reads the clock of this machine.
import type { WallClock } from './common/wall-clock'

/** How often it is looked at. */
const EVERY_MS = 15_000

const two = (number: number) => String(number).padStart(2, '0')

function read(): WallClock {
  const now = new Date()
  return {
    date: `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`,
    time: `${two(now.getHours())}:${two(now.getMinutes())}`,
  }
}

/** The clock on the wall, as long as the window is open. */
export class Clock {
  now: WallClock = $state.raw(read())

  constructor() {
    setInterval(() => (this.now = read()), EVERY_MS)
  }
}
