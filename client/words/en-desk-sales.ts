import type { SalesWords } from './desk-sales.ts'
import { EN_SALES_NAMES } from './en-desk-sales-names.ts'

const MARKS = new Intl.NumberFormat('en-US')

const number = (count: number) => MARKS.format(count)
const rows = (count: string) => `${count} ${count === '1' ? 'row' : 'rows'}`

export const EN_SALES: SalesWords = {
  pages: { files: 'Files', names: 'What names mean' },
  pagesName: 'Pages of sales in',
  lead: 'Past sales from your till teach the board what sells when. They stay on your server, beside the journal.',
  waiting: 'Looking …',
  noContact: 'No contact with the shop’s server. It goes on as soon as there is.',
  unknown: 'This file is not here any more.',
  failed: 'That did not work.',
  drop: {
    choose: 'Choose a file',
    orDrop: 'or drop one here: a CSV that your till can save, of any length.',
    dropNow: 'Let go: it is looked at first, nothing is taken yet.',
    hint: 'One row for each line of a receipt is best: date and time, what was sold, how many, the receipt’s number. A file that overlaps an earlier one adds only what is new.',
    sending: (name, percent) => `${name}: ${percent} % is here`,
    stop: 'Stop',
    notSent: 'The file did not arrive. Try again when there is contact.',
  },
  files: {
    title: 'Files so far',
    none: 'None yet.',
    columns: {
      name: 'file',
      days: 'days',
      taken: 'good rows',
      doubled: 'there already',
      bad: 'not readable',
      state: 'state',
    },
    state: { waiting: 'waits for you', taking: 'being taken', taken: 'taken', failed: 'failed' },
    span: (from, to) => (from === to ? from : `${from} to ${to}`),
    remove: 'Remove',
    removeAsk: (name, count) => `Remove ${name} and its ${rows(count)}? What only this file has told is forgotten.`,
    removeEmptyAsk: (name) => `Remove ${name}? None of its rows was taken, so nothing is forgotten.`,
    removeYes: 'Remove it',
    removeNo: 'Keep it',
  },
  mapping: {
    title: (name) => `How ${name} is read`,
    hint: 'Beside each column stands what it is taken for. Change what is not right, and look below at what is understood.',
    remembered: 'Columns as the last file of this form had them.',
    column: {
      none: 'not used',
      date: 'date, or date and time',
      clock: 'time',
      item: 'what was sold',
      detail: 'belongs to the name',
      pieces: 'how many',
      transaction: 'receipt',
      line: 'id of the row',
      voided: 'void or return',
    },
    columnHint: {
      none: 'It is left alone.',
      date: 'The day of the sale.',
      clock: 'Where it stands apart from the date.',
      item: 'The name on the till’s key.',
      detail: 'A size or a kind that makes the name whole.',
      pieces: 'A minus is a return.',
      transaction: 'What the lines of one receipt have in common.',
      line: 'By which a row is known again in another file.',
      voided: 'Says of a row that it does not count.',
    },
    columnNumber: (number_) => `Column ${number_}`,
    missing: { date: 'Say which column holds the date.', item: 'Say which column holds what was sold.' },
    form: 'How the file is written',
    hasHeader: 'the first line names the columns',
    skip: 'Lines to leave out at the beginning',
    delimiter: 'Between columns',
    delimiters: { ',': 'comma', ';': 'semicolon', '\t': 'tab', '|': 'bar |' },
    quote: 'Text in',
    decimal: 'Decimals after',
    dateForm: 'Dates are',
    itIs: (date) => `No: it is ${date}`,
    dateForms: {
      'y-m-d': 'year, month, day',
      'm-d-y': 'month, day, year',
      'd-m-y': 'day, month, year',
      'epoch-s': 'seconds since 1970',
      'epoch-ms': 'milliseconds since 1970',
    },
    understood: 'What is understood',
    rows: {
      line: 'line',
      day: 'day',
      time: 'time',
      item: 'what',
      pieces: 'pieces',
      purchase: 'receipt',
    },
    voided: 'void',
    take: 'Take this file',
    noRows: 'No rows are found. Is it a table, with one sale in each line?',
  },
  taking: {
    progress: (percent, rate) => (rate === null ? `${percent} %` : `${percent} %, ${rate} rows a second`),
    leave: 'It goes on by itself: you may leave this page, and even the server may be stopped in between.',
    stuck: 'It cannot be gone on with for now, and is tried again twice a minute. Is the server’s disk full?',
    again: 'Go on',
    result: (count, taken) => `${rows(count)} read, ${taken} of them good.`,
    doubled: (count) => `${count} were there already, from another file or the till’s own feed.`,
    allGood: 'Every row could be read.',
    toNames: 'See what the names mean',
    failed: 'It could not be taken to its end.',
    figures: { rows: 'rows read', taken: 'good rows', doubled: 'of these there already', bad: 'not readable' },
  },
  bad: {
    title: 'Rows that could not be read',
    hint: 'Correct a line as it should stand in the file, and take it; or let it go where it is no sale.',
    line: (line) => `Line ${number(line)}`,
    save: 'Take it',
    saveAll: (lines) => `Take these ${number(lines)} lines`,
    letGo: 'No sale',
    more: 'More',
    taken: (lines, doubled) =>
      doubled === 0 ? `✓ ${number(lines)} taken` : `✓ ${number(lines)} taken, ${number(doubled)} were there already`,
    unsaved: 'changed, not taken yet',
  },
  names: EN_SALES_NAMES,
  doubt: ({ code, params, text }, date) => {
    switch (code) {
      case 'day-or-month':
        return `"${params.text}" is read as ${date(String(params.one))}; it could also be ${date(String(params.other))}. No day after the 12th decides: say which.`
      case 'same-file':
        return `This very file is here already, as "${params.name}". Taken again it adds nothing.`
      case 'no-transaction':
        return 'Nothing tells which rows were bought together: each row counts as a purchase of its own.'
      case 'one-a-row':
        return 'No column says how many: each row counts as one.'
      case 'no-times':
        return 'The file has dates without times: it tells how many went in a day, not when.'
      case 'many-bad':
        return `${params.bad} of the ${params.of} rows looked at cannot be read so. Is each column what it is taken for?`
      default:
        return text
    }
  },
  // The server writes its sentences in English.
  fault: ({ text }) => text,
  number,
}
