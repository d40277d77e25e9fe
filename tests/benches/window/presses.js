// Times each key press from the key going down to what is watched being another,
// and to the next picture the window paints.
window.presses = []
const watched = document.querySelector(WATCHED)
let press
addEventListener('keydown', () => { press = { down: performance.now() } }, { capture: true })
new MutationObserver(() => {
  const ours = press
  if (!ours || ours.changed) return
  ours.changed = performance.now() - ours.down
  requestAnimationFrame(() => setTimeout(() => {
    ours.painted = performance.now() - ours.down
    window.presses.push(ours)
  }))
}).observe(watched, { childList: true, characterData: true, subtree: true })
