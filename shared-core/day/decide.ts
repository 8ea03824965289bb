import { AT_BENCH } from './decide-bench.ts'
import { decideChangeSetUp, decideDropSetUp, decideNoteImport, decideTakeUpSetUps } from './decide-set-up.ts'
import type { Deciders } from './decide-with.ts'
import { decideWith } from './decide-with.ts'
import { fits } from './set-up-fits.ts'

export type { Context, Decision } from './decision.ts'

/** A kind of command without a decider does not compile. */
const DECIDERS: Deciders = {
  ...AT_BENCH,
  changeSetUp: decideChangeSetUp,
  dropSetUp: decideDropSetUp,
  takeUpSetUps: decideTakeUpSetUps,
  noteImport: decideNoteImport,
}

/** What the server says, and the desk guesses, to every kind of command. */
export const decide = decideWith(DECIDERS, fits)
