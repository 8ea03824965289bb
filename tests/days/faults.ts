import type { Chance } from './chance.ts'
import type { Story } from './story.ts'

/** What goes wrong in a simulated day. Each kind is counted, and a run in which one never fired proves nothing of it. */
export const FAULT_KINDS = [
  // Messages. Within one contact the transport keeps the order, or the contact is dead; over two, anything may come late.
  'lost',
  'late',
  'repeat',
  'overtaken',
  // Devices.
  'cut',
  'stall',
  'reload',
  'clock-step',
  'sleep',
  'store-full',
  'shown-out',
  // The server's process and its disk.
  'append-fails',
  'append-unsure',
  'stop-before-append',
  'stop-after-append',
  'stop-before-answer',
  'stop',
  'disk-full',
  'disk-slow',
  'server-clock-step',
  'new-build',
  'restore',
  // People.
  'same-tap',
] as const
export type FaultKind = (typeof FAULT_KINDS)[number]

/** Words that are made only when somebody reads them. */
type Words = string | (() => string)

/** Decides which faults fire, tells and counts them. */
export class Faults {
  readonly counts = new Map<FaultKind, number>()
  /** No faults from now on. */
  calm = false
  readonly #story: Story
  readonly #without: ReadonlySet<FaultKind>

  constructor(story: Story, without: readonly FaultKind[]) {
    this.#story = story
    this.#without = new Set(without)
  }

  /** Draws whether one fires now. A kind that is left out is drawn all the same: the rest of the day stays as it is. */
  fires(chance: Chance, permille: number, kind: FaultKind, who: string, what: Words = ''): boolean {
    return chance.permille(permille) && this.happens(kind, who, what)
  }

  /** @returns false when this kind is left out, or all is calm */
  happens(kind: FaultKind, who: string, what: Words = ''): boolean {
    if (this.calm || this.#without.has(kind)) return false
    this.counts.set(kind, (this.counts.get(kind) ?? 0) + 1)
    this.#story.tell(who, () => `${TOLD[kind]} ${typeof what === 'string' ? what : what()}`.trimEnd())
    return true
  }
}

const TOLD: { readonly [Kind in FaultKind]: string } = {
  lost: 'loses a message and with it the contact:',
  late: 'waits long for a message:',
  repeat: 'has a message twice:',
  overtaken: 'is heard on a contact that it has given up',
  cut: 'is cut off',
  stall: 'has a dead contact and does not know',
  reload: 'is loaded anew',
  'clock-step': 'has its clock set',
  sleep: 'falls asleep',
  'store-full': 'can keep nothing more',
  'shown-out': 'is shown out',
  'append-fails': 'cannot write',
  'append-unsure': 'has written and does not know',
  'stop-before-append': 'is killed before its write',
  'stop-after-append': 'is killed right after its write',
  'stop-before-answer': 'is killed before it answers',
  stop: 'is killed',
  'disk-full': 'has a full disk',
  'disk-slow': 'has a slow disk',
  'server-clock-step': 'has its clock set',
  'new-build': 'gets new pages',
  restore: 'goes back to a copy',
  'same-tap': 'is tapped for the same act at the same moment',
}
