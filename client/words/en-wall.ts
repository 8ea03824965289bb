import { listed } from './joined.ts'
import type { BarWords, RodWords, RulerWords, StandingWords, WallWords } from './wall.ts'
import type { Words } from './words.ts'

export function enWall(words: Words): WallWords {
  const { times, names } = words
  return {
    kettle: 'Kettle',
    oven: 'Oven',
    boardsFree: (boards) => `${boards} wet ${boards === 1 ? 'board' : 'boards'} free`,
    boardsShort: (boards) => `${words.line.boards(boards)} short`,
    becomes: (_pieces, list) => `becomes ${list}`,
    become: ({ varietyId, pieces }) => `${pieces} ${names.variety(varietyId)}`,
    more: (count) => `${count} more`,
    following: (act) => `then ${act}`,
    next: 'Next',
    noDips: 'No dips planned',
    notReady: (name, atMs) => `${name} not ready, look ${times.at(atMs)}`,
    standsTooLong: (name, sinceMs) => `${name} over ${times.since(sinceMs)}`,
    shelfFree: (shelf) => `${shelf} free`,
    nextOn: (contents) => `next ${contents}`,
    topAfter: (topped) => `then top ${topped}`,
    topNow: (topped) => `now top ${topped}`,
    atDoor: (shelf) => `${shelf} at the door`,
    otherShelves: (count, first) =>
      joinComma(`${count} ${count === 1 ? 'other' : 'others'}`, first === '' ? '' : `first ${first}`),
    late: 'late',
    rods: rodWords(words),
    ruler: rulerWords(words),
    thisScreen: 'This screen',
    standing: standingWords(words),
    bar: BAR,
    empty: EMPTY,
    touchForSound: 'touch for sound',
    soundOff: 'no sound',
    quietHours: 'quiet hours',
    demo: 'Demo',
    questions: (count) => `${count} ${count === 1 ? 'question waits' : 'questions wait'}: touch the clock`,
  }
}

function rodWords({ times, names }: Words): RodWords {
  return {
    goneAt: (atMs) => `gone ${times.clock(atMs)}`,
    mayRunOut: (fromMs) => `may run out ${times.clock(fromMs)}`,
    mayNotReach: 'may run out first',
    goneSince: (atMs) => `gone ${times.since(atMs)}`,
    mayBeGone: 'may be gone',
    none: 'none yet',
    noneFrom: (fromMs, toMs) => `none ${times.clock(fromMs)}–${times.clock(toMs)}`,
    fineTo: (atMs) => `fine ${times.upTo(atMs)}`,
    more: (pieces, atMs) => `${pieces} ${times.at(atMs)}`,
    noMore: 'no more coming',
    others: (count) => `${count} ${count === 1 ? 'other' : 'others'}`,
    othersFine: 'fine',
    nothingOut: 'Nothing for sale',
    firstAt: ({ varietyId, pieces }, atMs) => `first: ${pieces} ${names.variety(varietyId)} ${times.at(atMs)}`,
    spoken: (name, pieces, onTheWay) => `${name}: ${pieces} for sale, ${onTheWay} on the way`,
  }
}

function rulerWords({ times }: Words): RulerWords {
  return {
    lastLoad: (atMs) => `last load in ${times.by(atMs)}`,
    lastLoadGone: 'no more loads',
    closedToday: 'closed today',
    changeover: 'changeover',
    tooLate: (atMs) => `load ${times.clock(atMs)} too late`,
    more: (count) => `+${count}`,
    spoken: 'The day',
  }
}

function standingWords({ times }: Words): StandingWords {
  return {
    titles: { proof: 'Proofing', chill: 'Chilled', rack: 'On the rack', cool: 'Cooling' },
    ready: 'ready',
    readyPart: (pieces) => `${pieces} ready`,
    readyAt: (atMs) => `ready ${times.at(atMs)}`,
    goodTo: (atMs) => `good ${times.upTo(atMs)}`,
    over: (sinceMs) => `over ${times.since(sinceMs)}`,
    nothing: 'nothing',
  }
}

const BAR: BarWords = {
  nothing: 'Nothing to do on the line',
  done: (did) => listed('Done', did),
  justChanged: 'Not done: the board had just changed. Press again.',
  nothingFor: (station) => `${station}: nothing to do`,
  coming: (what) => `${what}: somebody is coming`,
}

const EMPTY: WallWords['empty'] = {
  connecting: {
    title: 'Looking for the shop…',
    text: 'If this stays: is the computer with Boilboard on, and is this screen in the same network?',
  },
  'no-set-up': {
    title: 'No shop is set up here yet',
    text: 'Load the set-up file when starting, or at the desk. The wall shows the line as soon as it is there.',
  },
  'no-day': {
    title: 'Good morning',
    text: 'The first act opens the day: pull, dip or load.',
  },
  idle: {
    title: 'The line is empty',
    text: 'Shaped dough, a pull or a load shows up here.',
  },
}

function joinComma(one: string, other: string): string {
  return other === '' ? one : `${one}, ${other}`
}
