// Where steps and place lie one under the other, a place would open out of sight.

export function bringUp(main: HTMLElement | null) {
  main?.scrollTo(0, 0)
  const top = main?.getBoundingClientRect().top ?? 0
  if (top < 0 || innerHeight / 2 < top) main?.scrollIntoView()
}
