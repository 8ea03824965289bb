import type { HistoryWords } from './desk-history.ts'
import { percentOff, roughly } from './desk-history.ts'
import type { Words } from './words.ts'

const WEEKDAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday']

export function enHistory({ times, line }: Words): HistoryWords {
  return {
    pagesName: 'Pages of sales and forecasts',
    pages: { sales: 'What was sold', trust: 'How far to trust the forecasts', line: 'The line’s times and the oven' },
    waiting: 'Looking through past sales…',
    noContact: 'The server could not be reached. Try again when there is contact.',
    notReady: 'Past sales are being read; this goes on by itself.',
    unknown: 'The shop has no such dough or variety.',
    none: {
      title: 'No sales are known yet.',
      toDo: 'Take over what your till has on record, or tap sales on the counter: every day that is closed shows here, and makes the forecasts surer.',
      salesIn: 'To the till’s files',
    },
    weekday: (weekday) => WEEKDAYS[weekday - 1] ?? '',
    number: roughly,
    choose: {
      of: 'Sales of',
      all: 'all varieties',
      doughs: 'Doughs',
      varieties: 'Varieties',
      range: 'In',
      ranges: { '28': 'the last 4 weeks', '84': 'the last 12 weeks', '364': 'the last year', all: 'all that is known' },
    },
    days: days(times.date, line.pieces),
    week: {
      title: 'A usual week',
      hint: 'The mean of each weekday. Special days are left out.',
      weekday: 'weekday',
      days: 'days',
      pieces: 'sold',
      lost: 'probably lost',
    },
    hours: {
      title: 'A usual day by the hour',
      hint: 'Pieces sold in each hour, on the mean; the fuller the colour, the more. Special days are left out.',
      untimed: (percent) =>
        `${percent} % went without anybody saying when, and is not in it: counts and the close found it.`,
    },
    learnt: learnt(line.pieces),
    day: day(times.date),
  }
}

function days(date: (label: string) => string, pieces: (count: number) => string): HistoryWords['days'] {
  return {
    title: 'Day by day',
    hint: 'Tap a day to look into it and to say what was special about it.',
    sold: 'sold',
    lost: 'probably lost',
    soldOut: 'sold out before close',
    special: 'special day',
    date: 'day',
    asTable: 'Show as a table',
    asPlot: 'Show as a drawing',
    csv: 'For a spreadsheet (CSV)',
    noDays: 'Nothing was sold of it in this time.',
    readout: (label, sold, lost, soldOut) =>
      [
        `${date(label)}: ${pieces(sold)} sold`,
        ...(lost > 0 ? [`about ${Math.round(lost)} lost`] : []),
        ...(soldOut > 0 ? [`${soldOut} ${soldOut === 1 ? 'variety' : 'varieties'} sold out`] : []),
      ].join(', '),
    spoken: (count, sold, lost) =>
      `Pieces sold by day, ${count} days: ${sold} in all, and about ${Math.round(lost)} lost where there were none. The table has each day.`,
    look: (label) => `Look into ${date(label)}`,
  }
}

function learnt(pieces: (count: number) => string): HistoryWords['learnt'] {
  return {
    title: 'What the board learnt of it',
    basis: {
      guess: 'It is still guessing: it goes by what was typed in the set-up, and by other varieties of the dough.',
      few: 'It has seen few days. Each further one counts for much.',
      many: 'It has seen enough days to go by them alone.',
    },
    level: (count) => `A usual day asks for about ${pieces(Math.round(count))}, weekdays and special days apart.`,
    factor: (part) => {
      const percent = percentOff(part)
      return percent === 0 ? 'as usual' : `${Math.abs(percent)} % ${percent > 0 ? 'more' : 'less'}`
    },
    weekdays: 'Weekdays, beside the mean of the week',
    specials: 'Special days, beside a usual one',
    noSpecials: 'No special day has a name yet. Tap a day that stands out above and say what it was.',
    sure: (count) =>
      count === 0
        ? 'not seen yet'
        : count === 1
          ? 'seen once: hardly more than a guess'
          : count < 5
            ? `seen ${count} times: fairly unsure`
            : `seen ${count} times`,
  }
}

function day(date: (label: string) => string): HistoryWords['day'] {
  return {
    back: 'All days',
    title: (label) => date(label),
    nothing: 'Nothing is known of this day. It was closed, or its sales have not been taken over.',
    record: 'The day as the board recorded it',
    variety: 'variety',
    forecast: 'forecast',
    forecastHint:
      'The forecast is the one of the morning before anything was sold: on 8 of 10 days between the first two numbers.',
    range: (low, likely, high) => `${low}–${high}, likely ${likely}`,
    gone: 'none for sale',
    span: (from, to) => `${from}–${to}`,
    specialTitle: 'What was special about this day?',
    specialHint: 'A day with a name is learnt of by itself, and foreseen the next time it comes.',
    newName: 'Something else',
    newKind: 'kind',
    add: 'Name this day',
    full: 'The list of special days is full. Remove old ones in the set-up first.',
    nameTaken: 'There is a special day of this name; choose it above.',
    kinds: { holiday: 'holiday', school: 'school break', event: 'event', closure: 'closed', weather: 'weather' },
  }
}
