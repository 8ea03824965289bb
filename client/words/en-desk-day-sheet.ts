import type { DaySheetWords, FiguresWords } from './desk-day-sheet.ts'
import { signedPieces } from './desk-day-sheet.ts'
import { money } from './money.ts'
import type { Words } from './words.ts'

export function enDaySheet(words: Words): DaySheetWords {
  const { times, line } = words
  return {
    title: 'Day sheet',
    head: (label, openedAtMs, closedAtMs) =>
      `${times.date(label)}: open ${times.at(openedAtMs)}, ${closedAtMs === null ? 'not closed yet' : `closed ${times.at(closedAtMs)}`}`,
    figures: figures(words),
    account: 'Where every piece went',
    stillThere: 'still there',
    left: 'Left for sale at close',
    nothingLeft: 'nothing',
    soldOut: 'Sold out while the shop was open',
    soldOutLine: (name, count, goneMs, pieces) =>
      `${name}: ${count === 1 ? 'once' : `${count} times`}, ${times.span(goneMs)}, about ${line.pieces(pieces)} missed`,
    notes: 'Notes for the next shift',
    signed: 'Seen by',
    print: 'Print one page',
    printHint: 'A4 or Letter, black on white.',
    csv: 'Account as CSV',
    jsonLines: 'Everything that happened as JSON Lines',
    files: 'Files of this day',
  }
}

function figures({ times, line }: Words): FiguresWords {
  return {
    title: 'The day in five figures',
    waiting: 'Working it out…',
    noContact: 'The server could not be reached; the figures come when there is contact.',
    missed: {
      name: 'Missed',
      value: (pieces, cents) => `about ${line.pieces(pieces)}, ${money(cents)}`,
      nobodyKnows: 'not known: no sale was told by variety',
      first: (name, fromMs, forMs) => `first sold out: ${name} ${times.at(fromMs)}, for ${times.span(forMs)}`,
      none: 'nothing was sold out while the shop was open',
    },
    left: {
      name: 'Left at close',
      value: (pieces) => line.pieces(pieces),
      fates: (dayOld, given, wasted) => `${dayOld} day-old, ${given} given away, ${wasted} wasted`,
      cost: (cents) => `making them cost ${money(cents)}`,
      notClosed: 'known once the day is closed',
    },
    onTime: {
      name: 'On time',
      atOpen: (there, of) => `${there} of ${of} varieties there at opening`,
      notOpened: 'the shop has not opened yet',
      oven: (byMs) =>
        Math.abs(byMs) < MINUTE_MS
          ? 'oven empty to the minute'
          : `oven empty ${times.span(Math.abs(byMs))} ${byMs < 0 ? 'early' : 'late'}`,
      noChangeover: 'the oven is not changed over yet, or never is',
      noOrders: 'orders on time are not reckoned yet',
    },
    baked: {
      name: 'Dozens a crew hour',
      dozens: (perHour) => `${perHour.toFixed(1)}`,
      value: (pieces) => `${line.pieces(pieces)} baked`,
      hours: (minutes) => `in ${(minutes / 60).toFixed(2).replace(/\.?0+$/, '')} crew hours`,
      nobodySaid: 'nobody said how long the crew worked',
    },
    unexplained: {
      name: 'Unexplained',
      value: (signed) => signedPieces(signed),
      absolute: (pieces) => `${line.pieces(pieces)} in all gaps, whichever way`,
      thrown: (pieces) => (pieces === 0 ? 'no dough thrown' : `${line.pieces(pieces)} of dough thrown`),
    },
  }
}

const MINUTE_MS = 60_000
