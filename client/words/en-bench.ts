import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type {
  BenchSentences,
  ContentsWords,
  DoneWords,
  MoreWords,
  PiecesWords,
  SheetWords,
  ShelfWords,
  StationWords,
  TopWords,
} from './bench.ts'
import type { Words } from './words.ts'

export function enBench(words: Words): BenchSentences {
  const { times, line } = words
  return {
    top: top(times),
    station: station(words),
    shelf: shelf(),
    sheet: sheet(),
    contents: contents(line),
    pieces: pieces(),
    more: more(),
    done: done(times),
  }
}

const INTO: { readonly [stage in BatchStage]: string } = {
  proof: 'to proof',
  chill: 'into the cooler',
  rack: 'onto the rack',
  kettle: 'into the kettle',
  boards: 'onto boards',
  oven: 'into the oven',
}

function top(times: Words['times']): TopWords {
  return {
    lastLoad: (atMs) => `last load in ${times.by(atMs)}`,
    ruler: {
      lastLoad: () => 'last load',
      lastLoadGone: 'no more loads',
      closedToday: 'closed today',
      changeover: 'changeover',
      tooLate: (atMs) => `load ${times.clock(atMs)} too late`,
    },
    loadsToGo: (loads) => (loads === 0 ? 'no loads to go' : `${loads} ${loads === 1 ? 'load' : 'loads'} to go`),
    demo: 'Demo',
    linked: 'linked',
    device: 'bench tablet',
    day: 'The day',
    coming: 'Coming',
    waiting: 'Looking for the shop …',
    noShop: 'The shop has no set-up yet. Load one at the desk, or start with a set-up file.',
    pedalTooSoon: 'Not done: the board had just changed. Press again.',
    pedalNothing: (name) => `${name}: nothing to do here`,
    touchForSound: 'touch for sound',
    others: (count) => `+${count}`,
  }
}

function station({ times, line }: Words): StationWords {
  return {
    rack: 'Rack and cooler',
    kettle: 'Kettle',
    boards: 'Boards',
    oven: 'Oven: one key a shelf',
    ovenInTurn: 'Oven: the frame marks the door',
    hearth: 'Hearth: one key a load',
    empty: 'empty',
    next: (dough, count) => `next ${dough} ${count}`,
    becomes: (what) => `becomes ${what}`,
    freePieces: (lines) => `Free pieces: ${line.becomes(lines)}`,
    forAfternoon: 'wanted for the afternoon',
    goneNow: 'there is none',
    goneElse: (atMs) => `else gone ${times.clock(atMs)}`,
    amount: (dough, count) => `${dough} ${count}`,
    nothingPlanned: 'nothing planned',
    notReady: (atMs) => `not ready, look ${times.at(atMs)}`,
    boilBy: (atMs) => `ready, boil ${times.by(atMs)}`,
    ready: 'ready',
    past: (atMs) => `past its time ${times.since(atMs)}`,
    boardsNow: (free, out) => `${free} wet, ${out} out`,
    boardsWetting: (boards) => `${boards} getting wet`,
    boardsOver: (boards) => `${line.boards(boards)} short`,
    andMore: (count) => `and ${count} more`,
    line: 'The line',
  }
}

function shelf(): ShelfWords {
  return {
    differs: 'differs',
    differsOf: (name) => `${name} differs`,
    ofLoad: (verb, what) => `${verb.charAt(0).toUpperCase()}${verb.slice(1)} ${what}`,
    chooseWhat: 'choose what',
    bakesFor: (marks) => `bakes for ${marks.join(', ')}`,
    unconfirmed: 'not confirmed yet',
    atDoor: 'at the door',
    toTop: (varieties) => `then top: ${varieties.join(', ')}`,
    topNow: (varieties) => `top ${varieties.join(', ')} now`,
    kinds: (count, kinds) => `${count}, ${kinds} kinds`,
    more: (count) => `+${count}`,
    touchWhatDiffers: 'Touch what differs',
  }
}

function sheet(): SheetWords {
  return {
    back: 'Back to the line',
    earlier: 'earlier',
    further: 'further',
    page: (page, pages) => `${page} of ${pages}`,
    least: 'least',
    most: 'most',
    less: (name, step) => `${step} ${name} fewer`,
    plus: (name, step) => `${step} ${name} more`,
  }
}

