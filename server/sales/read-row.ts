import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import type { DateForm, Mapping, RowFault, Told } from '../../shared-core/live/sales-import.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { LocalTimes } from './local-times.ts'
import { MomentReader } from './read-moment.ts'
import { rowFault } from './row-fault.ts'

const ZERO = 48
/** A date as each form writes it, for who corrects a row. */
export const DATE_EXAMPLES: Readonly<Record<DateForm, string>> = {
  'y-m-d': '2026-11-24',
  'm-d-y': '11/24/2026',
  'd-m-y': '24/11/2026',
  'epoch-s': '1795529100',
  'epoch-ms': '1795529100000',
}
/** Letters that are kept of a name, and of an id. */
const NAME_MAX = 200
const ID_MAX = 80

/** A good row of a till's file. */
export interface TillRow {
  /** Business day, days since 1970. */
  readonly day: number
  /** Seconds after its midnight; NO_TIME: nobody says. */
  readonly second: number
  readonly item: string
  /** Negative for a return; 0 says nothing. */
  readonly pieces: number
  /** "": a purchase of its own. */
  readonly purchase: string
  /** The row's own id; "": it has none. */
  readonly rowId: string
  readonly voided: boolean
}

export type RowRead =
  | { readonly row: TillRow; readonly fault: null }
  | { readonly row: null; readonly fault: Told<RowFault> }

/** Cells of a file's rows as sales, by a mapping. */
export class RowReader {
  readonly #mapping: Mapping
  readonly #moments: MomentReader
  readonly #needed: number
  readonly #lastDay: number

  /** @param addedAtMs when the file came: no sale in it is of a later day */
  constructor(mapping: Mapping, times: LocalTimes, addedAtMs: EpochMs) {
    this.#mapping = mapping
    this.#lastDay = times.of(addedAtMs).day
    this.#moments = new MomentReader(mapping.dateForm, times)
    const { date, clock, item, pieces } = mapping
    this.#needed = 1 + Math.max(date, item, clock ?? 0, pieces ?? 0)
  }

  read(cells: readonly string[]): RowRead {
    if (cells.length < this.#needed) return wrong('too-few-columns', { columns: cells.length, needed: this.#needed })
    const { date, clock, item, detail, transaction, line, voided } = this.#mapping
    const dateText = cell(cells, date)
    const clockText = clock === null ? null : cell(cells, clock)
    const moment = this.#moments.read(dateText, clockText)
    if (moment === 'no-date')
      return wrong(moment, { text: dateText, column: date + 1, example: DATE_EXAMPLES[this.#mapping.dateForm] })
    if (moment === 'no-time') return wrong(moment, { text: clockText ?? dateText, column: (clock ?? date) + 1 })
    if (moment.day > this.#lastDay) return wrong('to-come', { text: dateText, column: date + 1 })
    const name = nameOf(cell(cells, item), detail === null ? '' : cell(cells, detail))
    if (name === '') return wrong('no-item', { column: item + 1 })
    const pieces = this.#piecesOf(cells)
    if (typeof pieces !== 'number') return { row: null, fault: pieces }
    const said = voided === null ? '' : standing(cell(cells, voided))
    const row: TillRow = {
      day: moment.day,
      second: moment.second,
      item: name,
      pieces: said === 'returned' ? -Math.abs(pieces) : pieces,
      purchase: transaction === null ? '' : cell(cells, transaction).slice(0, ID_MAX),
      rowId: line === null ? '' : cell(cells, line).slice(0, ID_MAX),
      voided: said === 'voided',
    }
    return { row, fault: null }
  }

  #piecesOf(cells: readonly string[]): number | Told<RowFault> {
    const { pieces, decimal } = this.#mapping
    if (pieces === null) return 1
    const text = cell(cells, pieces)
    const count = numberOf(text, decimal)
    const place = { text, column: pieces + 1 }
    if (count === null) return rowFault('no-pieces', place)
    if (!Number.isInteger(count)) return rowFault('parts-of-pieces', place)
    if (Math.abs(count) > PIECES_MAX) return rowFault('too-many-pieces', { ...place, most: PIECES_MAX })
    return count
  }
}

/**
 * A number as tills write it; null when it is none.
 * @example numberOf('1.234,50', ',') // 1234.5
 * @example numberOf('(2)', '.') // -2
 */
export function numberOf(text: string, decimal: '.' | ','): number | null {
  // Most are one digit.
  if (text.length === 1) return text >= '0' && text <= '9' ? text.charCodeAt(0) - ZERO : null
  const found =
    /^(\()?([-\u2212+])? ?(\d[\d.,' \u00a0]*|[.,]\d+)(-)?\)?(?: ?(?:x|\u00d7|ea|pcs?|uds?|pzas?)\.?)?$/i.exec(text)
  if (found === null) return null
  const [, opened, sign, digits = '', minusBehind] = found
  const plain =
    decimal === '.' ? digits.replace(/[,' \u00a0]/g, '') : digits.replace(/[.' \u00a0]/g, '').replace(',', '.')
  const value = Number(plain)
  if (!Number.isFinite(value)) return null
  const isNegative = opened !== undefined || minusBehind !== undefined || (sign !== undefined && sign !== '+')
  return (isNegative ? -value : value) + 0
}

/**
 * Words by which a till says that a row is no sale. Common practice of tills, no source.
 * @example standing('Refunded') // 'returned'
 */
export function standing(text: string): 'sold' | 'voided' | 'returned' {
  if (text === '') return 'sold'
  const word = text.toLowerCase()
  if (/^(refund|return|devol|reembols)/.test(word)) return 'returned'
  return YES.has(word) || /^(void|cancel|anul|delet)/.test(word) ? 'voided' : 'sold'
}
const YES: ReadonlySet<string> = new Set(['true', 'yes', 'y', 'sí', 'si', 's', 'x', '1', 'v'])

function nameOf(item: string, detail: string): string {
  const name = detail === '' || item === '' ? item : `${item} ${detail}`
  return (/\s\s|[\t\n\r]/.test(name) ? name.replace(/\s+/g, ' ') : name).slice(0, NAME_MAX)
}

function cell(cells: readonly string[], index: number): string {
  return cells[index]?.trim() ?? ''
}

function wrong(code: RowFault, params: Told<RowFault>['params']): RowRead {
  return { row: null, fault: rowFault(code, params) }
}
