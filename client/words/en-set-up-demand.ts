import type { DemandSetUpWords } from './set-up-demand.ts'
import type { SetUpFields } from './set-up-fields.ts'

export const EN_DEMAND_FIELDS: Pick<SetUpFields, 'demand' | 'specialDay'> = {
  demand: {
    region: 'Public holidays of',
    disappointCents: 'Sending somebody away costs',
    takeAnotherPercent: 'Take another variety instead, %',
    dayOldSells: 'Day-old pieces sold in a day',
  },
  specialDay: { name: 'Name', kind: 'Kind', spans: 'Dates' },
}

export const EN_DEMAND: DemandSetUpWords = {
  kind: {
    holiday: { name: 'holiday', hint: 'A public holiday on which the shop is open.' },
    school: { name: 'school break', hint: 'Families come at other hours, or are away.' },
    event: { name: 'event', hint: 'A street fair, a game, a run past the door.' },
    closure: { name: 'closed', hint: 'The shop does not open; nothing is made for it.' },
    weather: { name: 'weather', hint: 'Snow, heat, a storm: typed afterwards or the day before.' },
  },
  does: {
    disappointCents:
      'Beside the sale that is lost: what it is worth to you that nobody leaves without what they came for. More means baking more.',
    takeAnotherPercent:
      'Of those who find their variety gone, so many buy another one. More means that running out of one variety hurts less.',
    dayOldSells: 'All varieties together. What is left beyond that is worth nothing, so fewer are advised.',
    dayOldPercent: 'What a day-old piece brings, in % of the fresh one’s price. It is set at the counter’s page.',
  },
  byVariety: 'By variety',
  byVarietyHint:
    'A piece that the kitchen uses, in a sandwich for one, brings more than a loose one: say what the piece brings, less what else goes into it. Leave it empty where the kitchen does not use it.',
  guessing:
    'Until there are sales, this is what the board goes by. A rough guess is enough: it counts for less with every day that is sold.',
  usualSum: 'a usual day in all',
  variety: 'Variety',
  region: {
    country: 'Country',
    part: 'State or region',
    wholeCountry: 'all of it',
    notSaid: 'not said',
    empty:
      'Choose where the shop is, and the public holidays of there can be added in one touch, with their dates of the last three years, so that sales of then are understood.',
    waiting: 'Looking up holidays …',
    noContact: 'The shop’s server does not answer. The dates can be typed meanwhile.',
  },
  holidays: {
    title: 'Public holidays of the coming 12 months',
    hint: 'Add those on which you sell otherwise than on a usual day. Past dates come with them.',
    add: 'Add',
    addAll: (count) => `Add all ${count}`,
    have: 'in the list',
    others: 'Other days that people keep',
    none: 'No public holiday is known for there in the coming 12 months.',
    source: 'Holidays from date-holidays (CC BY 3.0). Local rules may differ: what you know counts.',
    line: (next, before) => (before === 0 ? next : `${next}; and ${before} past ${before === 1 ? 'date' : 'dates'}`),
  },
  dates: {
    title: 'Dates',
    from: 'First day',
    to: 'Last day',
    add: 'Add these dates',
    remove: (span) => `Remove ${span}`,
    none: 'No date yet: nothing is learnt and nothing foreseen.',
    again: 'Again next year',
    sameWeekday: 'keep the weekday',
    sameWeekdayHint: 'A fair on the last Saturday stays on a Saturday; without this the date stays the same.',
    long: (date, year) => `${date}, ${year}`,
    line: (next, count) => {
      const all = count === 1 ? 'once' : `${count} times`
      if (count === 0) return 'no dates'
      return next === null ? `${all}, all past` : `next ${next} · ${all}`
    },
    full: 'The list of dates is full. Remove old ones first.',
  },
}

export const EN_DEMAND_MISFITS: Readonly<Record<string, string>> = {
  'specialDay/spans': 'Dates that the calendar has, each span from its first to its last day, none of them twice.',
}
