import type { OrderDoubt, OrderFault } from '../../shared-core/live/orders-import.ts'
import type { Told } from '../../shared-core/live/sales-import.ts'
import { unreachable } from '../../shared-core/support.ts'

type Params = Told<OrderFault>['params']

/** What is wrong with a row of a file of orders and what would be right, as a code with its sentence. */
export function orderFault(code: OrderFault, params: Params = {}): Told<OrderFault> {
  return { code, params, text: textOf(code, params) }
}

function textOf(code: OrderFault, { text, column, example, near, item, most, line, refusal }: Params): string {
  switch (code) {
    case 'no-date':
      return `"${text}" in column ${column} is no date as in the other rows. Write it like theirs, e.g. ${example}.`
    case 'no-time':
      return 'It does not say at what time the order is due. Write it as 7:30 or 7:30 am, beside the date or in a column of its own.'
    case 'not-to-come':
      return `"${text}" is over, or more than 400 days ahead. Write a time that is to come.`
    case 'no-way':
      return `"${text}" in column ${column} is neither pick-up nor delivery. Write one of the two, or leave it empty for pick-up.`
    case 'no-variety':
      return `The shop has no variety "${text}" (column ${column}).${isLike(near)} Write a variety's name, or "mixed".`
    case 'no-item':
      return `There is no "${text}" on the menu (column ${column}).${isLike(near)} Write the name of something made to order.`
    case 'no-bagel':
      return `"${item}" is made on a bagel, and the row does not say on which. Name a variety.`
    case 'no-dozens':
      return `"${text}" in column ${column} is no number of dozens. Write 2, or 1.5 for one and a half.`
    case 'no-pieces':
      return `"${text}" in column ${column} is no number of pieces. Write a whole number from 1 on.`
    case 'no-yes':
      return `"${text}" in column ${column} is neither yes nor no. Write yes, or leave it empty.`
    case 'mark-too-long':
      return `"${text}" in column ${column} is no mark. A mark is a number or initials of at most ${most} characters; a name has its own column.`
    case 'too-long':
      return `What stands in column ${column} is too long. Write at most ${most} characters.`
    case 'too-many-lines':
      return `The order has more than ${most} lines. Make two of it.`
    case 'too-many-pieces':
      return `${text} are more than one line may have, ${most}. Write a smaller number.`
    case 'nothing-ordered':
      return 'Nothing says what is ordered. Name a variety or something on the menu.'
    case 'rows-differ':
      return `Line ${line} is a row of the same order and says something else in column ${column}. Write the same in both, or leave it empty below.`
    case 'open-quote':
      return 'A quotation mark opens in this line and is not closed. Close it, or leave it out.'
    case 'refused':
      return `The shop did not take the order: ${refusal}.`
    default:
      return unreachable(code)
  }
}

function isLike(near: string | number | undefined): string {
  return near === undefined || near === '' ? '' : ` Is it "${near}"?`
}

/** What is in doubt about a whole file of orders. */
export function orderDoubt(code: OrderDoubt, params: Params = {}): Told<OrderDoubt> {
  return { code, params, text: doubtText(code, params) }
}

function doubtText(code: OrderDoubt, { text, one, other, bad, of }: Params): string {
  switch (code) {
    case 'day-or-month':
      return `"${text}" is read as ${one}; it could be ${other}. A day after the 12th would decide; say which.`
    case 'am-or-pm':
      return `"${text}" does not say whether it is of the morning or the afternoon, and the oven is not ready so early. Say which.`
    case 'no-ref':
      return 'No column says which rows are one order: each row is an order of its own.'
    case 'many-bad':
      return `${bad} of the ${of} rows cannot be read so. Is each column what it is taken for?`
    default:
      return unreachable(code)
  }
}
