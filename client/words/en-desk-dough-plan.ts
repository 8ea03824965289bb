import type { PlanWords } from './desk-dough-plan.ts'
import type { Words } from './words.ts'

const pieces = (count: number) => `${count} ${count === 1 ? 'piece' : 'pieces'}`
const mixes = (count: number) => `${count} ${count === 1 ? 'mix' : 'mixes'}`

export function enPlan({ line }: Words): PlanWords {
  return {
    title: (date) => `Plan for ${date}`,
    hint: 'Pooled by dough, less what is there and still good on that day, in whole trays, evenly in mixes.',
    preview: 'With the numbers as typed, not saved yet.',
    nothing: 'Nothing is wanted for that day yet: type pieces, or copy another day.',
    closedDay: 'The shop is closed on that day.',
    decideBy: (names, day, clock) => `Decide ${line.list(names)} by ${clock}, ${day}.`,
    decideLate: 'That hour is past.',
    doughColumns: { dough: 'dough', shape: 'to shape', why: 'why' },
    reason: (code, count) => REASONS[code](Math.abs(count), count),
    over: (count) => `${count} more than wanted`,
    spare: (count) => `${count} more shaped than wanted`,
    noFormula: (count) => `${pieces(count)} cannot be planned: the dough has no formula or no piece weight.`,
    mixesTitle: 'Mixes',
    mixColumns: { mix: 'mix', flour: 'flour', dough: 'dough', gives: 'gives' },
    formulaHead: (formula, count, flour, dough) => `${formula}: ${mixes(count)}, ${flour} of flour, ${dough} of dough`,
    mixedOn: (date) => `mixed on ${date}`,
    mixedOnClosed: (date) => `mixed on ${date}, when the shop is closed`,
    doughReason: (code, weight) =>
      ({
        pieces: `${weight} in pieces`,
        loss: `${weight} left in bowl and divider`,
        bags: `${weight} to fill up a bag`,
      })[code],
    fits: (fits, least, most) =>
      ({
        fits: '',
        belowLeast: `Less flour than the mixer can mix (${least}).`,
        unequal: `No number of equal mixes is within ${least} and ${most}.`,
      })[fits],
    mixName: (place) => `mix ${place}`,
    flourOf: (formula, place) => `${formula}, mix ${place}: flour`,
    fewerMixes: '− mix',
    moreMixes: '+ mix',
    fewerOf: (formula) => `${formula}: one mix fewer`,
    moreOf: (formula) => `${formula}: one mix more`,
    asPlanned: 'As planned',
    byHand: 'changed by hand',
    costs: (over, dough) => `${over} ${dough} more than planned`,
    costsShort: (short, dough) => `${short} ${dough} fewer than planned`,
    costsNothing: 'the same pieces as planned',
    mixerTime: (minutes, change) =>
      `${minutes} min in the mixer${change === 0 ? '' : ` (${change > 0 ? '+' : '−'}${Math.abs(change)} min)`}`,
    overMost: 'more than the mixer should take',
    underLeast: 'less than the mixer can mix',
    unreadable: 'A marked field is no weight above nought.',
    use: 'Use this plan',
    saveAndUse: 'Save and use this plan',
    stands: (kind, begun) =>
      ({
        none: 'No mix is planned for that day yet.',
        same: 'This is what is planned.',
        earlierFormula:
          'This is planned, by a formula that has changed since: use the plan to weigh by it as it is now.',
        differs: 'What is planned differs from this: use it to plan anew what nobody has begun.',
      })[kind] + (begun === 0 ? '' : ` ${mixes(begun)} begun: ${begun === 1 ? 'it stays' : 'they stay'}.`),
    toOrder: 'To the mixing order',
    toSheets: 'To the mix sheets',
  }
}

const REASONS: { readonly [code in Parameters<PlanWords['reason']>[0]]: (count: number, signed: number) => string } = {
  counter: (count) => `${count} for the counter`,
  orders: (count) => `+ ${count} ordered`,
  boiled: (count) => `− ${count} boiled already`,
  loads: (count) => `+ ${count} more in the planned loads`,
  chilled: (count) => `− ${count} chilled or proofing and still good`,
  begun: (count) => `− ${count} of mixes begun`,
  earlier: (count) => `− ${count} left over from the days before`,
  trays: (count) => `+ ${count} to whole trays`,
  bags: (count, signed) => `${signed < 0 ? '−' : '+'} ${count} to whole bags`,
}
