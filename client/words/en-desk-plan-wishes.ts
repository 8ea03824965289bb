import type { DeskWords } from './desk.ts'
import type { BakePlanWords } from './desk-plan.ts'
import { costText } from './en-desk-plan.ts'
import { money } from './money.ts'

/** What people set and forbid, and what that costs. */
export function enWishes(words: DeskWords): Pick<BakePlanWords, 'chosen' | 'wishes' | 'tried' | 'last'> {
  const { times, line, names } = words
  return {
    chosen: {
      title: (shelf, inAtMs) => `${capital(shelf)} ${times.at(inAtMs)}`,
      times: ({ kettleAtMs, dips, inAtMs, flipAtMs, outAtMs, readyAtMs }) =>
        [
          kettleAtMs === null ? '' : `first dip ${times.at(kettleAtMs)}, ${dips} ${dips === 1 ? 'dip' : 'dips'}`,
          `in ${times.at(inAtMs)}`,
          flipAtMs === null ? '' : `flip ${times.at(flipAtMs)}`,
          `out ${times.at(outAtMs)}`,
          `for sale ${times.at(readyAtMs)}`,
        ]
          .filter((part) => part !== '')
          .join(', '),
      earlier: '5 min earlier',
      later: '5 min later',
      shelf: 'Shelf',
      pin: 'Set it here',
      unpin: 'Let it move',
      leaveOut: 'Leave it out',
      notThen: (variety) => `No ${variety} then`,
      putAway: 'Put away',
    },
    wishes: {
      title: 'What people set',
      none: 'Nothing is set or left free: the plan is all advice.',
      pin: (contents, shelf, inAtMs) =>
        `${contents}: ${[shelf ?? 'any shelf', inAtMs === null ? 'when it is free' : `in ${times.at(inAtMs)}`].join(', ')}`,
      forbid: ({ shelfId, varietyId, fromMs, toMs }) =>
        `No ${varietyId === null ? 'load' : names.variety(varietyId)}${shelfId === null ? '' : ` on ${line.shelf(shelfId)}`} from ${times.clock(fromMs)} to ${times.clock(toMs)}`,
      lift: 'Allow again',
      unpin: 'Let it move',
      addTitle: 'Leave a time free',
      anyShelf: 'all shelves',
      anyVariety: 'everything',
      shelf: 'Shelf',
      variety: 'What',
      from: 'From',
      to: 'To',
      add: 'Leave free',
      wrongSpan: 'It must end after it begins, on the same day.',
    },
    tried: {
      title: 'Not kept yet',
      waiting: 'Reckoning what it costs…',
      failed: 'What it costs could not be reckoned. It can be kept all the same.',
      costs: costText,
      all: (costs) => `All that is set, against a day with nothing set: ${costs}`,
      keep: 'Keep',
      leave: 'Leave it',
    },
    last: {
      title: 'The last loads',
      by: (kettleByMs, inByMs, emptyByMs) =>
        `Last first dip ${times.by(kettleByMs)}, last load in ${times.by(inByMs)}, oven empty ${times.by(emptyByMs)}. After that nothing more is baked.`,
      carries: (loads) => `They carry the afternoon: ${loads.join('; ')}.`,
      slip: (byMs, gainCents, lostFewer, leftFewer) =>
        `Changeover ${times.span(Math.abs(byMs))} ${byMs > 0 ? 'later' : 'earlier'}: ${gainCents < 0 ? 'costs' : 'gains'} ${money(Math.abs(gainCents))}, ${fewer(lostFewer, 'in vain')}, ${fewer(leftFewer, 'left')}.`,
    },
  }
}

function fewer(by: number, what: string): string {
  const pieces = Math.round(Math.abs(by) * 10) / 10
  return pieces === 0 ? `as many ${what}` : `${pieces} ${by > 0 ? 'fewer' : 'more'} ${what}`
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
