import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import { closesDay, opensDay, reopensDay } from '../../shared-core/day/day-record.ts'
import type { Entry } from '../../shared-core/day/events.ts'
import type { DayFigures } from '../../shared-core/day/figures.ts'
import { FiguresTally } from '../../shared-core/day/figures-tally.ts'
import type { State } from '../../shared-core/day/state.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import type { StateJson } from '../../shared-core/day/state-json.ts'
import { fromJson, toJson } from '../../shared-core/day/state-json.ts'
import { textOfDay } from '../../shared-core/demand/day-text.ts'
import { JournalTally } from '../../shared-core/demand/journal-tally.ts'
import { LineTally } from '../../shared-core/line/line-tally.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Journal } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { localInstant } from '../live/shop-clock.ts'
import type { DayRow, DayStore, DayTexts } from './day-store.ts'
import { openDayStore } from './day-store.ts'

/** Entries folded before others get a turn: some 7 ms of work (22,000 entries: 1.5 s), less than anybody feels at a tap. */
const ENTRIES_A_BREATH = 100

export interface HistoryParts {
  readonly journal: Journal
  readonly sqlite: Sqlite
  /** ":memory:" for a journal that has no folder. */
  readonly file: string
  /** Lets everything else have a turn. */
  readonly breathe: () => Promise<unknown>
}

/** A day as it can be played again: `applyEntry` for each entry, from the start on. */
export interface DayRecord extends DayRow {
  readonly start: StateJson
  readonly entries: readonly Entry[]
}

/**
 * The shop's past days: a projection of the journal, never part of the fold or its hash. For each day it keeps the state
 * just before its first entry; from there the day's entries replay it exactly, on a screen as well, with the code that
 * runs the shop. Rejected: tables of what happened by minute, which would be a second, poorer copy of every rule.
 *
 * It folds a state of its own, some entries behind the room's, and catches up in lulls or when asked. All that it keeps
 * can be made again from the journal; that happens when its file is gone, of another release or of another journal.
 */
export class History {
  readonly #parts: HistoryParts
  readonly #store: DayStore
  #state: State
  /** The day that the fold stands in, or that was closed last and may go on. */
  #day: Day | null = null
  #changed = new Set<number>()
  #catchingUp: Promise<void> | null = null
  #isClosed = false

  constructor(parts: HistoryParts) {
    const { journal, sqlite, file } = parts
    this.#parts = parts
    const { journalId, course } = journal
    this.#store = openDayStore(sqlite, file, { journalId, course, foldVersion: FOLD_VERSION })
    this.#state = this.#resume()
  }

  /** How many entries of the journal are not in it yet. */
  get behind(): number {
    return this.#parts.journal.lastSeq() - this.#state.seq
  }

