// A page as Rust wrote it, made ready for the window: what leads from it to the questions it rests on.
import { stepNamed, STEPS, type StepId } from '../common/steps'

export type Place = { step: StepId; name: string; focus: string }

/** The place a link of a page leads to. Lessons are asked for among the days. */
export function placeOf(word: string): Place | undefined {
  if (word === 'lessons') return { step: 'days', name: 'Lessons', focus: 'lessons-open' }
  const step = STEPS.find((it) => it.id === word)
  return step && { step: step.id, name: stepNamed(step.id).name, focus: 'place' }
}

const LINK = /<a\b([^>]*?)\shref="place:([a-z]+)"([^>]*)>/g

/** The places a page rests on, each once, in the order of the page. */
export function placesIn(svg: string): string[] {
  const found = [...svg.matchAll(LINK)].map(([, , word]) => word ?? '')
  return [...new Set(found)].filter((word) => placeOf(word))
}

/**
 * The page without addresses to follow, for nothing of it is one: what was a link says in words
 * where it leads, under the pointer, and keeps its place as `data-place`. Sizes are for the style
 * sheet to say, since the window allows no style inside the page.
 */
export function madeReady(svg: string): string {
  return svg
    .replace(LINK, (_, before: string, word: string, after: string) => {
      const rest = `${before}${after}`.replace(/\s(?:xlink:)?href="[^"]*"/g, '')
      const place = placeOf(word)
      return place ? `<a${rest} data-place="${word}"><title>Figures from ${place.name}: go there</title>` : `<a${rest}>`
    })
    .replace(/\sstyle="[^"]*"/g, '')
}
