import type { OrderDoubt } from '../../shared-core/live/orders-import.ts'
import type { Told } from '../../shared-core/live/sales-import.ts'
import type { CalendarWords, FilesWords, NamesWords } from './desk-orders-files.ts'
import type { Words } from './words.ts'

export function enOrdersFiles({ line }: Words): { readonly names: NamesWords; readonly files: FilesWords } {
  return { names: NAMES, files: files(line.list) }
}

const NAMES: NamesWords = {
  lead: 'Names, phone numbers and notes stand apart from the orders, in no record of past days and no daily copy. What is deleted here is gone for good; the order itself stays.',
  forgotten: (days) =>
    days === 0
      ? 'They are forgotten by themselves on the day after the order’s day. Of standing orders they stay while these stand.'
      : `They are forgotten by themselves ${days} ${days === 1 ? 'day' : 'days'} after the order’s day. Of standing orders they stay while these stand.`,
  search: 'Find a name, a number or a mark',
  columns: { name: 'name', phone: 'phone', note: 'note', of: 'of' },
  ofStanding: (mark) => `standing order ${mark}`,
  ofOrder: (mark, date) => (mark === null ? `an order of ${date}` : `${mark}, ${date}`),
  none: 'Nothing is known of anybody.',
  noneSuch: 'Nobody is called that.',
  remove: 'Delete',
  removeOf: (name) => `Delete: ${name}`,
  sure: (name) => `Delete what is known of ${name} for good? Nobody can bring it back.`,
  yes: 'Yes, delete it',
  no: 'No',
  removed: (name) => `Deleted: ${name}.`,
  notRemoved: 'It could not be deleted now.',
  more: (names) => `And ${names} more: search for them.`,
}

const CALENDAR: CalendarWords = {
  title: 'Orders in a calendar',
  lead: 'A link for a calendar on a phone or computer: it shows when orders are due, with mark and pieces, never names. Whoever has the link sees that and nothing else.',
  name: 'Whose calendar',
  make: 'Make a link',
  once: 'This link is shown once. Put it into the calendar now as a calendar by address.',
  openShop: 'The shop lets everybody in, so the link holds no secret.',
  copy: 'Copy',
  copied: 'Copied',
  done: 'Done',
  end: 'End it',
  older: 'Links made earlier stand among the devices, and are ended there:',
  ended: 'Ended: it shows nothing any more.',
  failed: 'That did not work.',
}

function doubtText({ code, params, text }: Told<OrderDoubt>, date: (iso: string) => string): string {
  switch (code) {
    case 'day-or-month':
      return `"${params.text}" is read as ${date(String(params.one))}; it could also be ${date(String(params.other))}. No day after the 12th decides: say which.`
    case 'am-or-pm':
      return `"${params.text}" has neither am nor pm, and the shop is not open so early: say whether the afternoon is meant.`
    case 'no-ref':
      return 'No column holds the order’s number: each row is an order of its own, and a file that comes twice would be taken twice.'
    case 'many-bad':
      return `${params.bad} of the ${params.of} rows cannot be read so. Is each column what it is taken for?`
    default:
      return text
  }
}

function files(list: (items: readonly string[]) => string): FilesWords {
  return {
    title: 'Orders from a file',
    lead: 'A CSV from your own web page, a form or a spreadsheet: one row for each line of an order. It is looked at first; nothing is taken before you say so.',
    choose: 'Choose a file',
    orDrop: 'or drop one here.',
    dropNow: 'Let go: it is looked at first, nothing is taken yet.',
    reading: 'Reading the file…',
    columnsTitle: (name) => `How ${name} is read`,
    columnsHint: 'Beside each column stands what it is taken for. Change what is not right.',
    remembered: 'Columns as the last file of this form had them.',
    column: {
      none: 'not used',
      ref: 'number of the order',
      mark: 'mark',
      name: 'name',
      phone: 'phone',
      dueDate: 'date, or date and time',
      dueTime: 'time',
      way: 'fetched or delivered',
      variety: 'variety',
      dozens: 'dozens',
      pieces: 'pieces',
      item: 'thing of the menu',
      sliced: 'sliced',
      bagged: 'bagged',
      paid: 'paid',
      note: 'note',
    },
    afternoon: 'a time before the opening means the afternoon',
    doubt: doubtText,
    // The server writes its sentences in English.
    fault: ({ text }) => text,
    understood: (orders) => `Understood: ${orders} ${orders === 1 ? 'order' : 'orders'}`,
    rowColumns: {
      rows: 'lines',
      due: 'due',
      mark: 'mark',
      name: 'name',
      what: 'what',
      way: 'how',
      state: 'state',
    },
    state: { new: 'new', known: 'there already', taken: 'taken' },
    guessed: (text, meant) => `"${text}" is taken for ${meant}`,
    faults: (rows) => `Not taken: ${rows} ${rows === 1 ? 'row' : 'rows'}`,
    faultsHint: 'Correct them in the file and drop it again: orders that are there already are not taken twice.',
    line: (number) => `Line ${number}`,
    lines: (numbers) => list(numbers.map(String)),
    nothing: 'No orders are found. Is it a table, with one line of an order in each row?',
    take: (orders) => `Take ${orders} ${orders === 1 ? 'order' : 'orders'}`,
    nothingNew: 'Nothing new to take',
    taken: (orders) => `Taken: ${orders} ${orders === 1 ? 'order' : 'orders'}.`,
    putAway: 'Put this file away',
    failed: 'That did not work.',
    calendar: CALENDAR,
  }
}
