// The places of the window that the parts of a page rest on.
import { stepNamed, STEPS, type StepId } from '../common/steps'

export type Place = { step: StepId; name: string; focus: string }

/** The place a part of a page leads to. Lessons are asked for among the days. */
export function placeOf(word: string): Place | undefined {
  if (word === 'lessons') return { step: 'days', name: 'Lessons', focus: 'lessons-open' }
  const step = STEPS.find((it) => it.id === word)
  return step && { step: step.id, name: stepNamed(step.id).name, focus: 'place' }
}

/** Says under the pointer where each part of a page leads, and lets those be that lead nowhere. */
export const leading = (page: Element) => {
  for (const part of page.querySelectorAll('[data-place]')) {
    const place = placeOf(part.getAttribute('data-place') ?? '')
    if (!place) {
      part.removeAttribute('data-place')
      continue
    }
    const title = document.createElementNS('http://www.w3.org/2000/svg', 'title')
    title.textContent = `Figures from ${place.name}: go there`
    part.prepend(title)
  }
}
