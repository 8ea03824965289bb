import type { DoughAccountWords, DoughWords, RunningWords, SheetWords, StockWords, WantedWords } from './desk-dough.ts'
import { atClock } from './en-desk-dough-clock.ts'
import { enDays } from './en-desk-dough-days.ts'
import { enLearnt } from './en-desk-dough-learnt.ts'
import { enOrder } from './en-desk-dough-order.ts'
import { enPlan } from './en-desk-dough-plan.ts'
import type { Words } from './words.ts'

export function enDough(words: Words): DoughWords {
  return {
    pages: {
      days: 'Days ahead',
      day: 'One day',
      order: 'Mixing order',
      sheets: 'Mix sheets',
      stock: 'On hand',
      running: 'Running now',
      learnt: 'Learnt',
    },
    pagesName: 'Pages of the dough room',
    caution:
      'Clocks and temperatures are an aid, not a safety device: mixers hurt people, and dough is judged by hand and eye. Local codes and the licensed operator decide.',
    waiting: 'Waiting for the shop’s clock…',
    noFormulas:
      'No formula is set up yet. Write down what each dough is made of first; then pieces wanted become mixes, weights and times.',
    goSetUp: 'Go to the set-up',
    unknown: 'unknown',
    today: 'today',
    days: enDays(),
    wanted: WANTED,
    plan: enPlan(words),
    order: enOrder(words),
    sheets: sheets(words),
    stock: stock(),
    running: running(),
    learnt: enLearnt,
    account: ACCOUNT,
  }
}

const pieces = (count: number) => `${count} ${count === 1 ? 'piece' : 'pieces'}`

const WANTED: WantedWords = {
  title: (date) => `Wanted for ${date}`,
  hint: 'Pieces to boil on that day, of a dough whatever it becomes, or of a variety. “12d” are twelve dozen. Enter and the arrow keys go up and down.',
  columns: { what: 'dough', lastWeek: 'a week before', pieces: 'counter', ordered: 'orders', sum: 'pieces' },
  field: { pieces: (name) => `${name}, for the counter`, ordered: (name) => `${name}, for orders` },
  byVariety: 'by variety',
  fewer: 'fewer',
  byVarietyOf: (dough) => `${dough} by variety`,
  likeLastWeek: (date) => `Like ${date}`,
  like: 'Like another day…',
  percent: 'Percent more or less for the counter',
  raise: 'Add',
  clear: 'Clear',
  save: (date) => `Save for ${date}`,
  forget: 'Put away what was typed',
  unreadable: 'A marked field is no whole number of pieces.',
  unsaved: (numbers) => `${numbers} ${numbers === 1 ? 'number is' : 'numbers are'} not saved yet.`,
  saved: 'All is saved.',
  total: 'together',
}

function sheets({ line }: Words): SheetWords {
  return {
    lead: 'One mix on each page of paper, with a box for every line. What was planned is printed, water as far as its temperatures are known now.',
    none: (date) => `No mix is planned for ${date} yet.`,
    print: 'Print the sheets',
    head: (place, all, date) => `Mix ${place} of ${all}, for ${date}`,
    start: (clock) => `Begin ${atClock(clock)}`,
    startOpen: 'Begin when it fits',
    columns: { what: 'what', percent: 'of flour', weight: 'weight', done: 'weighed' },
    mixIns: 'Mix-ins',
    mixInsFrom: (minute) => `Mix-ins, from minute ${minute} on`,
    total: 'dough',
    water: (degrees, water, ice) => `Water at ${degrees}: ${water}${ice === null ? '' : ` and ${ice} of ice`}`,
    waterOpen: 'Water temperature: not known yet. Read the room, the flour and the tap first.',
    tooCold: 'Not even all ice brings the dough down to what is wished.',
    tooWarm: 'No water that yeast bears brings the dough up to what is wished.',
    needsWarm: 'Warmer than the tap: mix in hot water.',
    comesTo: (degrees) => `The dough comes to ${degrees}.`,
    wished: (degrees) => `Dough wished at ${degrees}`,
    temps: {
      room: 'room',
      flour: 'flour',
      preferment: 'pre-ferment',
      tap: 'tap',
      water: 'water used',
      dough: 'dough after mixing',
    },
    steps: 'Steps',
    mix: (minutes) => `mix ${minutes} min`,
    rest: (minutes) => `rest ${minutes} min`,
    bulk: (span) => `bulk ${span}`,
    fold: (place, span) => `fold ${place} after ${span}`,
    bulkChill: (span) => `chill in bulk ${span}`,
    gives: 'Gives',
    givesLine: (count, dough, weight, trays) =>
      `${pieces(count)} ${dough}${weight === null ? '' : ` of ${weight}`}, ${trays}`,
    contains: (names) => `Contains ${line.list(names)}.`,
    containsHint: 'As entered; contact in the mixer and on the bench is judged by the people there.',
    signed: 'Mixed by',
  }
}