  /** Folds what has come since, in breaths. Asked again meanwhile, it is the same catching up. */
  catchUp(): Promise<void> {
    this.#catchingUp ??= this.#foldOn().finally(() => {
      this.#catchingUp = null
    })
    return this.#catchingUp
  }

  /** Newest first, those opened before an instant. */
  days(beforeMs: number, most: number): readonly DayRow[] {
    return this.#store.list(beforeMs, most)
  }

  /**
   * @param label a date, or "today": the day that is open
   * @param openedAtMs which of two days of one label; null: the newer one
   * @returns null when there is none
   */
  find(label: string, openedAtMs: number | null): DayRow | null {
    if (label !== 'today') return this.#store.find(label, openedAtMs)
    const newest = this.#store.newest()
    return newest?.closedAtMs === null ? newest : null
  }

  record(row: DayRow): DayRecord {
    const start = this.#store.startOf(row.number)
    if (start === null) throw new Error(`day ${row.number} has no start`)
    return { ...row, start, entries: this.entriesOf(row) }
  }

  entriesOf({ firstSeq, lastSeq }: DayRow): readonly Entry[] {
    const last = lastSeq ?? this.#state.seq
    return [...this.#parts.journal.entriesAfter(firstSeq - 1, last - firstSeq + 1)]
  }

  /** A closed day's figures as they were at its close; of the one that is open, as they are. */
  figuresOf(row: DayRow, nowMs: EpochMs): DayFigures | null {
    if (row.closedAtMs !== null || this.#day?.number !== row.number) return row.figures
    return this.#day.figures.figures(this.#state, nowMs)
  }

  /**
   * Looks at the day that is open, as far as the fold has come: the state is changed in place, so look, do not keep.
   * @returns null when none is open
   */
  today<Result>(look: (state: State, sales: JournalTally, line: LineTally) => Result): Result | null {
    const day = this.#day
    return day === null || day.sales.closedAtMs !== null ? null : look(this.#state, day.sales, day.line)
  }

  /** Closed days for those who learn from them, oldest first, after a number. */
  textsAfter(number: number, most: number): readonly ClosedDayTexts[] {
    return this.#store.textsAfter(number, most).map(({ number: of, ...texts }) => ({ number: of, texts }))
  }

  /** Days that were closed or reopened since this was asked the last time. */
  takeChanged(): readonly ClosedDayTexts[] {
    const changed = [...this.#changed]
    this.#changed.clear()
    return changed.map((number) => ({ number, texts: this.#store.textsOf(number) }))
  }

  /** Waits for the breath that is being folded. */
  async close(): Promise<void> {
    this.#isClosed = true
    await this.#catchingUp?.catch(() => undefined)
    this.#store.shut()
  }

  /** The newest day is folded again from its start: what its figures come from is not kept. */
  #resume(): State {
    const newest = this.#store.newest()
    const start = newest === null ? null : this.#store.startOf(newest.number)
    if (newest === null || start === null) return emptyState()
    return fromJson(start)
  }

  async #foldOn(): Promise<void> {
    const { journal, breathe } = this.#parts
    while (this.behind > 0 && !this.#isClosed) {
      const page = [...journal.entriesAfter(this.#state.seq, ENTRIES_A_BREATH)]
      if (page.length === 0) return
      try {
        this.#store.together(() => {
          for (const entry of page) this.#fold(entry)
        })
      } catch (error) {
        // The file is as it was before the page: so must the fold be.
        this.#day = null
        this.#state = this.#resume()
        throw error
      }
      if (this.behind > 0) await breathe()
    }
  }

  #fold(entry: Entry): void {
    const state = this.#state
    const closed = closesDay(entry)
    const opened = opensDay(entry)
    // Of an entry that closes a forgotten day and opens the next, the old day's part comes first.
    const before = this.#day
    tally(before, (one) => one.before(state, entry))
    const start = opened === null ? null : toJson(state)
    const tallies = opened === null ? null : talliesFor(state, opened.label)
    tally(tallies, (one) => one.before(state, entry))
    applyEntry(state, entry)
    tally(before, (one) => one.after?.(state, entry))
    tally(tallies, (one) => one.after?.(state, entry))
    if (before !== null && (closed !== null || reopensDay(entry)))
      this.#closeOrReopen(before, entry.seq, closed?.atMs ?? null)
    if (opened === null || start === null || tallies === null) return
    const newest = this.#store.newest()
    // The day that the fold resumed with is known already.
    if (newest?.firstSeq === entry.seq) this.#day = { number: newest.number, ...tallies }
    else {
      const number = (newest?.number ?? 0) + 1
      this.#store.add({ number, label: opened.label, firstSeq: entry.seq, openedAtMs: opened.atMs }, start)
      this.#day = { number, ...tallies }
    }
  }

  #closeOrReopen({ number, figures, sales, line }: Day, seq: number, closedAtMs: EpochMs | null): void {
    this.#changed.add(number)
    if (closedAtMs === null) {
      this.#store.close(number, { lastSeq: null, closedAtMs: null, figures: null, sales: null, line: null })
      return
    }
    this.#store.close(number, {
      lastSeq: seq,
      closedAtMs,
      figures: figures.figures(this.#state, closedAtMs),
      sales: textOfDay(sales.day(this.#state, closedAtMs)),
      line: JSON.stringify(line.day()),
    })
  }
}

/** A day by its number; `texts` null: it goes on after all. */
export interface ClosedDayTexts {
  /** Counts the shop's days from 1. */
  readonly number: number
  readonly texts: DayTexts | null
}

/** What follows a day entry by entry: its five figures, what demand makes of it, and what its taps say of the line. */
interface Tallies {
  readonly figures: FiguresTally
  readonly sales: JournalTally
  readonly line: LineTally
}
type Day = Tallies & { readonly number: number }

interface Tally {
  before(state: State, entry: Entry): void
  after?(state: State, entry: Entry): void
}

function tally(tallies: Tallies | null, call: (one: Tally) => void): void {
  if (tallies === null) return
  call(tallies.figures)
  call(tallies.sales)
  call(tallies.line)
}

/** Zone tables are the server's: the figures get the instants of the day's own date. */
function talliesFor({ shop }: State, label: string): Tallies {
  const zone = shop?.profile.zone ?? 'UTC'
  return {
    figures: new FiguresTally((minuteOfDay) => localInstant(zone, label, minuteOfDay)),
    sales: new JournalTally(localInstant(zone, label, NOON_MINUTE)),
    line: new LineTally(),
  }
}
const NOON_MINUTE = 720
