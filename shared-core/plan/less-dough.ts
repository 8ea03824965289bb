import type { BakeLine, BakeOff, DoughGiven } from './bake-off/bake-off.ts'
import { doughOf } from './bake-off/load-parts.ts'

/** The dough that is left when lines have taken theirs. */
export function lessDough(given: BakeOff, lines: readonly BakeLine[]): Readonly<Record<string, DoughGiven>> {
  const doughs = { ...given.doughs }
  for (const [name, pieces] of lines) {
    const key = doughOf(given, name)
    const dough = doughs[key]
    if (dough !== undefined) doughs[key] = { ...dough, pieces: Math.max(0, dough.pieces - pieces) }
  }
  return doughs
}
