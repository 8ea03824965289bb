import { ACT_TYPES } from '../core/support/any-act.ts'
import { FAULT_KINDS } from './faults.ts'
import type { DayResult } from './one-day.ts'

/** Kinds of acts that a run of many days must have taken: all that there are. */
const ALL_ACTS: readonly string[] = [...ACT_TYPES, 'changeSetUp', 'dropSetUp', 'takeUpSetUps']

/** What many days come to. */
export class Tally {
  days = 0
  readonly counts = new Map<string, number>()
  readonly faults = new Map<string, number>()
  readonly taken = new Map<string, number>()

  add({ counts, faults, taken }: Pick<DayResult, 'counts' | 'faults' | 'taken'>): void {
    this.days += 1
    addAll(this.counts, Object.entries(counts))
    addAll(this.faults, faults)
    addAll(this.taken, taken)
  }

  /** What never happened in all these days, so that they prove nothing about it. */
  missing(): string[] {
    return [
      ...FAULT_KINDS.filter((kind) => !this.faults.has(kind)).map((kind) => `the fault ${kind} never fired`),
      ...ALL_ACTS.filter((act) => !this.taken.has(act)).map((act) => `nobody did ${act}`),
      ...['refused', 'asked']
        .filter((kind) => !((this.counts.get(kind) ?? 0) > 0))
        .map((kind) => `nothing was ${kind}`),
    ]
  }

  toString(): string {
    const count = (name: string) => (this.counts.get(name) ?? 0).toLocaleString('en')
    return [
      `${this.days} days: ${count('entries')} entries on disk; answers: ${count('taken')} taken, ${count('refused')} refused, ${count('asked')} asked back`,
      `${count('compared')} states compared with the journal; gone with copies put back: ${count('cutOff')} acknowledged commands; not kept by a full device, as told: ${count('notKept')}`,
      `faults: ${sorted(this.faults)}`,
      `acts: ${sorted(this.taken)}`,
    ].join('\n')
  }
}

function addAll(sums: Map<string, number>, more: Iterable<readonly [string, number]>): void {
  for (const [name, times] of more) sums.set(name, (sums.get(name) ?? 0) + times)
}

function sorted(sums: ReadonlyMap<string, number>): string {
  return [...sums]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([name, times]) => `${name} ${times}`)
    .join(', ')
}
