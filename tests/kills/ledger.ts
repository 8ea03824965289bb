import { accountGaps } from '../../shared-core/day/account.ts'
import type { Answer } from '../../shared-core/day/answers.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { CommandAnswer } from '../../shared-core/live/protocol.ts'

/** What people were told, beside what the file says: the two must agree after every kill. */
export class Ledger {
  /** What does not hold; the first few are enough. */
  readonly troubles: string[] = []
  /** The journal folded on its own. */
  readonly state = emptyState()
  readonly #answers = new Map<string, Answer>()
  readonly #texts: string[] = []
  readonly #seqOf = new Map<string, number>()

  get entries(): number {
    return this.#texts.length
  }

  get answered(): ReadonlyMap<string, Answer> {
    return this.#answers
  }

  get hash(): string {
    return hashState(this.state)
  }

  has(id: string): boolean {
    return this.#seqOf.has(id) || this.#answers.has(id)
  }

  fail(what: string): void {
    if (this.troubles.length < 20) this.troubles.push(what)
  }

  /** An answer that somebody can have seen: from now on it holds. */
  told({ commandId, answer }: CommandAnswer, who: string): void {
    const before = this.#answers.get(commandId)
    // No command of ours breaks a rule or cannot be read.
    if (answer.kind === 'refused' && ['internal', 'bad-command'].includes(answer.refusal.code))
      this.fail(`${who}: ${commandId} ${JSON.stringify(answer)}`)
    // A question is no answer yet.
    if (before !== undefined && before.kind !== 'ask' && JSON.stringify(before) !== JSON.stringify(answer))
      this.fail(`${who}: ${commandId} was ${JSON.stringify(before)}, then ${JSON.stringify(answer)}`)
    this.#answers.set(commandId, answer)
  }

  /** Entries as they are on disk or come from the server, from a seq that is known already or the next. */
  read(texts: readonly string[], fromSeq: number, where: string): void {
    texts.forEach((text, index) => {
      const at = fromSeq - 1 + index
      const known = this.#texts[at]
      if (known === undefined) this.#next(text, where)
      else if (known !== text) this.fail(`${where}: entry ${at + 1} was ${known} and is ${text}`)
    })
  }

  /** @param refusals by command, as on disk */
  compare(refusals: ReadonlyMap<string, string>, lastSeq: number): void {
    if (lastSeq < this.entries) this.fail(`entries ${lastSeq + 1} to ${this.entries} are gone`)
    for (const [id, answer] of this.#answers) {
      const seq = this.#seqOf.get(id)
      if (answer.kind === 'taken' && seq !== answer.seq) this.fail(`${id} was taken as ${answer.seq} and is ${seq}`)
      if (answer.kind !== 'refused') continue
      if (seq !== undefined) this.fail(`${id} was refused and is entry ${seq}`)
      if (refusals.get(id) !== JSON.stringify(answer)) this.fail(`the refusal of ${id} is ${refusals.get(id)} on disk`)
    }
    for (const id of refusals.keys()) if (this.#seqOf.has(id)) this.fail(`${id} is refused and done`)
  }

  #next(text: string, where: string): void {
    try {
      const entry: Entry = JSON.parse(text)
      const seq = this.entries + 1
      if (entry.seq !== seq) this.fail(`${where}: entry ${entry.seq} stands where ${seq} should`)
      if (this.#seqOf.has(entry.commandId))
        this.fail(`${entry.commandId} is done twice: ${this.#seqOf.get(entry.commandId)} and ${seq}`)
      applyEntry(this.state, entry)
      this.#texts.push(text)
      this.#seqOf.set(entry.commandId, seq)
      if (accountGaps(this.state).size > 0) this.fail(`pieces unaccounted for after ${seq}`)
    } catch (error) {
      this.fail(`${where}: entry ${this.entries + 1} cannot be folded: ${String(error)}: ${text}`)
    }
  }
}
