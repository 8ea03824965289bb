import type { SetUpFields } from './set-up-fields.ts'
import type { KitchenSetUpWords } from './set-up-kitchen.ts'

export const EN_KITCHEN_FIELDS: Pick<SetUpFields, 'orders' | 'kitchenStation' | 'portion' | 'menuItem' | 'run'> = {
  orders: {
    dozenPieces: 'Pieces in a dozen',
    cutOffMinute: 'Orders for the next day until',
    walkInPercent: 'Left to walk-ins, % of what they are likely to ask for',
    walkInLeast: 'Left to walk-ins of each variety, at least',
    keepsAsTheyCome: 'Keep pieces for orders as they come out of the oven',
    noShowMs: 'Not fetched: ends after',
    forgetDays: 'Names, numbers and notes are deleted after, days',
    madeInMs: 'Made to order in',
    sliceCoolMs: 'Cooled before slicing',
    packMs: 'Packing a dozen',
    boxPieces: 'Pieces in a box',
  },
  kitchenStation: { name: 'Name', hands: 'Made there at once, by hand' },
  portion: {
    name: 'Name',
    contains: 'Contains',
    pullMs: 'Pulled before the changeover by',
    trayPortions: 'Portions on a tray',
  },
  menuItem: {
    name: 'Name',
    priceCents: 'Price',
    onBagel: 'Made on a bagel',
    canToast: 'Can be toasted',
    portions: 'Portions in it',
    steps: 'How it is made',
  },
  run: {
    name: 'Name',
    leavesMinute: 'Leaves at',
    stopMs: 'From stop to stop',
    loadMs: 'Loading the van',
  },
}

export const EN_KITCHEN: KitchenSetUpWords = {
  does: {
    dozenPieces: 'What a dozen that somebody orders comes to.',
    cutOffMinute: 'Later ones can still be taken, knowingly. Not said: until the shop opens.',
    walkInPercent: 'An order is promised only out of what is beyond this. Less means more promises, and emptier rods.',
    walkInLeast: 'However few are likely to be asked for.',
    keepsAsTheyCome: 'The oldest due first. Off: somebody keeps them by hand.',
    noShowMs: 'Nobody came by then: what was kept goes back for sale. Not said: at the close.',
    forgetDays: 'Counted from the order’s day. The order itself stays in the records, without them.',
    madeInMs: 'What the counter tells those who wait, and by what the kitchen is held late.',
    sliceCoolMs: 'A warm bagel tears under the blade and sweats in a closed bag.',
    packMs: 'Slicing, bagging and boxing it. By this, packing begins before the van leaves.',
    boxPieces: 'A pack list counts boxes by it.',
  },
  dozen: (pieces) => (pieces === 13 ? '13, a baker’s dozen' : String(pieces)),
  heads: {
    taking: 'Taking orders',
    walkIns: 'Walk-ins',
    keeping: 'Keeping and handing over',
    packing: 'Packing',
    waiting: 'Made to order',
    details: 'Names and numbers',
    stations: 'Stations of the kitchen',
    portions: 'Portions made ahead',
  },
  handsHint: 'How many things can be on the way there at once. What bakes counts by the oven’s places instead.',
  handsLine: (hands) => `${hands} at once`,
  pullHint: 'How long it stands out of the cooler before the second menu. Not said: it needs no pull.',
  trayHint: 'It is pulled tray by tray.',
  portionLine: (pull, tray) => [...(pull === null ? [] : [`pulled ${pull} before`]), `trays of ${tray}`].join(', '),
  slotsHint: 'Places of the second menu on it, one flatbread each. 0: the second menu does not use it.',
  slotsLine: (slots) => `${slots} ${slots === 1 ? 'place' : 'places'}`,
  item: {
    asItIs: 'handed over as it is',
    onBagelHint: 'It uses up a bagel of the variety that is asked for.',
    portionsHint: 'What goes into one is counted down with each that is begun.',
    noPortions: 'No portions are said yet: they are on the page of the kitchen.',
    portion: (portions, name) => (portions === 1 ? name : `${portions} ${name}`),
    remove: (what) => `Remove ${what}`,
    stepsHint: 'Three parts at most, one after the other. With none it is handed over as it is: a tub, a bottle.',
    noStations: 'The kitchen has no stations yet: say them on the page of the kitchen first.',
    step: (no) => `Part ${no}`,
    removeStep: (no) => `Remove part ${no}`,
    addStep: 'Add a part',
    earlier: (no) => `Part ${no} before part ${no - 1}`,
    station: 'Where',
    made: 'Made',
    takes: 'Takes',
    how: { byHand: 'by hand', inOven: 'in the oven' },
    slots: 'Places of a shelf',
    noSlots: 'No shelf has places for it yet: say them on the page of the oven.',
    bakesAt: 'Bakes at',
    bakesAtHint: 'Not said: as the second menu does.',
    what: { turn: 'turn it', move: 'move it' },
    addTurn: 'Add a turn or a move',
    after: (no) => `After (${no})`,
    done: (no) => `What is done (${no})`,
    turn: (no) => `turn ${no}`,
    contains: (allergens) => `By its portions it contains: ${allergens}.`,
    onBagelToo: 'What the bagel contains comes on top.',
    stepSaid: (station, takes, oven) => {
      const more = oven === null ? [] : [...(oven.slots === 1 ? [] : [`${oven.slots} places`]), ...oven.turns]
      return `${station} ${takes}${more.length === 0 ? '' : ` (${more.join(', ')})`}`
    },
    turnSaid: (what, after) => `${what} after ${after}`,
  },
  runLine: (clock, stop) => `leaves ${clock}, ${stop} from stop to stop`,
  stopHint: 'And from the shop to the first.',
  loadHint: 'The last box is packed so long before it leaves.',
  sums: {
    orders: (dozen, made) => `a dozen is ${dozen}, made to order in ${made}`,
    kitchen: (stations, portions) =>
      `${stations} ${stations === 1 ? 'station' : 'stations'}, ${portions} ${portions === 1 ? 'portion' : 'portions'}`,
  },
}

const NAME = 'Another one in use has this name. Give it one of its own.'

export const EN_KITCHEN_MISFITS: Readonly<Record<string, string>> = {
  'kitchenStation/name': NAME,
  'portion/name': NAME,
  'portion/contains': 'Each allergen once.',
  'menuItem/name': NAME,
  'menuItem/portions': 'Its portions are in use, each named once. Bring one back, or leave it out here.',
  'menuItem/canToast': 'What is toasted is made on a bagel.',
  'menuItem/steps':
    'Each part is done at a station in use. Turns come in order, before it is out, and no part takes more places than a shelf has.',
  'run/name': NAME,
  'run/leavesMinute': 'It leaves after the oven is ready, and by the close.',
}
