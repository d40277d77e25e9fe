// What could be done otherwise is worked out a moment after the figures: until then that of the plan before stands.
import type { View } from '../bindings'

/** The view with the advice of the one before, where its own has not been worked out yet. */
export function withAdviceOf(view: View, before: View | undefined): View {
  if (view.advised || !before) return view
  const { written, drawings } = view
  const { lifts, about_length, today } = before.written.running
  const now = written.running.today
  return {
    ...view,
    written: {
      ...written,
      running: {
        ...written.running,
        lifts,
        about_length,
        today: now && today ? { ...now, cures: today.cures, assumed: today.assumed } : now,
      },
    },
    drawings: { ...drawings, chance_curve: before.drawings.chance_curve },
  }
}
