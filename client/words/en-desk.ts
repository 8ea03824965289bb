import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type {
  AccountWords,
  DayWords,
  DeskDoneWords,
  DeskSentences,
  DistanceWords,
  DryWords,
  LoadsWords,
  MistakeWords,
  ScreensWords,
  SetUpWords,
  TraysWords,
} from './desk.ts'
import { enToday } from './en-desk-today.ts'
import type { Words } from './words.ts'

export function enDesk(words: Words): DeskSentences {
  const { times, line } = words
  return {
    title: 'Desk',
    places: {
      today: 'Today',
      orders: 'Orders',
      loads: 'Loads and trays',
      coming: 'Coming days',
      plan: 'Plan',
      dough: 'Dough room',
      close: 'Close',
      past: 'Past days',
      history: 'Sales and forecasts',
      salesIn: 'Sales in',
      setUp: 'Set-up',
      screens: 'Screens',
    },
    placesName: 'Places of the desk',
    waitsFor: (count) => `${count} ${count === 1 ? 'waits' : 'wait'} for an answer`,
    late: {
      waiting: 'Fetching this page…',
      failed: 'This page could not be fetched. Try again when there is contact.',
      again: 'Try again',
    },
    today: enToday(words),
    titles: {
      day: 'The day',
      loads: 'Load list',
      trays: 'Trays',
      done: 'What was done',
      dry: 'Dry hands',
      screens: 'Screens',
      distance: 'Wall distance',
      cautions: 'Cautions',
    },
    day: day(times, line),
    account: ACCOUNT,
    loads: LOADS,
    mistakes: mistakes(line),
    trays: TRAYS,
    setUp: SET_UP,
    screens: screens(times),
    done: DONE,
    dry: DRY,
    distance: DISTANCE,
    halfDays: { am: 'am', pm: 'pm' },
    looking: 'Looking for the shop…',
    noSetUp: 'No shop is set up here yet. Upload a set-up file below.',
    language: 'Language',
    putAway: 'Put away',
    refused: (count) => `${count} refused`,
  }
}

function day(times: Words['times'], line: Words['line']): DayWords {
  return {
    open: (label, atMs) => `Open ${times.since(atMs)}: ${times.date(label)}`,
    notOpen: 'No day is open. The first act of a morning opens it.',
    openIt: 'Open the day',
    goClose: 'Go to the close',
    overdue: (label) => `${times.date(label)} was never closed. Close it, or the first act of the morning will.`,
    closeAll: (pieces) =>
      `Close the day? ${line.pieces(pieces)} ${pieces === 1 ? 'is' : 'are'} still in the kettle, on boards or in the oven.`,
    accounted: 'Every piece is accounted for.',
    gap: (dough, pieces) => `${dough}: ${line.pieces(pieces)} cannot be placed. This is a fault of the board.`,
    last: (label, atMs) => `Last closed: ${times.date(label)}, ${times.at(atMs)}`,
    nothingLeft: 'nothing',
  }
}

const ACCOUNT: AccountWords = {
  title: 'Where every piece is',
  columns: {
    dough: 'Dough',
    shaped: 'shaped',
    carriedIn: 'carried in',
    onTheLine: 'on the line',
    forSale: 'out',
    kept: 'kept',
    sold: 'sold',
    kitchen: 'kitchen',
    wasted: 'wasted',
    given: 'given away',
    dayOld: 'day-old',
    unexplained: 'unexplained',
    carriedOn: 'carried on',
  },
  rule: 'Shaped and carried in = on the line + out (for sale or cooling) + kept + sold + kitchen + wasted + given away + day-old + unexplained.',
  total: 'All',
  unexplainedHint: 'Unexplained: + when a count found fewer than known, − when more turned up.',
}

const LOADS: LoadsWords = {
  typed: 'Type it',
  typedHint:
    'One load a line: time, shelf, then varieties with pieces. Time and shelf may be left out; afternoon times are 9:10 pm or 21:10.',
  example: '5:10 1 Sesame 36, Poppy 24',
  take: 'Take this list',
  file: 'Upload a file',
  fileHint: 'CSV with the columns in, shelf, variety, pieces; or JSON.',
  taken: (loads) => `Taken: ${loads} ${loads === 1 ? 'load' : 'loads'}.`,
  replaces: 'A new list replaces the loads that are still to come.',
  planned: 'Planned loads',
  none: 'No loads are planned.',
  columns: { in: 'in', shelf: 'shelf', contents: 'what', state: 'state' },
  anyShelf: 'any',
  whenFree: 'when a shelf is free',
  inOn: (clock, day) => `${clock} for ${day}`,
  done: 'done or left out',
  toCome: 'to come',
  leaveOut: 'Leave out',
}

