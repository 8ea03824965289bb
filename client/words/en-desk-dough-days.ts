import type { DaysWords } from './desk-dough-days.ts'
import { atClock } from './en-desk-dough-clock.ts'

const mixes = (count: number) => `${count} ${count === 1 ? 'mix' : 'mixes'}`

export function enDays(): DaysWords {
  return {
    title: 'The next two weeks',
    hint: 'By the day of boiling. Holidays can be typed long ahead; each dough has its own hour by which it must be decided.',
    goTo: 'Any later day',
    go: 'Go there',
    columns: {
      day: 'day',
      wanted: 'wanted',
      mixes: 'mixes for it',
      mixing: 'mixed that day',
      decide: 'decide that day',
      cooler: 'cooler that night',
    },
    closed: 'closed',
    wanted: (pieces, ordered) => (ordered === 0 ? `${pieces}` : `${pieces}, of these ${ordered} ordered`),
    stands: (planned, begun) =>
      [planned > 0 ? `${planned} planned` : '', begun > 0 ? `${begun} begun` : '']
        .filter((part) => part !== '')
        .join(', '),
    asks: (count) => `plan asks for ${mixes(count)}`,
    mixing: (count) => (count === 0 ? '' : mixes(count)),
    decide: (formula, clock, bakeDate) => `${formula} by ${clock} for ${bakeDate}`,
    decided: 'decided',
    late: 'late',
    trays: (trays, space) => (space === null ? `${trays} trays` : `${trays} of ${space} trays`),
    tooMany: (trays) => `${trays} too many`,
    next: 'To decide next',
    decideNext: (formula, clock, day, bakeDate) => `Decide ${formula} by ${clock} ${day} for ${bakeDate}.`,
    nothingToDecide: 'Nothing waits to be decided.',
    preparations: 'Pre-ferments, soakers and feedings',
    preparationsHint: 'For the mixes of today, tomorrow and the day after; a culture is fed on closed days too.',
    noPreparations: 'Nothing has to be prepared.',
    feed: 'Feed',
    make: (weight, seed) => `${weight}${seed === null ? '' : ` and ${seed} of the ripe one`}`,
    forDay: (date) => `for ${date}`,
    begin: (earliest, target, latest) => `begin ${atClock(target)}, not before ${earliest}, by ${latest}`,
    status: { coming: 'to come', due: 'now', late: 'late' },
    made: 'Begun',
    madeOf: (name) => `${name}: begun now`,
    short: 'Short in the days ahead',
    nothingCounted: 'Nothing is counted yet, so what will be short is not known.',
    noShort: 'What was counted lasts for all that is planned and wanted. What nobody counted is not looked at.',
    shortLine: (name, date, weight, bags) =>
      `${name}: short for ${date}, ${weight}${bags === null ? '' : ` (${bags} ${bags === 1 ? 'bag' : 'bags'})`}`,
    toStock: 'Count or enter what came in',
  }
}