function contents(line: Words['line']): ContentsWords {
  return {
    before: (name) => `Load ${name}: what goes in`,
    inside: (name) => `Shelf ${name}`,
    varieties: 'Varieties',
    loadList: 'Load list',
    whatIsIn: 'What is in it',
    someOut: 'Some out',
    move: 'Move it',
    dropped: 'Dropped',
    touchToAdd: 'Touch a variety: a board more. Touch a line, then a variety: it becomes that.',
    becomes: (variety) => `${variety} becomes …`,
    nothingYet: 'Nothing chosen yet',
    sum: (count, most, boards) =>
      `${most === null ? '' : `${count} of `}${line.pieces(most ?? count)}, ${line.boards(boards)}`,
    thatIsIn: 'That is in it',
    unchanged: 'nothing changed',
    nothingPlanned: 'No other load is on the list.',
    outOf: 'Out now',
    ofAll: (count, all) => `${count} of ${all}`,
    toShelf: (name) => `To shelf ${name}`,
    taken: 'taken',
    backToFirstSide: 'Back to the first side',
    onToSecondSide: 'Second side, no flip',
    backOntoBoards: 'Back onto boards',
    loadGone: 'This load is out already.',
  }
}

function pieces(): PiecesWords {
  return {
    pull: 'Pull trays',
    dip: 'Dip',
    board: 'Board',
    carryIn: 'Trays already here',
    shape: 'Shaped now',
    put: (count, dough, stage) => `${count} ${dough} ${INTO[stage]}`,
    proofing: (count) => `${count} proofing`,
    number: { one: 'piece', many: 'pieces' },
    hours: { one: 'hour there', many: 'hours there' },
  }
}

function more(): MoreWords {
  return {
    title: 'More',
    unplanned: 'Unplanned load',
    unplannedDetail: 'choose shelf and varieties',
    carryInDetail: 'found in the cooler or on the rack',
    shapeDetail: 'to proof or chill',
    line: 'On the line',
    lineDetail: 'split, move on or back, dropped',
    doughRoom: 'Dough room',
    doughRoomDetail: 'mixes, proof, cooler',
    kitchen: 'Kitchen',
    kitchenDetail: 'made to order, second menu',
    skip: 'Leave out a load',
    skipDetail: 'from the load list',
    settings: 'Settings',
    notFetched: 'This comes from the server, which cannot be reached. It opens once the server is back.',
    otherDough: 'another dough or number',
    whichShelf: 'Which shelf',
    whichLoad: 'Which load is left out',
    nothingOnLine: 'Nothing is on the line.',
    nothingToSkip: 'No load is to come.',
    batch: (count, name, stage) => `${count} ${name} ${STANDS[stage]}`,
    onTo: (stage) => `On to ${TO[stage]}`,
    backTo: (stage) => `Back to ${TO[stage]}`,
    wasted: (count) => `Dropped or spoiled: ${count}`,
    batchGone: 'These pieces have moved on.',
    howMany: 'How many',
  }
}

const TO: { readonly [stage in BatchStage]: string } = {
  proof: 'proof',
  chill: 'the cooler',
  rack: 'the rack',
  kettle: 'the kettle',
  boards: 'the boards',
  oven: 'the oven',
}

const STANDS: { readonly [stage in BatchStage]: string } = {
  proof: 'proofing',
  chill: 'in the cooler',
  rack: 'on the rack',
  kettle: 'in the kettle',
  boards: 'on boards',
  oven: 'in the oven',
}

function done(times: Words['times']): DoneWords {
  return {
    title: 'What was done',
    nothingHere: 'nothing done here yet',
    nothingYet: 'nothing yet',
    notThis: 'not this one',
    takenBack: (what) => `taken back: ${what}`,
    others: 'take back others',
    outOfWindow: ({ limit, byMs }) => `${times.span(byMs)} ${limit === 'too-early' ? 'too early' : 'too late'}`,
    nothing: 'Nothing has been done yet.',
    here: 'this screen',
    dryHands: 'Dry hands',
    toConfirm: (count) => `${count} to confirm`,
    nothingToConfirm: 'nothing to confirm',
    allRight: 'All are right',
    right: 'That is right',
    putAway: 'Put away',
    lookAt: 'differs',
  }
}
