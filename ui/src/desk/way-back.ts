// The engine's own way back through what was typed, which nobody here can go: Ctrl and Z take back changes of
// the course. WebKit keeps some 4 kB for each run of typing as long as its page lives.

/** Letting go costs the program some kilobytes too, so it is done once for so many fields. */
const FIELDS = 100

let left = 0

/** A field has been left; now and then all that was typed is let go of. */
export function fieldLeft({ target }: Pick<FocusEvent, 'target'>) {
  if (!(target instanceof HTMLInputElement)) return
  left = (left + 1) % FIELDS
  if (left === 0) letGo()
}

/** The engine lets go of every step of its page when a frame of it goes. */
function letGo() {
  const frame = document.createElement('iframe')
  frame.hidden = true
  document.body.append(frame)
  frame.remove()
}
