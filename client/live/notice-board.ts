import type { QueueStore } from './queue-store.ts'
import type { Notice } from './shop-store.ts'

/** Refusals beyond this many push out the oldest: nobody reads fifty, and questions are never pushed out. */
const REFUSALS_MAX = 50

/** What a person should see or answer, oldest first. Answers to taps survive a reload, by journal. */
export class NoticeBoard {
  readonly #store: QueueStore
  #journalId: string | null = null
  #notices: readonly Notice[] = []

  constructor(store: QueueStore) {
    this.#store = store
  }

  /** Replaced whole at every change. */
  get notices(): readonly Notice[] {
    return this.#notices
  }

  get questions(): number {
    return this.#notices.filter((notice) => notice.kind === 'ask').length
  }

  /** Turns to a journal; answers about another shop's taps are put by until it is back. */
  open(journalId: string): void {
    if (journalId === this.#journalId) return
    this.#journalId = journalId
    this.#notices = this.#store.loadNotices(journalId)
  }

  find(id: string): Notice | undefined {
    return this.#notices.find((notice) => notice.id === id)
  }

  /** Puts a notice up; one with the same id is replaced, so that a standing trouble is told once. */
  put(notice: Notice): void {
    const others = this.#notices.filter((one) => one.id !== notice.id)
    const refused = others.filter((one) => one.kind === 'refused')
    const pushedOut = notice.kind === 'refused' && refused.length >= REFUSALS_MAX ? refused[0] : undefined
    if (pushedOut !== undefined) this.remove(pushedOut.id)
    this.#notices = [...others.filter((one) => one !== pushedOut), notice]
    const isLasting = notice.kind === 'refused' || notice.kind === 'ask'
    if (isLasting && this.#journalId !== null) this.#store.saveNotice(this.#journalId, notice)
  }

  remove(id: string): void {
    if (this.find(id) === undefined) return
    this.#notices = this.#notices.filter((one) => one.id !== id)
    if (this.#journalId !== null) this.#store.removeNotice(this.#journalId, id)
  }
}