function stock(): StockWords {
  return {
    title: 'Ingredients on hand',
    hint: 'What was counted last and came since, less what mixes and preparations took. A bare number is in bags where it is bought so; “12.5 kg” and “2 lb 4 oz” are read too.',
    none: 'No ingredients are set up yet.',
    columns: {
      what: 'ingredient',
      onHand: 'on hand',
      counted: 'last counted',
      short: 'enough for',
      count: 'count',
      received: 'came in',
    },
    notCounted: 'never',
    bags: (count, rest) => `${count} ${count === 1 ? 'bag' : 'bags'}${rest === null ? '' : ` and ${rest}`}`,
    bagsUnit: 'bags',
    bag: (weight) => `bags of ${weight}`,
    shortFor: (weight, date, bags) =>
      `short for ${date}: ${weight}${bags === null ? '' : ` (${bags} ${bags === 1 ? 'bag' : 'bags'})`}`,
    enough: 'all that is planned',
    countField: (name) => `${name}: how much is there`,
    receivedField: (name) => `${name}: how much came in`,
    saveCount: (lines) => (lines === 0 ? 'Save the count' : `Save the count of ${lines}`),
    receive: (name) => `${name}: came in`,
    receiveIt: 'Add',
    unreadable: 'A marked field is no weight.',
    under: 'Less than nothing: count it, or enter what came in.',
  }
}

function running(): RunningWords {
  return {
    clocks: 'Clocks',
    clocksHint:
      'What is mixed, proofs, chills and ripens, the most urgent first. Proof follows the room, chill the cooler and how fast pieces take its cold.',
    noClocks: 'Nothing is being mixed, proofs, chills or ripens.',
    build: (name, left) => `${name}, ${left} left`,
    ripens: 'ripening',
    drop: 'Thrown away',
    dropOf: (name) => `${name}: thrown away`,
    columns: {
      what: 'what',
      where: 'where',
      since: 'since',
      earliest: 'earliest',
      latest: 'at the latest',
      state: 'state',
    },
    stage: {
      planned: 'planned',
      mixing: 'in the mixer',
      rest: 'resting',
      bulk: 'in bulk',
      bulkChill: 'chilled in bulk',
      bench: 'on the bench',
      ended: 'used up',
    },
    status: { early: 'not yet', ready: 'ready', late: 'past its window', none: 'no window' },
    temps: 'Temperatures',
    tempsHint: 'Readings of the last two days. Where nobody has read one lately, the set-up’s is assumed.',
    place: { room: 'Room', cooler: 'Cooler', flour: 'Flour', tap: 'Tap' },
    readOn: (degrees, clock) => `read ${degrees} ${atClock(clock)}`,
    assumed: (degrees) => `never read; ${degrees} is assumed`,
    reckons: (degrees) => `the clocks reckon with ${degrees}`,
    readingOf: (place) => `${place}: new reading`,
    record: 'Record',
    chart: (place, lowest, highest) => `${place} over the last two days: from ${lowest} to ${highest}`,
    hoursBack: '48 h ago',
    now: 'now',
  }
}

const ACCOUNT: DoughAccountWords = {
  title: 'Where the dough went',
  rule: 'mixed = shaped + lost in bowl and divider + spoilt + unexplained + left',
  none: 'Nothing has been mixed since the last close.',
  head: (formula, count) => `${formula}, ${count} ${count === 1 ? 'mix' : 'mixes'}`,
  columns: {
    formula: 'formula',
    mixed: 'mixed',
    shaped: 'shaped',
    lost: 'lost',
    spoilt: 'spoilt',
    unexplained: 'unexplained',
    left: 'left',
  },
}
