import type {
  AmountsWords,
  CounterDayWords,
  CounterRodWords,
  CounterSentences,
  HandWords,
  KeptWords,
  OrdersKeyWords,
} from './counter.ts'
import { joined } from './joined.ts'
import type { Words } from './words.ts'

export function enCounter(words: Words): CounterSentences {
  return {
    rod: rod(words),
    hand: hand(words),
    amounts: AMOUNTS,
    kept: kept(words),
    orders: ORDERS,
    day: day(words),
    title: (clock) => joined('Counter', clock),
    takeBack: 'Take back',
    nothingDone: 'nothing done here yet',
    putAway: 'Put away',
    more: 'more',
    page: (page, pages) => `${page} of ${pages}`,
    back: 'Back to the rack',
  }
}

function rod({ times }: Words): CounterRodWords {
  return {
    about: 'about',
    number: (likely, within) => (within === 0 ? String(likely) : `about ${likely} (± ${within})`),
    goneAbout: (atMs) => `gone about ${times.clock(atMs)}`,
    atPace: (gone, perHour) => `${gone} at this pace (${perHour} an hour)`,
    mayRunOut: (fromMs) => `may run out ${times.clock(fromMs)}`,
    mayNotReach: 'may run out before',
    aboutLeft: (pieces) => (pieces === 0 ? 'few left' : `about ${pieces} left`),
    between: (gone, fromMs, toMs) =>
      toMs === null
        ? `${gone} (not before ${times.clock(fromMs)}, or it lasts)`
        : `${gone} (${times.clock(fromMs)} to ${times.clock(toMs)})`,
    guessed: (gone) => `${gone}, a guess`,
    noneBetween: (fromMs, toMs) => `none ${times.clock(fromMs)}–${times.clock(toMs)}`,
    soldOut: (atMs) => joined('sold out', times.clock(atMs)),
    soldOutSince: (atMs) => joined('sold out', times.since(atMs)),
    moreAbout: (pieces, atMs, from) =>
      joined(from === 'planned' ? `${pieces} more planned` : `${pieces} more about`, times.clock(atMs)),
    mayBeGone: 'may be gone',
    lastsToClose: 'lasts to close',
    noMore: 'no more today',
    none: 'none today',
    noneYet: 'none yet',
    closed: 'closed',
    coming: (pieces, atMs, from) =>
      `${pieces} ${from === 'cooling' ? times.at(atMs) : joined(from === 'planned' ? 'planned' : 'about', times.clock(atMs))}`,
    kept: (pieces) => `kept ${pieces}`,
    dayOld: (pieces) => `day-old ${pieces}`,
    known: (basis) => {
      if (basis.how === 'nothing') return ''
      if (basis.how === 'baked') return joined('baked', times.clock(basis.atMs))
      return basis.isNow ? 'counted now' : joined('counted', times.clock(basis.atMs))
    },
    forSale: (pieces) => `${pieces} for sale`,
    spoken: ({ name, likely, within, kept: keptPieces, onTheWay, planned, known }) =>
      [
        `${name}: ${within === 0 ? '' : 'about '}${likely} for sale`,
        ...(known === '' ? [] : [known]),
        `${keptPieces} kept`,
        `${onTheWay} on the way`,
        ...(planned === 0 ? [] : [`${planned} planned`]),
      ].join(', '),
    rack: 'The rack',
  }
}

function hand({ line }: Words): HandWords {
  return {
    touchARod: 'Touch a rod, then the number sold',
    tillSells: 'The till tells what is sold: touch a rod to count or keep',
    countsOnly: 'Nobody taps sales here, counts keep the numbers: touch a rod',
    bakingOver: 'None baked after this: what is here is for the afternoon',
    inHand: (pieces) => `in hand ${pieces}`,
    kinds: (kinds) => `${kinds} kinds`,
    sold: (lines) => `sold ${line.contents(lines)}`,
    tooSmall: (inHand) => `${inHand} in hand`,
    assorted: (pieces) => `Assorted ${pieces}`,
    assortedSold: (pieces, lines) => `sold assorted ${pieces}: ${line.contents(lines)}`,
    changeIt: 'Change the mix',
    noneForSale: 'none for sale',
    unnamed: 'Not named',
    unnamedDetail: 'which, nobody knows',
    unnamedHow: 'Sold, and nobody knows which: how many?',
    unnamedSold: (pieces) => `sold ${pieces}, kinds not named`,
    other: 'Other',
    count: 'Count',
    keep: 'Keep',
    lastOneGone: 'Last one gone',
    lastOf: (name) => `Last ${name} gone`,
    fewer: 'Fewer',
    putBack: 'Put back',
    sell: 'Sold',
  }
}

const AMOUNTS: AmountsWords = {
  title: {
    other: 'How many',
    keep: 'How many to keep',
    count: 'How many are there',
    unnamed: 'How many sold',
  },
  wholeHalfDozens: 'Half-dozens',
  singles: 'and singles',
  ringsKey: (rings) => `${rings * 6}: ${rings} ${rings === 1 ? 'half-dozen' : 'half-dozens'}`,
  singlesKey: (pieces) => `and ${pieces} ${pieces === 1 ? 'single' : 'singles'}`,
  sixMore: 'half a dozen more',
  sold: (pieces) => numbered('Sold', pieces),
  keep: (pieces) => numbered('Keep', pieces),
  counted: (pieces) => numbered('Counted', pieces),
  wasted: (pieces) => numbered('Wasted', pieces),
  kitchen: (pieces) => numbered('Kitchen used', pieces),
  given: (pieces) => numbered('Given away', pieces),
  nothingChosen: 'choose how many',
}

function numbered(verb: string, pieces: number | null): string {
  return joined(verb, pieces === null ? '' : String(pieces))
}

const ORDERS: OrdersKeyWords = {
  title: 'Orders',
  summary: (open, atRisk) => (atRisk > 0 ? `${atRisk} at risk` : open === 0 ? 'none open' : `${open} open`),
  slip: 'Slip',
  slipSummary: (waiting, ready) =>
    ready > 0 ? `${ready} ready` : waiting === 0 ? 'nobody waits' : waiting === 1 ? '1 waits' : `${waiting} wait`,
}

function kept({ times, line }: Words): KeptWords {
  return {
    title: 'Kept',
    summary: (keeps, pieces) => (keeps === 0 ? 'nothing kept' : `${keeps} kept, ${line.pieces(pieces)}`),
    nothing: 'Nothing is kept for anybody. Touch rods, then Keep.',
    handOver: 'Hand over',
    release: 'Release',
    keptAt: (atMs) => `kept ${times.since(atMs)}`,
  }
}

function day({ times }: Words): CounterDayWords {
  return {
    lastLoad: (atMs) => `last load in ${times.by(atMs)}`,
    lastLoadGone: 'no more loads',
    closedToday: 'closed today',
    changeover: 'changeover',
    tooLate: (atMs) => `load ${times.clock(atMs)} too late`,
    others: (count) => `+${count}`,
    spoken: 'The day',
    noSetUp: 'No shop is set up here yet. Load a set-up file at the desk.',
    looking: 'Looking for the shop…',
  }
}
