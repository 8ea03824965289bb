import type { RowFault, Told } from '../../shared-core/live/sales-import.ts'
import { unreachable } from '../../shared-core/support.ts'

type Params = Told<RowFault>['params']

/** What is wrong with a row and what would be right, as a code with its sentence. */
export function rowFault(code: RowFault, params: Params): Told<RowFault> {
  return { code, params, text: textOf(code, params) }
}

function textOf(code: RowFault, { columns, needed, text, column, most, example }: Params): string {
  switch (code) {
    case 'too-few-columns':
      return `The row has ${columns} columns; ${needed} are needed. Is it a total or a line that was cut off?`
    case 'no-date':
      return `"${text}" in column ${column} is no date as in the other rows. Write it like theirs, e.g. ${example}.`
    case 'to-come':
      return `"${text}" in column ${column} is after the day on which the file came. Write the day of the sale.`
    case 'no-time':
      return `"${text}" in column ${column} is no time. Write it as 8:05 or 8:05 am.`
    case 'no-item':
      return `Column ${column} is empty; it must say what was sold.`
    case 'no-pieces':
      return `"${text}" in column ${column} is no number of pieces. Write a whole number, with a minus for a return.`
    case 'parts-of-pieces':
      return `${text} pieces in column ${column} are not whole ones. Write a whole number.`
    case 'too-many-pieces':
      return `${text} pieces in column ${column} are more than one row can be; at most ${most}.`
    case 'open-quote':
      return 'A quotation mark opens in this line and is not closed. Close it, or leave it out.'
    default:
      return unreachable(code)
  }
}
