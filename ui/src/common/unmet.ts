// Wishes that can't be had: about lessons they are told at the days, about pairs at the group.

type Seen = {
  plan: { unmet: readonly { wish: number | null }[] }
  written: { running: { unmet: readonly string[] } }
}

/** Sentences, in the order of the plan; a wish about pairs has no number. */
export const unmetOf = ({ plan, written }: Seen, about: 'lessons' | 'pairs'): string[] =>
  written.running.unmet.filter((_, at) => (plan.unmet[at]?.wish === null) === (about === 'pairs'))
