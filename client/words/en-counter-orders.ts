import type { CounterWords } from './counter.ts'
import type { OneOrderWords, OrderListWords, OrdersSentences, TakeWords } from './counter-orders.ts'
import { joined } from './joined.ts'
import { orderWords } from './orders.ts'
import { promiseWords } from './promise.ts'

export function enCounterOrders(words: CounterWords): OrdersSentences {
  return { list: list(words), one: one(words), take: take(words) }
}

function list({ times }: CounterWords): OrderListWords {
  return {
    title: 'Orders',
    summary: (orders, atRisk) => (atRisk === 0 ? `${orders} open` : `${orders} open, ${atRisk} at risk`),
    search: 'Mark or name',
    nothing: 'No order is open. Take one with the key below.',
    notFound: 'No open order has that mark or name.',
    keptOther: 'Kept, no order',
    keptOf: (kept, of) => `kept ${kept} of ${of}`,
    ready: 'ready',
    madeOf: (made, of) => `made ${made} of ${of}`,
    atRisk: 'at risk',
    missing: (what) => `${what} missing`,
    onDay: (label, atMs) => joined(times.date(label), times.clock(atMs)),
  }
}

function one(words: CounterWords): OneOrderWords {
  const { times, line, names } = words
  const said = orderWords(words)
  const { short } = promiseWords(words)
  return {
    title: (mark) => `Order ${mark}`,
    way: (way, runId) => (runId === null ? said.way[way] : `${said.way[way]}, ${names.run(runId)}`),
    keep: (pieces) => `Keep ${pieces}`,
    keepNothing: 'nothing of it lies there',
    allKept: 'all is kept',
    handOver: 'Hand over',
    asOrdered: 'as ordered',
    part: (pieces, of) => `${pieces} of ${of}`,
    missed: 'Nobody came',
    missedDetail: 'back for sale',
    change: 'Change',
    cancel: 'Cancel',
    nowPaid: 'Now paid',
    nowUnpaid: 'Not paid',
    back: 'Back to the orders',
    kept: (pieces) => `kept ${pieces}`,
    there: (pieces) => `${pieces} there`,
    missing: (pieces) => `${pieces} missing`,
    filledWith: (lines) => line.contents(lines),
    replaceAsk: (missing, instead) => `Missing: ${short(missing)}. Give ${line.becomes(instead)} in their place?`,
    shortAsk: (missing) => `Missing: ${short(missing)}. Hand over without?`,
    replaceYes: 'Yes, in their place',
    shortYes: 'Hand over without',
    waitNo: 'No, wait',
    sureMissed: 'Nobody came for it? What is kept goes back for sale.',
    sureCancelled: 'Cancel the order? What is kept goes back for sale.',
    yes: 'Yes',
    no: 'No',
    gone: 'This order is no longer open.',
    detailsLater: 'Name and note come with the link.',
    isRisk: 'taken as a risk',
    taken: (atMs) => `taken ${times.clock(atMs)}`,
    waiting: 'waits',
    begun: 'begun',
    made: 'made',
  }
}

function take(words: CounterWords): TakeWords {
  const { times } = words
  return {
    title: 'Take an order',
    changeTitle: (mark) => `Change ${mark}`,
    steps: { what: 'Bagels', made: 'Made to order', when: 'When', who: 'For whom' },
    touchVarieties: 'Touch what is ordered: each touch adds as many as the key below says.',
    one: 'One',
    half: 'Half a dozen',
    dozen: (pieces) => (pieces === 12 ? 'Dozen' : `Dozen (${pieces})`),
    fewer: 'Fewer',
    sliced: 'Sliced',
    bagged: 'Bagged',
    without: 'Without…',
    notIn: 'not in it',
    earliest: 'Earliest',
    noEarliest: 'not today',
    nextDay: 'Next day',
    split: 'In two parts',
    splitDetail: (pieces, nowMs, restAtMs) => `${pieces} ${times.at(nowMs)}, the rest ${times.at(restAtMs)}`,
    holds: (when) => `${when}: can be promised.`,
    holdsNot: (when) => `${when}: cannot be promised.`,
    dayBack: 'Day before',
    dayOn: 'Day after',
    step: (minutes) =>
      `${minutes < 0 ? '−' : '+'}${Math.abs(minutes) % 60 === 0 ? `${Math.abs(minutes) / 60} h` : `${Math.abs(minutes)} min`}`,
    mark: 'Mark, called across the room',
    markHint: 'initials or a number; empty: the next number',
    name: 'Name',
    phone: 'Phone',
    note: 'Note',
    detailsHint: 'Name, phone and note stay out of the day’s record and are deleted after a time.',
    take: 'Take the order',
    takeRisk: 'Take it as a risk',
    save: 'Save the change',
    needsPieces: 'touch what is ordered',
    needsTime: 'choose when',
    needsBagel: (item) => `bagel for ${item}?`,
    stop: (stop) => `stop ${stop}`,
  }
}
