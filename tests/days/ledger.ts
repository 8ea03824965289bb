import type { Answer } from '../../shared-core/day/answers.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { Disk } from './disk.ts'

/** What became of each command: on disk, and as told to people. What was told must hold, until a copy is put back. */
export class Ledger {
  /** What a copy that was put back did not have: it may be missing, and nothing else may. */
  readonly cutOff = new Set<CommandId>()
  readonly #seqOf = new Map<CommandId, number>()
  readonly #told = new Map<CommandId, { readonly answer: Answer; readonly course: string }>()
  readonly #fail: (what: string) => void
  readonly #count: (answer: Answer) => void

  constructor(fail: (what: string) => void, count: (answer: Answer) => void) {
    this.#fail = fail
    this.#count = count
  }

  isOnDisk(id: CommandId): boolean {
    return this.#seqOf.has(id)
  }

  isAsked(id: CommandId): boolean {
    return this.#told.get(id)?.answer.kind === 'ask'
  }

  written(id: CommandId, seq: number): void {
    if (this.#seqOf.has(id)) this.#fail(`${id} is done twice: ${this.#seqOf.get(id)} and ${seq}`)
    this.#seqOf.set(id, seq)
    // What was cut off came once more from a device that had not heard of it being done.
    this.cutOff.delete(id)
  }

  /**
   * An answer that a person can have seen: from now on it holds.
   * @param course of the server that gave it; `now` is the disk's
   */
  answered(id: CommandId, answer: Answer, { who, course, now }: { who: string; course: string; now: string }): void {
    if (answer.kind === 'refused' && (answer.refusal.code === 'internal' || answer.refusal.code === 'bad-command')) {
      this.#fail(`${who} is answered ${JSON.stringify(answer)}`)
    }
    // The last word of a server that has gone back to a copy since.
    if (course !== now && !this.#holds(id, answer)) {
      if (answer.kind === 'taken' && !this.cutOff.has(id) && !this.#seqOf.has(id))
        this.#fail(`${id} was acknowledged before a copy was put back, and was never on disk`)
      if (answer.kind === 'refused') this.cutOff.add(id)
      if (answer.kind === 'ask') this.#told.set(id, { answer, course })
      return
    }
    const before = this.#told.get(id)?.answer
    this.#told.set(id, { answer, course: now })
    // A question is no answer yet.
    if (before === undefined || before.kind === 'ask') this.#count(answer)
    else if (JSON.stringify(before) !== JSON.stringify(answer)) {
      this.#fail(`${id} was answered ${JSON.stringify(before)} and then ${JSON.stringify(answer)}`)
    }
    if (answer.kind === 'taken' && this.#seqOf.get(id) !== answer.seq) {
      this.#fail(`${id} is acknowledged as ${answer.seq}, and on disk as ${this.#seqOf.get(id)}`)
    }
  }

  /**
   * A copy has taken the journal's place.
   * @param entries all that it has
   * @returns how many acknowledged commands it does not have, or has as something else
   */
  putBack(entries: readonly Entry[], disk: Disk): number {
    for (const id of this.#seqOf.keys()) this.cutOff.add(id)
    this.#seqOf.clear()
    for (const { commandId, seq } of entries) this.written(commandId, seq)
    let lost = 0
    for (const [id, { answer }] of this.#told) {
      const its = disk.answerOf(id)
      if (answer.kind === 'ask' || isSame(answer, its)) continue
      if (answer.kind === 'taken') lost += 1
      this.#told.delete(id)
      if (its === null) this.cutOff.add(id)
    }
    return lost
  }

  /** When all is quiet. */
  atRest(disk: Disk): void {
    for (const [id, { answer }] of this.#told) {
      const its = disk.answerOf(id)
      if (answer.kind !== 'ask' && !isSame(answer, its))
        this.#fail(`${id} was answered ${JSON.stringify(answer)}, and on disk is ${JSON.stringify(its)}`)
    }
  }

  #holds(id: CommandId, answer: Answer): boolean {
    return answer.kind === 'taken' && this.#seqOf.get(id) === answer.seq
  }
}

function isSame(one: Answer, other: Answer | null): boolean {
  return JSON.stringify(one) === JSON.stringify(other)
}
