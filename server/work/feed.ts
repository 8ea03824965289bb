import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { History } from '../history/history.ts'
import type { Log } from '../live/room-parts.ts'
import type { JournalDaysTold } from './feed-questions.ts'
import type { WorkDesk } from './work-desk.ts'
import { WorkStopped } from './work-desk.ts'

/** Days told at once: some 400 kB of text, which is copied, not read, on this side. */
const DAYS_A_PAGE = 30

export interface FeedParts {
  readonly desk: WorkDesk
  readonly history: Pick<History, 'textsAfter' | 'takeChanged' | 'today'>
  readonly shop: () => Shop | null
  /** The shop's date. */
  readonly today: () => string | null
  /** The thread knows more than before. */
  readonly onTold: () => void
  readonly log: Log
}

/** Tells the thread what it must know of the shop: the set-up and the journal's days, all at its beginning, then the news. */
export class Feed {
  readonly #parts: FeedParts
  #shop: Shop | null = null
  #openDate: string | null = null
  #today: string | null = null
  /** What was told to one that has ended, the next one has not heard. */
  #isNewThread = false
  #telling: Promise<void> | null = null
  #isClosed = false

  constructor(parts: FeedParts) {
    this.#parts = parts
    parts.desk.onBegun(() => {
      this.#isNewThread = true
      this.tell()
    })
  }

  /** To be called about once a second, and when days or set-up may have changed. Asked again meanwhile it is the same telling. */
  tell(): Promise<void> {
    this.#telling ??= this.#tellAll().finally(() => {
      this.#telling = null
    })
    return this.#telling
  }

  /** Waits for what is being told: the days' file is closed after it. */
  async close(): Promise<void> {
    this.#isClosed = true
    await this.#telling
  }

  async #tellAll(): Promise<void> {
    if (this.#isClosed) return
    try {
      if (this.#isNewThread) await this.#tellNewThread()
      else await this.#tellNews()
    } catch (error) {
      // What was lost with a thread is told to the next one.
      if (error instanceof WorkStopped) return
      this.#parts.log.error({ error }, 'the advice thread could not be told of the shop')
    }
  }

  async #tellNewThread(): Promise<void> {
    const { desk, history } = this.#parts
    this.#isNewThread = false
    this.#shop = null
    history.takeChanged()
    await this.#tellShop()
    let isWhole = true
    for (let after = 0; !this.#isClosed; ) {
      const days = history.textsAfter(after, DAYS_A_PAGE)
      await desk.ask('journalDays', { days, ...this.#now(), isWhole })
      if (days.length < DAYS_A_PAGE) break
      after = days[days.length - 1]?.number ?? after
      isWhole = false
      await nextTurn()
    }
    this.#parts.onTold()
  }

  async #tellNews(): Promise<void> {
    const { desk, history, onTold } = this.#parts
    const isShopNew = await this.#tellShop()
    const days = history.takeChanged()
    const [openBefore, todayBefore] = [this.#openDate, this.#today]
    const told: JournalDaysTold = { days, ...this.#now(), isWhole: false }
    const areDaysNew = days.length > 0 || told.openDate !== openBefore || told.today !== todayBefore
    if (areDaysNew) await desk.ask('journalDays', told)
    if (isShopNew || areDaysNew) onTold()
  }

  /** @returns whether it was another one */
  async #tellShop(): Promise<boolean> {
    const shop = this.#parts.shop()
    if (shop === null || shop === this.#shop) return false
    this.#shop = shop
    await this.#parts.desk.ask('shop', shop)
    return true
  }

  #now(): Pick<JournalDaysTold, 'openDate' | 'today'> {
    this.#openDate = this.#parts.history.today((_state, sales) => sales.date)
    this.#today = this.#parts.today()
    return { openDate: this.#openDate, today: this.#today }
  }
}
