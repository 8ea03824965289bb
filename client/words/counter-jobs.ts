import type { EpochMs } from '../../shared-core/units.ts'

/** What the counter does besides selling: counting, day-old pieces, notes, the close. */
export interface CounterJobWords {
  readonly sweep: SweepWords
  readonly found: FoundWords
  readonly dayOld: DayOldWords
  /** @example "note 6:10: rye slow" */
  newestNote(text: string, atMs: EpochMs): string
  readonly notes: string
  /** @example "2 notes" */
  noteCount(notes: number): string
  readonly close: CloseWords
  readonly more: MoreWords
}

export interface SweepWords {
  readonly title: string
  /** The key and strip that ask for it. @example "Count 5 rods" */
  ask(rods: number): string
  /** Nobody needs to, but one may. */
  readonly byHand: string
  /** @example "due since 8:30" */
  dueSince(atMs: EpochMs): string
  /** @example "next at 9:40" */
  nextAt(atMs: EpochMs): string
  /** @example "rod 2 of 5" */
  place(rod: number, of: number): string
  /** What is thought to be there. @example "thought to be about 14, counted 7:40" */
  thought(number: string): string
  readonly none: string
  /** So many half-dozens. @example "½ dz", "1½ dz" */
  dozens(halves: number): string
  /** For those who listen. @example "about 18: 1½ dozen" */
  spokenDozens(pieces: number, halves: number): string
  readonly exact: string
  readonly inHalves: string
  readonly next: string
  readonly skip: string
  readonly later: string
  readonly skipped: string
  /** @example "Done: 5 counted" */
  done(rods: number): string
  readonly nothingCounted: string
  readonly allCounted: string
  /** On the rod's own key: counted in half-dozens. @example "about 18" */
  about(pieces: number): string
}

/** What a count found. */
export interface FoundWords {
  readonly asKnown: string
  /** @example "3 fewer than known, kept as unexplained" */
  fewer(pieces: number): string
  more(pieces: number): string
  /** Of several. @example "Sesame 3 fewer, Poppy 2 more than known, kept as unexplained" */
  several(fewer: readonly Gap[], more: readonly Gap[]): string
  /** @example "Sesame: 3 fewer than known, kept as unexplained" */
  named(name: string, text: string): string
  readonly good: string
}
export interface Gap {
  readonly name: string
  readonly pieces: number
}

export interface DayOldWords {
  readonly title: string
  /** @example "Day-old: put out 14" */
  putOut(pieces: number): string
  /** @example "14 out, 12 to put out" */
  summary(out: number, toPut: number): string
  readonly nothing: string
  sold(pieces: number): string
  /** The same key for those who listen. @example "sold 1 day-old Sesame" */
  soldSpoken(pieces: number, name: string): string
  /** What becomes of all of a line. */
  readonly kitchen: string
  readonly wasted: string
  readonly given: string
  readonly fateOf: (name: string, fate: string) => string
}

export interface CloseWords {
  readonly title: string
  /** @example "Close Tue, Nov 24" */
  of(label: string): string
  /** @example "Count what is left: 4 rods" */
  count(rods: number): string
  /** What the key that leads to it says besides. */
  readonly detail: string
  readonly nothingLeft: string
  readonly fate: { readonly [fate in LeftFate]: string }
  readonly all: { readonly [fate in LeftFate]: string }
  readonly touchToChange: string
  readonly crew: string
  readonly crewUnsaid: string
  /** @example "18 h" */
  hours(hours: number): string
  readonly close: string
  /** @example "14 day-old, 12 given away" */
  summary(parts: readonly { readonly fate: LeftFate; readonly pieces: number }[]): string
  /** After it. @example "Tue, Nov 24 is closed" */
  closed(label: string): string
  /** @example "Reopen Tue, Nov 24" */
  reopen(label: string): string
  readonly reopenDetail: string
  /** Said of a day that is not open. */
  readonly opensItself: string
  readonly lessHours: (hours: number) => string
  readonly moreHours: (hours: number) => string
  readonly least: string
  readonly most: string
}
export type LeftFate = 'dayOld' | 'given' | 'wasted'

export interface MoreWords {
  readonly title: string
}
