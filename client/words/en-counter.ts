import type {
  AmountsWords,
  CounterDayWords,
  CounterRodWords,
  CounterSentences,
  HandWords,
  KeptWords,
} from './counter.ts'
import { joined } from './joined.ts'
import type { Words } from './words.ts'

export function enCounter(words: Words): CounterSentences {
  return {
    rod: rod(words),
    hand: hand(words),
    amounts: AMOUNTS,
    kept: kept(words),
    day: day(words),
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
    goneAbout: (atMs) => `gone about ${times.clock(atMs)}`,
    atPace: (gone, perHour) => `${gone} at this pace (${perHour} an hour)`,
    noneBetween: (fromMs, toMs) => `none ${times.clock(fromMs)}–${times.clock(toMs)}`,
    goneSince: (atMs) => `gone ${times.since(atMs)}`,
    lastsToClose: 'lasts to close',
    noMore: 'no more today',
    none: 'none today',
    coming: (pieces, atMs) => `${pieces} ${times.at(atMs)}`,
    kept: (pieces) => `kept ${pieces}`,
    known: (basis) => {
      if (basis.how === 'nothing') return ''
      const known = joined(KNOWN[basis.how], times.clock(basis.atMs))
      return basis.how === 'counted' && basis.lessSales ? `${known}, less sales` : known
    },
    forSale: (pieces) => `${pieces} for sale`,
    spoken: (name, forSale, keptPieces, onTheWay) =>
      `${name}: ${forSale} for sale, ${keptPieces} kept, ${onTheWay} on the way`,
    rack: 'The rack',
  }
}

const KNOWN = { counted: 'counted', baked: 'baked' } as const

function hand({ line }: Words): HandWords {
  return {
    touchARod: 'Touch a rod, then the number sold',
    touchMore: 'touch more rods for a mixed sale',
    inHand: (pieces) => `in hand ${pieces}`,
    kinds: (kinds) => `${kinds} kinds`,
    sold: (lines) => `sold ${line.contents(lines)}`,
    tooSmall: (inHand) => `${inHand} in hand`,
    soldWord: 'sold',
    number: 'Another number',
    count: 'Count',
    keep: 'Keep',
    notSold: 'Not sold',
    putBack: 'Put back',
    sell: 'Sold',
  }
}

const AMOUNTS: AmountsWords = {
  title: {
    sell: 'How many sold',
    keep: 'How many to keep',
    count: 'How many are there',
    'not-sold': 'How many not sold',
  },
  wholeHalfDozens: 'Half-dozens',
  singles: 'and singles',
  rings: (rings) => `${rings} ${rings === 1 ? 'ring' : 'rings'}`,
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
    changeover: 'changeover',
    tooLate: (atMs) => `load ${times.clock(atMs)} too late`,
    others: (count) => `+${count}`,
    spoken: 'The day',
    noSetUp: 'No shop is set up here yet. Load a set-up file at the desk.',
    looking: 'Looking for the shop…',
  }
}
