import type { CounterWords } from './counter.ts'
import type { SlipWords } from './counter-slip-orders.ts'

export function enSlipOrders({ times, line }: CounterWords): SlipWords {
  const range = (medianMs: number, carefulMs: number) => `about ${minutes(medianMs)}, up to ${minutes(carefulMs)} min`
  return {
    title: 'Slip',
    touchThings: 'Touch what is made; again for two.',
    number: (mark) => `No. ${mark}`,
    otherNumber: 'another number',
    typeNumber: 'The slip’s number',
    erase: 'Erase',
    useNumber: 'Use it',
    nextNumber: 'Next number',
    start: (mark) => `Start ${mark}`,
    nothingYet: 'nothing touched yet',
    wait: range,
    notMade: {
      noSuchItem: 'not on the menu',
      notNow: 'not in use',
      changeover: 'after the changeover',
      ovenCloses: 'too late for the oven',
      closed: 'too late for today',
      noPortions: 'none left',
      noBagels: 'no bagels left',
      noPlace: 'nowhere to make it',
      queueGrows: 'more than can be made: over an hour',
    },
    promised: (ms) => `more than the ${times.span(ms)} that we tell`,
    bagel: 'Bagel',
    toasted: 'Toasted',
    fillings: 'With, without',
    allergy: 'Allergy',
    less: 'One less',
    nextLine: 'Other line',
    another: 'Another one',
    leftOut: 'no',
    moreOf: 'more',
    left: (portions) => `${portions} left`,
    portions: 'Portions left',
    handOver: (mark) => `Hand over ${mark}`,
    readySince: (atMs) => `ready ${times.since(atMs)}`,
    nobodyWaits: 'Nobody waits',
    spokenQueue: (marks) => (marks.length === 0 ? 'Nobody waits' : `Waiting: ${line.list(marks)}`),
    moreReady: (count) => `+${count} ready`,
  }
}

/** A wait is told in whole minutes, rounded up. */
function minutes(ms: number): number {
  return Math.max(1, Math.ceil(ms / 60_000))
}
