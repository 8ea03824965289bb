import type { Off } from '../../shared-core/live/trust.ts'
import { roughly } from './desk-history.ts'
import type {
  CostWords,
  HeldWords,
  OverrideWords,
  TrustSummaryWords,
  TrustTableWords,
  TrustWords,
} from './desk-trust.ts'
import type { Words } from './words.ts'

export function enTrust({ times }: Words): TrustWords {
  return {
    of: 'Forecasts of',
    each: 'each variety',
    ranges: { '28': 'the last 4 weeks', '84': 'the last 12 weeks', '365': 'the last year' },
    summary: SUMMARY,
    held: HELD,
    tables: TABLES,
    one: {
      title: (name) => `${name}, forecast and asked for`,
      hint: 'Each bar is the 8-in-10 range that had been said in the morning, each dot what was asked for.',
      range: 'said in the morning',
      asked: 'asked for',
      estimated: 'sold out: estimated',
      noDays: 'No day of it was forecast in this time.',
      readout: (date, asked, low, high, isEstimated) =>
        `${times.date(date)}: ${low} to ${high} were said, ${isEstimated ? 'about ' : ''}${asked} asked for`,
      off: (name, off) => `${name} on a usual day: the board was off ${offBy(off)}.`,
      spoken: (name, inside, of) => `${name}: of ${of} days, ${inside} fell inside the range that had been said.`,
    },
    cost: COST,
    overrides: OVERRIDES,
  }
}

const offBy = ({ board, asked, lastWeek, lastFour }: Off) =>
  `by ${roughly(board)} pieces in ${roughly(asked)}; last week’s same day by ${roughly(lastWeek)}, the mean of the last four by ${roughly(lastFour)}`

const SUMMARY: TrustSummaryWords = {
  title: 'How far off it was',
  noDays: 'No day has been forecast and sold yet.',
  nothingToCompare: 'There is nothing to compare with yet: that takes a second week.',
  each: (off) => `A variety on a usual day: the board was off ${offBy(off)}.`,
  shop: (off) => `All varieties of a day together: off ${offBy(off)}.`,
  beside: {
    nearer: 'It was nearer than both simple ways.',
    asNear: 'It was about as near as the better of the two simple ways.',
    farther:
      'It was farther off than the better of the two simple ways. With few days that may be chance; if it stays so, go by the simple way.',
  },
  estimated: (estimated, rows, without) =>
    `${estimated} of the ${rows} forecasts were of something that sold out: what was asked for there is an estimate, to which the forecast itself has a part.${
      without === null ? '' : ` Without them: off ${offBy(without)}.`
    }`,
  basis: ({ guess, few, many }) =>
    `${[
      ...(many > 0 ? [`${many} ${many === 1 ? 'variety goes' : 'varieties go'} by many days of sales`] : []),
      ...(few > 0 ? [`${few} by few`] : []),
      ...(guess > 0 ? [`${guess} ${guess === 1 ? 'is' : 'are'} guessed`] : []),
    ].join(', ')}.`,
  known: (days, judged) => `${days} open days are known, ${judged} of them are judged here.`,
  guessing:
    'The board is still guessing much of this. It knows a variety well after some two weeks of open days, and a special day after a few of its kind; until then, go by what you know.',
  how: 'Each day was forecast from the days before it alone, as it would have been that morning.',
}

const HELD: HeldWords = {
  title: 'Did it hold what it said?',
  hint: 'Pieces come whole, so a range often holds a little more than its name says; “should be” has that in it. What hangs on few days may be chance.',
  what: {
    inside: 'inside the 8-in-10 range',
    likely: '“likely” was enough',
    careful: '“careful” was enough, meant for 8 of 10 days',
    plenty: '“plenty” was enough, meant for 9 of 10 days',
  },
  columns: { said: 'forecasts', held: 'were', should: 'should be', verdict: 'verdict' },
  share: ({ hits, of }) => `${hits} of ${of}${of === 0 ? '' : ` (${Math.round((100 * hits) / of)} %)`}`,
  should: ({ expected }) => `about ${Math.round(expected)}`,
  verdict: {
    none: '–',
    asItShould: 'as it should be',
    tooSure: 'too sure of itself',
    tooUnsure: 'more unsure than it need be',
    tooLow: 'too low',
    tooHigh: 'too high',
  },
}

const TABLES: TrustTableWords = {
  varieties: 'By variety',
  doughs: 'By dough',
  weekdays: 'By weekday',
  rests: 'For the rest of the day',
  restsHint: 'Forecast from what had been sold by then, against what came after.',
  rest: (clock) => `from ${clock}`,
  columns: {
    variety: 'variety',
    dough: 'dough',
    weekday: 'weekday',
    rest: 'rest of the day',
    asked: 'asked for a day',
    board: 'board off by',
    lastWeek: 'last week’s day off by',
    lastFour: 'mean of four off by',
    inside: 'inside 8-in-10 range',
  },
  hint: 'Pieces on the mean. The nearest of the three is in bold.',
  number: roughly,
  inside: ({ hits, of }) => (of === 0 ? '–' : `${Math.round((100 * hits) / of)} %`),
  look: (name) => `Look at the forecasts of ${name}`,
  measures: 'Measures for those who know them',
  measuresHint:
    'WAPE: all errors over all pieces. MASE: errors over those of last week’s day before. Pinball: mean loss of the 50, 80 and 90 % quantiles, in pieces.',
  measureColumns: { wape: 'WAPE', mase: 'MASE', pinball: 'pinball' },
}

const COST: CostWords = {
  title: (days) => (days === 0 ? 'What too many and too few cost' : `What too many and too few cost in ${days} days`),
  hint: 'Left pieces cost what went into them, less what day-old ones bring. Lost sales cost what they would have earned, and the disappointment. Advice and the simple ways are reckoned as if all of it had been there in time, which no day of baking quite is. A minus means that they brought more than they cost.',
  none: 'There is no day yet of which this could be said.',
  unknownBaked: 'What was baked is not on record for enough days, only what was sold.',
  way: {
    baked: 'as it was baked',
    advised: 'as the board would have advised',
    lastWeek: 'as many as last week’s day sold',
    lastFour: 'as many as the last four sold',
  },
  columns: {
    way: 'baking',
    left: 'left',
    leftCost: 'cost',
    lost: 'lost sales',
    lostCost: 'cost',
    sum: 'together',
  },
  words: (baked, advised) =>
    baked === null
      ? `By the board’s advice it would have come to ${advised}.`
      : `As it was baked it came to ${baked}; by the board’s advice it would have come to ${advised}.`,
}

const OVERRIDES: OverrideWords = {
  title: 'Where you said otherwise',
  none: 'Nothing else than the advice was typed for these days. When it is, both are compared here with what was asked for.',
  summary: (changed, nearer, farther) =>
    `${changed} ${changed === 1 ? 'time' : 'times'} something else was typed: ${nearer} of these were nearer to what was asked for than the advice, ${farther} farther.`,
  columns: { day: 'day', what: 'what', advised: 'advised', typed: 'typed', asked: 'asked for', nearer: 'nearer' },
  nearer: ({ advised, typed, asked }) => {
    const [board, you] = [Math.abs(advised - asked), Math.abs(typed - asked)]
    return board === you ? 'neither' : board < you ? 'the advice' : 'you'
  },
  estimated: 'about',
}
