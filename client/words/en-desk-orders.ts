import type { DayOrderWords, DeskOrderSentences, PackingWords, PickingWords, RiskWords } from './desk-orders.ts'
import type { Words } from './words.ts'

export function enDeskOrders({ line }: Words): DeskOrderSentences {
  return {
    pagesName: 'Pages of the orders',
    pages: {
      day: 'By day',
      standing: 'Standing orders',
      packing: 'Packing',
      names: 'Names',
      files: 'Files and calendar',
    },
    waiting: 'Looking for the orders…',
    noContact: 'No contact with the server now. This comes back by itself.',
    dates: { name: 'Days with orders', goTo: 'Another day', go: 'Show' },
    day: day(line),
    risk: RISK,
    packing: PACKING,
    picking: PICKING,
  }
}

function day(line: Words['line']): DayOrderWords {
  return {
    take: 'Take an order',
    search: 'Mark or name',
    show: 'Show',
    filter: { all: 'all', risk: 'at risk', pickUp: 'fetched', delivery: 'delivered', here: 'waits here' },
    none: (date) => `Nothing is ordered for ${date}.`,
    noneSuch: 'No order is like that.',
    total: (orders, pieces) => `${orders} ${orders === 1 ? 'order' : 'orders'}, ${line.pieces(pieces)}`,
    more: (orders) => `Show ${orders} more`,
    columns: { due: 'due', mark: 'for', what: 'what', way: 'how', paid: 'paid', kept: 'kept' },
    keptOf: (kept, pieces) => `${kept} of ${pieces}`,
    madeOf: (made, items) => `made ${made} of ${items}`,
    standing: 'standing',
    isRisk: 'taken at a risk',
    overdue: 'overdue',
    change: 'Change',
    cancel: 'Cancel',
    handedOver: 'Handed over',
    actOf: (act, mark) => `${act}: ${mark}`,
    sureToCancel: (mark) => `Cancel ${mark}? What is kept for it goes back for sale.`,
    yesCancel: 'Yes, cancel it',
    noCancel: 'No',
    leaveOut: 'Not this day',
    sums: 'All together',
    sumsHint: 'Mixed pieces become a variety when they are picked.',
    sumColumns: { variety: 'variety', ordered: 'ordered', kept: 'kept' },
    run: (name) => `run ${name}`,
  }
}

const RISK: RiskWords = {
  title: (orders) => `At risk: ${orders} ${orders === 1 ? 'order' : 'orders'}`,
  hint: 'By what is there, in the oven and planned, orders due earlier served first.',
  missing: (mark, due, what) => `${mark}, due ${due}: ${what} missing`,
  nothingSaves: 'Nothing that the board knows of saves it: call them.',
}

const PACKING: PackingWords = {
  print: 'Print',
  lead: 'A page for each run, with its stops in order. What is there already counts as packed when it is ticked on paper.',
  none: (date) => `Nothing is delivered on ${date}.`,
  noRun: 'Delivered, on no run',
  leaves: (clock) => `leaves ${clock}`,
  packFrom: (clock) => `packing starts ${clock}`,
  boxes: (boxes) => `${boxes} ${boxes === 1 ? 'box' : 'boxes'}`,
  outBy: (clock) => `out of the oven by ${clock}`,
  isLate: 'after its time',
  arrives: (clock) => `there ${clock}`,
  columns: { done: '✓', stop: 'stop', mark: 'for', what: 'what', boxes: 'boxes' },
  together: 'All together',
  signed: 'Packed by',
}

const PICKING: PickingWords = {
  title: 'Picking list',
  print: 'Print the picking list',
  lead: 'Orders in the order in which they are due.',
  columns: { done: '✓', due: 'due', mark: 'for', what: 'what', way: 'how' },
}
