import type { Bottleneck, ContactPlace, PlanCannot, PlanLimit, PlanWhy } from '../../shared-core/live/plan.ts'
import type { DeskWords } from './desk.ts'
import type { BakePlanWords, Cost, HeadWords, PictureWords } from './desk-plan.ts'
import { enWhatIf } from './en-desk-plan-what-if.ts'
import { enWishes } from './en-desk-plan-wishes.ts'
import { money } from './money.ts'

export function enBakePlan(words: DeskWords): BakePlanWords {
  const { times, line, names } = words
  return {
    money,
    waiting: 'Planning the loads…',
    notYet: 'The plan is being made from past sales. It comes in a moment.',
    noContact: 'No contact with the server: nothing can be planned now.',
    datesName: 'Days to plan',
    today: 'today',
    whatIfPage: 'What if',
    closed: (date) => `Nothing is planned for ${date}: the shop does not open, or has closed the day.`,
    nothingKnown:
      'Nothing is known yet of what will be asked for, so no loads can be advised. Type pieces of a usual day, bring past sales in, or tap on: the first day teaches.',
    toUsual: 'Type a usual day',
    nothingMore: 'Nothing more is baked on this day.',
    wantedDough: (pieces) =>
      `The plan counts on the dough that is wanted for that day, ${pieces} pieces, whether it is chilled yet or not.`,
    openDough: 'Nobody has said yet how much dough that day gets: the plan takes as much as is worth baking.',
    advice: {
      title: 'Advice',
      on: 'Loads are advised on all screens. What people load, set or leave out goes before it: the plan follows.',
      off: 'Advice is off: the screens show only loads that people typed. Nothing else changes.',
      turnOn: 'Advise loads',
      turnOff: 'Switch advice off',
    },
    head: head(words),
    picture: picture(words),
    table: {
      title: 'All loads, and why',
      hint: 'Advised loads change as the day departs from the plan; what has started is never moved.',
      kettle: 'first dip',
      shelf: 'shelf',
      in: 'in',
      flip: 'flip',
      out: 'out',
      contents: 'what and why',
      state: '',
      advised: 'advised',
      pinned: 'set by people',
      last: 'last on its shelf',
    },
    why: (why) => `${names.variety(why.varietyId)}: ${reason(why, words)}`,
    contact: ({ varietyId, allergens, where }) =>
      `${names.variety(varietyId)} comes after ${line.list(allergens.map((one) => words.desk.today.kettle.allergen[one]))}: ${line.list(where.map((one) => PLACES[one]))}. Wash or change it first, or tell who buys it.`,
    cannot: (cannot, loadOf) => cannotText(cannot, loadOf, words),
    load: (shelf, inAtMs) => `${shelf} ${times.at(inAtMs)}`,
    ...enWishes(words),
    supply: {
      title: 'There and asked for',
      hint: 'Pieces so far: there in steps, asked for as a line, in the band on eight of ten such days.',
      choose: 'Variety',
      theFew: 'those that matter most',
      spoken: (name, left, lost) => `${name}: ${left} left at the close, ${lost} asked for in vain.`,
      expects: (left, lost) => `about ${left} left, ${lost} in vain`,
      supply: 'there so far',
      asked: 'asked for so far',
      band: 'on eight of ten days',
    },
    whatIf: enWhatIf(words),
  }
}

const PLACES: { readonly [place in ContactPlace]: string } = {
  kettle: 'in the water',
  boards: 'on the boards',
  trays: 'on the seed trays',
  peel: 'on the peel',
  stone: 'on the stone',
}

const LIMITS: { readonly [limit in PlanLimit]: string } = {
  kettle: 'the kettle boils by then',
  boards: 'there are boards for',
  shelf: 'the shelf holds',
  oven: 'the oven has time for',
  dough: 'there is dough for',
  hands: 'the hands there can do',
}

function cannotText(cannot: PlanCannot, loadOf: (id: string) => string, { times, line, names }: DeskWords): string {
  switch (cannot.kind) {
    case 'order-short':
      return `The order ${times.at(cannot.dueAtMs)} will be ${line.pieces(cannot.pieces)} short of ${names.variety(cannot.varietyId)}.`
    case 'pinned-over':
      return `What was set for ${loadOf(cannot.loadId)} is more than ${LIMITS[cannot.limit]}.`
    case 'show-short':
      return `${names.variety(cannot.varietyId)}: ${line.pieces(cannot.pieces)} fewer on show than wished.`
    case 'dough-short':
      return `${names.dough(cannot.doughId)}: ${line.pieces(cannot.pieces)} of dough too few.`
    case 'no-time':
      return 'No load can be in and out before the oven must be empty.'
  }
}

