import { PIECES_MAX } from '../../shared-core/day/command-fields.ts'
import type { OrderFault, OrderMapping } from '../../shared-core/live/orders-import.ts'
import type { Told } from '../../shared-core/live/sales-import.ts'
import { numberOf } from '../sales/read-row.ts'
import { orderFault } from './import-fault.ts'

/** A dozen by halves is the most that people write: six pieces, also where a dozen is thirteen. */
const HALF_PIECES = 6
const DOZENS_MAX = 400

export interface Counted {
  readonly dozens: number
  readonly pieces: number
}

/** So many of what is itself so many: three of "half dozen". Twelves are dozens. */
export function times({ dozens, pieces }: Counted, each: number): Counted {
  if (each === 1) return { dozens, pieces }
  const all = (dozens * DOZEN + pieces) * each
  return each % DOZEN === 0 ? { dozens: all / DOZEN, pieces: 0 } : { dozens: 0, pieces: all }
}
const DOZEN = 12

export interface CountCells {
  readonly dozens: string
  readonly pieces: string
  readonly columns: OrderMapping['columns']
  readonly decimal: '.' | ','
}

/**
 * How many a row orders; null: it cannot be read, and a fault more. Where no column says how many, a row is one.
 * @example of dozens "1.5" and pieces "2": { dozens: 1, pieces: 8 }
 */
export function countIn({ dozens, pieces, columns, decimal }: CountCells, faults: Told<OrderFault>[]): Counted | null {
  if (columns.dozens === null && columns.pieces === null) return { dozens: 0, pieces: 1 }
  const column = (at: number | null) => (at ?? -1) + 1
  const said = dozens === '' ? 0 : halvesOf(dozens, decimal)
  const one = pieces === '' ? 0 : numberOf(pieces, decimal)
  if (said === null || said > DOZENS_MAX) {
    faults.push(orderFault('no-dozens', { text: dozens, column: column(columns.dozens) }))
    return null
  }
  const isNone = said === 0 && one === 0
  if (one === null || !Number.isInteger(one) || one < 0 || isNone) {
    const at = columns.pieces ?? columns.dozens
    faults.push(orderFault('no-pieces', { text: pieces === '' ? dozens : pieces, column: column(at) }))
    return null
  }
  const whole = Math.floor(said)
  const rest = one + (said - whole > 0 ? HALF_PIECES : 0)
  if (rest > PIECES_MAX) {
    faults.push(orderFault('too-many-pieces', { text: String(rest), most: PIECES_MAX }))
    return null
  }
  return { dozens: whole, pieces: rest }
}

/** @example "1.5", "1,5", "1½", "½", "half" */
function halvesOf(text: string, decimal: '.' | ','): number | null {
  const half = /^(\d*) ?(?:½|1\/2|half|media)$/i.exec(text)
  if (half !== null) return Number(half[1] || 0) + 0.5
  // Nobody writes thousands of dozens: a comma is a decimal one, whatever the rest of the file says.
  const value = numberOf(text, /^\d+,5$/.test(text) ? ',' : decimal)
  return value === null || value < 0 || !Number.isInteger(value * 2) ? null : value
}
