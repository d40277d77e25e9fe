// Text a person can't read whole: cut off by its box, beyond the page, or under other text.
// To be run as the body of a function; answers one line for each fault, at most thirty.
const SPARE = 1.5
const faults = []
const say = (what, element, text) => {
  const id = element.id || element.closest('[id]')?.id || ''
  faults.push(`${what}: <${element.localName}> in #${id}: "${text.trim().slice(0, 50)}"`)
}
const unseen = (element) => element.closest('.unseen, [aria-hidden="true"], [hidden], option, script, style') !== null

const page = document.scrollingElement
if (page.scrollWidth > page.clientWidth + SPARE)
  faults.push(`the page is ${page.scrollWidth} px wide in a window of ${page.clientWidth} px`)

// Drawings and pages may be larger than their place; words that are to be read in lines may not.
const MAY_SCROLL_ACROSS = '.long, .paper'
for (const element of document.querySelectorAll('body *')) {
  if (element.closest('svg') || element.matches(MAY_SCROLL_ACROSS)) continue
  const across = getComputedStyle(element).overflowX
  if ((across === 'auto' || across === 'scroll') && element.scrollWidth > element.clientWidth + SPARE)
    say(`has to be scrolled across by ${element.scrollWidth - element.clientWidth} px`, element, element.textContent)
}

/** What of a rectangle is left when everything around it has cut; and whether a box that can't be scrolled cut. */
function cut(rectangle, element) {
  let { left, top, right, bottom } = rectangle
  let lost = false
  for (let box = element; box && box !== document.body; box = box.parentElement) {
    const { overflowX, overflowY, position } = getComputedStyle(box)
    const around = box.getBoundingClientRect()
    if (overflowX !== 'visible') {
      if (/hidden|clip/.test(overflowX) && (left < around.left - SPARE || right > around.right + SPARE)) lost = true
      left = Math.max(left, around.left)
      right = Math.min(right, around.right)
    }
    if (overflowY !== 'visible') {
      if (/hidden|clip/.test(overflowY) && (top < around.top - SPARE || bottom > around.bottom + SPARE)) lost = true
      top = Math.max(top, around.top)
      bottom = Math.min(bottom, around.bottom)
    }
    if (position === 'fixed') break
  }
  return { lost, left, top, right, bottom, seen: left < right - 2 && top < bottom - 2 }
}

const words = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
const standing = []
for (let node = words.nextNode(); node; node = words.nextNode()) {
  const element = node.parentElement
  if (!node.data.trim() || element.closest('svg') || unseen(element) || !element.checkVisibility()) continue
  if (getComputedStyle(element).visibility !== 'visible') continue
  const range = document.createRange()
  range.selectNodeContents(node)
  let told = false
  for (const line of range.getClientRects()) {
    if (line.width < 1 || line.height < 1) continue
    // Letters are lower than their line, which may stand out of a tight box without loss.
    const spare = line.height * 0.2
    const letters = { left: line.left, right: line.right, top: line.top + spare, bottom: line.bottom - spare }
    const left = cut(letters, element)
    if (left.lost && !told) say('cut off', element, node.data)
    told ||= left.lost
    if (left.seen) standing.push({ node, element, ...left })
  }
}

// A head that stays while its table goes by, and what lies over the drawing, cover what can be scrolled out.
const stays = (element) => element.closest('.stays, #refused') !== null
for (let one = 0; one < standing.length; one++) {
  const a = standing[one]
  for (let other = one + 1; other < standing.length; other++) {
    const b = standing[other]
    if (a.node === b.node || stays(a.element) || stays(b.element)) continue
    const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left)
    const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
    if (wide > 2 && high > 2) say(`over "${b.node.data.trim().slice(0, 30)}"`, a.element, a.node.data)
  }
}

// What a field shows before anything is written, and what a list has chosen.
const brush = document.createElement('canvas').getContext('2d')
for (const field of document.querySelectorAll('input[placeholder], select')) {
  if (!field.checkVisibility() || unseen(field)) continue
  const shown = field.localName === 'select' ? field.selectedOptions[0]?.text : field.value === '' ? field.placeholder : ''
  if (!shown) continue
  const { fontStyle, fontWeight, fontSize, fontFamily, paddingLeft, paddingRight } = getComputedStyle(field)
  brush.font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`
  const room = field.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight)
  if (brush.measureText(shown).width > room + SPARE) say(`wider than its ${Math.round(room)} px`, field, shown)
}
return [...new Set(faults)].slice(0, 30).join('\n')