function mistakes(line: Words['line']): MistakeWords {
  return {
    title: (count) => `${count} ${count === 1 ? 'mistake' : 'mistakes'}; nothing of it was taken.`,
    line: (number) => `Line ${number}`,
    wholeFile: 'The file',
    right: 'Right would be',
    notJson: 'This is no valid JSON.',
    notJsonRight: 'A set-up file as it is downloaded here.',
    noContact: 'The server could not be reached. Try again when there is contact.',
    empty: 'The list is empty.',
    unreadable: (text) => `“${text}” is no variety with a number of pieces.`,
    unreadableRight: 'A variety and its pieces, separated by commas: Sesame 36, Poppy 24.',
    unknownVariety: (name) => `The shop has no variety “${name}”.`,
    unknownShelf: (name) => `The oven has no shelf “${name}”.`,
    oneOf: (names) => (names.length === 1 ? `${names.join('')}?` : `One of: ${names.join(', ')}.`),
    notATime: (text) => `“${text}” is no time.`,
    timeRight: 'Hours and minutes: 5:10 am, 9:10 pm or 21:10.',
    tooMany: (pieces) => `${line.pieces(pieces)} of one variety in one load are too many.`,
    tooManyRight: 'A whole number from 1 to 5000.',
  }
}

const STAGES: { readonly [stage in BatchStage]: string } = {
  proof: 'proofing',
  chill: 'in the cooler',
  rack: 'out on the rack',
  kettle: 'in the kettle',
  boards: 'on boards',
  oven: 'in the oven',
}

const TRAYS: TraysWords = {
  how: 'What',
  carriedIn: 'Found here',
  carriedInHint: 'Trays that were there before the board was.',
  shaped: 'Shaped now',
  shapedHint: 'Pieces divided and shaped just now.',
  dough: 'Dough',
  where: 'Where',
  stage: (stage) => STAGES[stage],
  number: 'How many',
  unit: 'counted in',
  pieces: 'pieces',
  traysOf: (pieces) => `trays of ${pieces}`,
  since: 'There since',
  today: 'today',
  yesterday: 'yesterday',
  dayBefore: 'the day before',
  notKnown: 'not known',
  now: 'now',
  clock: 'at',
  carryIn: (pieces, name) => `Carry in ${pieces} ${name}`,
  shape: (pieces, name) => `Shaped ${pieces} ${name}`,
  chooseNumber: 'Say how many: a whole number from 1 to 5000 pieces.',
  notLater: 'That time is still to come.',
  standing: 'What stands before the kettle',
  nothing: 'Nothing is proofing, chilled or on the rack.',
  untilOn: (clock, day) => `${day}, ${clock}`,
  columns: { where: 'where', what: 'what', pieces: 'pieces', since: 'since', until: 'good to' },
}

const SET_UP: SetUpWords = {
  upload: 'Upload a set-up',
  schema: 'Form of the file (JSON Schema)',
  taken: 'The set-up was taken.',
}

function screens(times: Words['times']): ScreensWords {
  return {
    role: { wall: 'Wall', bench: 'Bench', counter: 'Counter', desk: 'Desk' },
    connected: 'connected',
    lastSeen: (atMs) => `last seen ${times.at(atMs)}`,
    thisOne: 'this one',
    none: 'No screen has been seen yet.',
    columns: { name: 'name', role: 'what', station: 'station', state: 'link' },
    allStations: 'all',
    listName: 'Screens and when they were seen',
    localHint:
      '“localhost” works on this computer only. For other devices take the address that Boilboard prints when it starts.',
    name: 'Name of this screen',
    nameHint: 'e.g. Desk in the office',
  }
}

const DONE: DeskDoneWords = {
  nothing: 'Nothing has been done yet.',
  here: 'this screen',
  takeBack: 'Take back',
  older: 'Only the last acts are listed.',
}

const DRY: DryWords = {
  nothing: 'Nothing waits to be confirmed.',
  right: 'That is right',
  allRight: 'All are right',
}

const DISTANCE: DistanceWords = {
  hint: 'How far a wall screen can be read follows from its size: acts and counts need 22 minutes of arc.',
  diagonal: 'Diagonal, inches',
  widthPx: 'Pixels across',
  heightPx: 'Pixels down',
  metres: 'Distance, metres',
  supported: (farthestM) => `Yes: such a wall can be read from up to ${farthestM} m.`,
  notSupported: (farthestM) => `No: such a wall can be read from up to ${farthestM} m. Hang a larger one, or nearer.`,
  impossible: 'All four are numbers above 0.',
  tableDiagonal: 'Diagonal',
  tableFarthest: 'readable to',
}