function reason(why: PlanWhy, { times, line }: DeskWords): string {
  switch (why.kind) {
    case 'runsOut':
      return why.kettleByMs === null
        ? `else gone about ${times.clock(why.atMs)}`
        : `else gone about ${times.clock(why.atMs)}; in time if in the kettle ${times.by(why.kettleByMs)}`
    case 'opening':
      return 'for the opening'
    case 'order':
      return `for the order ${times.at(why.dueAtMs)}, ${line.pieces(why.pieces)}`
    case 'afternoon':
      return `carries it to the close ${times.at(why.untilMs)}, as nothing is baked after the changeover`
    case 'fresh':
      return 'fresher than more of an earlier load'
    case 'show':
      return `so that ${why.least} are on show`
    case 'room':
      return 'now, as kettle and shelves are full later'
    case 'pinned':
      return 'set by people'
  }
}

function head({ times }: DeskWords): HeadWords {
  return {
    title: (date) => `The plan for ${date}`,
    baked: (pieces, loads) => `${pieces} pieces in ${loads} ${loads === 1 ? 'load' : 'loads'}`,
    firstDip: (atMs) => times.clock(atMs),
    noKettle: 'nothing more to boil',
    lastOut: (atMs) => times.clock(atMs),
    profit: 'by the forecast',
    more: (cents) => `${cents < 0 ? '−' : '+'}${money(Math.abs(cents))}`,
    moreUnknown: 'not known',
    howTitle: 'How this is reckoned',
    how: (profitCents, wavesCents) =>
      `Price of what will probably be sold, less cost, disappointed customers and standing: ${money(profitCents)}, expected by the forecast and no promise.${
        wavesCents === null
          ? ''
          : ` The same reckoning for equal waves every 90 minutes, as shops bake by habit, comes to ${money(wavesCents)}.`
      }`,
    left: (pieces) => `${pieces} left at the close`,
    lost: (pieces) => `${pieces} asked for in vain`,
    missing: (pieces) => `${pieces} missing in orders`,
    age: (minutes) => `${minutes} min old when sold`,
    crew: (minutes) => times.span(minutes * 60_000),
    bottleneck: (of, gainCents) => `Tightest: ${BOTTLENECKS[of]}; a little more would bring ${money(gainCents)}.`,
    noBottleneck: 'Tightest: nothing; more of anything would gain little.',
    labels: {
      bake: 'To bake',
      firstDip: 'First dip',
      lastOut: 'Last out',
      profit: 'Expected',
      waves: 'Over equal waves of 90 min',
      risk: 'Probably',
      crew: 'Hours of the crew',
    },
  }
}

const BOTTLENECKS: { readonly [of in Bottleneck]: string } = {
  kettle: 'the kettle',
  boards: 'the boards',
  shelves: 'the shelves',
  dough: 'the dough',
  people: 'the people',
}

function picture({ times }: DeskWords): PictureWords {
  return {
    title: 'The line over the day',
    hint: 'Touch a load to see why. Drag it, or move the chosen one with the arrow keys: it stays where you put it, and what that costs is said before it is kept.',
    kettle: 'Kettle',
    boards: 'Boards',
    boardsOf: (most, count) => `${most} of ${count}`,
    opening: 'opening',
    changeover: 'changeover',
    lastLoad: 'last load',
    ruler: 'The hours of the day',
    closer: 'Closer',
    whole: 'Whole day',
    spoken: (loads, fromMs, toMs) => `${loads} loads ${times.at(fromMs)} ${times.upTo(toMs)}`,
    loadName: (shelf, inAtMs, contents, isPinned) =>
      `${shelf} ${times.at(inAtMs)}: ${contents}${isPinned ? ', set by people' : ''}`,
    key: {
      advised: 'advised',
      pinned: 'set by people',
      running: 'in the oven',
      firstSide: 'first side',
      cooling: 'cooling',
      contact: 'allergen contact',
      forbidden: 'left free',
    },
  }
}

/** What a change does, in money and pieces. @example "Costs 3.40, by the forecast; 2 more asked for in vain." */
export function costText({ profitCents, lost, missing, left }: Cost): string {
  const pieces = [more(lost, 'asked for in vain'), more(missing, 'missing in orders'), more(left, 'left')]
  const said = pieces.filter((part) => part !== '')
  const cents =
    Math.abs(profitCents) < 1
      ? 'No money either way'
      : `${profitCents < 0 ? 'Costs' : 'Gains'} ${money(Math.abs(profitCents))}, by the forecast`
  return `${cents}; ${said.length === 0 ? 'no more or fewer pieces lost or left' : said.join(', ')}.`
}

function more(by: number, what: string): string {
  const pieces = Math.round(Math.abs(by) * 10) / 10
  return pieces === 0 ? '' : `${pieces} ${by > 0 ? 'more' : 'fewer'} ${what}`
}
