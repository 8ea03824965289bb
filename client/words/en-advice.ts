import type { ContactPlace, PlanCause, PlanChange, PlanLoad, PlanWhy } from '../../shared-core/live/plan.ts'
import type { AdviceWords } from './advice.ts'
import { otherLines } from './advice-lines.ts'
import { ALLERGEN_NAMES } from './allergens.ts'
import { capitalised, listed } from './joined.ts'
import { money } from './money.ts'
import { stuffOf } from './names.ts'
import type { Words } from './words.ts'

export function enAdvice(words: Words): AdviceWords {
  const { times, names, line } = words
  const changeShort: AdviceWords['changeShort'] = (change) => changed(change, words)
  return {
    advised: 'advised',
    set: 'set by people',
    why: (why) => whyText(why, words),
    whyShort: (why) => shortWhy(why, words),
    changeShort,
    change: (change) => listed(changeShort(change), cause(change.cause, words)),
    lastDip: (atMs, nowMs) => `last dip ${atMs <= nowMs ? 'now' : times.within(atMs - nowMs)}`,
    lastDipMark: 'last dip',
    carries: (lines, others) =>
      `last loads: ${[...lines.map((one) => line.becomes([one])), ...(others === 0 ? [] : [`${others} more`])].join(', ')}`,
    dips: (count) => `${count} ${count === 1 ? 'dip' : 'dips'}`,
    reasons: 'Why',
    firstDip: (atMs, nowMs) => `first dip ${atMs <= nowMs ? 'now' : times.within(atMs - nowMs)}`,
    times: ({ kettleAtMs, inAtMs, outAtMs, readyAtMs }) =>
      `${kettleAtMs === null ? '' : `first dip ${times.clock(kettleAtMs)}, `}in ${times.clock(inAtMs)}, out ${times.clock(outAtMs)}, ready ${times.clock(readyAtMs)}`,
    pulls: (pulls) =>
      pulls.map((one) => `${times.clock(one.atMs)} ${stuffOf(one, names)} ${line.trays(one.trays)}`).join(', '),
    contact: ({ varietyId, allergens, where }) =>
      `${capitalised(line.list(allergens.map((one) => ALLERGEN_NAMES.en[one])))} has been ${line.list(where.map((one) => PLACES[one]))}; ${names.variety(varietyId)} should not meet it: wash or change first, or tell who buys it`,
    contactShort: ({ varietyId, allergens }) =>
      `${allergens.map((one) => ALLERGEN_NAMES.en[one]).join(', ')} before ${names.variety(varietyId)}`,
    slip: ({ gainCents, lostFewer, leftFewer }) =>
      `${gainCents < 0 ? 'costs' : 'gains'} ${money(Math.abs(gainCents))}, ${fewer(lostFewer, 'in vain')}, ${fewer(leftFewer, 'left')}`,
  }
}

const PLACES: { readonly [place in ContactPlace]: string } = {
  kettle: 'in the water',
  boards: 'on the boards',
  trays: 'on the seed trays',
  peel: 'on the peel',
  stone: 'on the stone',
}

function whyText(why: PlanWhy, words: Words): string {
  const { times, names } = words
  if (why.kind !== 'runsOut') return shortWhy(why, words)
  const gone = `${names.variety(why.varietyId)} gone about ${times.clock(why.atMs)}`
  return why.kettleByMs === null ? gone : `${gone}; in time if in the kettle ${times.by(why.kettleByMs)}`
}

function shortWhy(why: PlanWhy, { times, names }: Words): string {
  const name = names.variety(why.varietyId)
  switch (why.kind) {
    case 'runsOut':
      return `${name} gone ${times.clock(why.atMs)}`
    case 'opening':
      return `${name} for the opening`
    case 'order':
      return `${name} for the order ${times.at(why.dueAtMs)}`
    case 'afternoon':
      return `${name} for the afternoon`
    case 'fresh':
      return `${name} fresh`
    case 'show':
      return `${name}: ${why.least} on show`
    case 'room':
      return `${name} while there is room`
    case 'pinned':
      return `${name} set by people`
  }
}

function changed({ what }: PlanChange, words: Words): string {
  switch (what.kind) {
    case 'order-of-loads':
      return 'The loads come in another order now'
    case 'load-dropped':
      return `Left out now: ${loadText(what.load, words)}`
    case 'load-added':
      return `Next is now ${loadText(what.load, words)}`
    case 'load-moved':
      return `${capitalised(loadText(what.load, words))}${what.wasAtMs === null ? '' : `, was ${words.times.clock(what.wasAtMs)}`}`
    case 'contents':
      return `${capitalised(loadText(what.load, words))}: ${otherLines(what, words)}`
  }
}

/** @example "shelf 2, 8:20" */
function loadText({ shelfId, inAtMs }: PlanLoad, { line, times }: Words): string {
  return `${line.shelf(shelfId)}, ${times.clock(inAtMs)}`
}

function cause(of: PlanCause, { names, line }: Words): string {
  switch (of.kind) {
    case 'sales':
      return `${names.variety(of.varietyId)} sells ${of.isMore ? 'faster' : 'slower'} than expected`
    case 'shelf-over':
      return `${line.shelf(of.shelfId)} is over`
    case 'shelf-open':
      return `${line.shelf(of.shelfId)} takes bagels again`
    case 'load-other':
      return `something else went onto ${line.shelf(of.shelfId)}`
    case 'dough':
      return `there is other dough of ${names.dough(of.doughId)} than planned`
    default:
      return CAUSES[of.kind]
  }
}

const CAUSES: {
  readonly [kind in Exclude<PlanCause['kind'], 'sales' | 'shelf-over' | 'shelf-open' | 'load-other' | 'dough'>]: string
} = {
  'load-late': 'a load went in late',
  'flip-late': 'a flip was late',
  'kettle-slow': 'the kettle is slow',
  'oven-cold': 'the oven is too cold',
  'set-up': 'the set-up has changed',
  changeover: 'the changeover has moved',
  people: 'other people are here',
  order: 'an order came in',
  wish: 'somebody set it so',
  other: '',
}

function fewer(by: number, what: string): string {
  const pieces = Math.round(Math.abs(by))
  return pieces === 0 ? `as many ${what}` : `${pieces} ${by > 0 ? 'fewer' : 'more'} ${what}`
}
