// What the keyboard is at: whether that shows, and whether it is in view.
// To be run as the body of a function; answers its name, a bar, and what is wrong with it, if anything is.
const at = document.activeElement
if (!at || at === document.body) return '|'
const name = `<${at.localName}> ${at.id || (at.getAttribute('aria-label') ?? at.textContent.trim()).slice(0, 40)}`
const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(at)
const wrong = []
if (outlineStyle === 'none' || parseFloat(outlineWidth) < 2 || /, 0\)$/.test(outlineColor)) wrong.push('no outline shows that it is there')

/** The part of the window that is left to it by everything that scrolls around it. */
const room = { left: 0, top: 0, right: innerWidth, bottom: innerHeight }
for (let box = at.parentElement; box && box !== document.body; box = box.parentElement) {
  if (!/auto|scroll|hidden|clip/.test(getComputedStyle(box).overflowY)) continue
  const around = box.getBoundingClientRect()
  room.top = Math.max(room.top, around.top)
  room.bottom = Math.min(room.bottom, around.bottom)
  room.left = Math.max(room.left, around.left)
  room.right = Math.min(room.right, around.right)
}
const { left, top, right, bottom } = at.getBoundingClientRect()
const whole = left >= room.left - 2 && right <= room.right + 2 && top >= room.top - 2 && bottom <= room.bottom + 2
const fits = bottom - top < (room.bottom - room.top) * 0.6
const some = Math.min(bottom, room.bottom) - Math.max(top, room.top) > 8
if (fits ? !whole : !some) wrong.push(`out of view at ${[left, top, right, bottom].map(Math.round)} in ${Object.values(room).map(Math.round)}`)
else {
  const x = (Math.max(left, room.left) + Math.min(right, room.right)) / 2
  const y = (Math.max(top, room.top) + Math.min(bottom, room.bottom)) / 2
  const over = document.elementFromPoint(x, y)
  const ours = over && (at.contains(over) || over.contains(at) || over.closest('label')?.control === at)
  if (!ours) wrong.push(`hidden under <${over?.localName} class="${over?.className}">`)
}
return `${name}|${wrong.join('; ')}`
