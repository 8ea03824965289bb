import type { OrderWords } from './desk-dough-order.ts'
import type { Words } from './words.ts'

export function enOrder({ line, times }: Words): OrderWords {
  return {
    lead: 'Allergens come last, then the mixer is washed as seldom as can be, then everything is in the cooler in time. Move a mix to see what another order costs.',
    none: 'No mix is planned. Plan a day first; its mixes then stand here in their order.',
    title: (date) => `Mixed on ${date}`,
    exact: 'No order costs less.',
    bestFound: 'The best order found; with so many mixes not every one can be tried.',
    cost: (contacts, washes, lateMs) =>
      [...costs(contacts, washes), lateMs < MINUTE_MS ? 'nothing late' : `${times.span(lateMs)} late in all`].join(
        ', ',
      ),
    more: (contacts, washes, lateMs) =>
      `Against the best order: ${[signed(contacts, 'allergen contact', 'allergen contacts'), signed(washes, 'wash', 'washes'), Math.abs(lateMs) < MINUTE_MS ? '' : `${lateMs > 0 ? '+' : '−'}${times.span(Math.abs(lateMs))} late`].filter((part) => part !== '').join(', ')}.`,
    earlierFormula:
      'A mix is planned by a formula that has changed since; plan its day anew to weigh by it as it is now.',
    isBest: 'This is the best order.',
    isBestByHand: 'It costs no more than the best order.',
    saved: 'This order and its times are saved.',
    notSaved: 'This order is not saved yet.',
    noTimes: 'Its times are not saved yet.',
    takeBest: 'Take the best order',
    save: 'Save: begin as soon as can be',
    saveLatest: 'Save: begin as late as can be',
    asItWas: 'As it was',
    earlier: (name) => `${name}: earlier`,
    later: (name) => `${name}: later`,
    drag: 'Drag to another place',
    mix: (place, formula, date) => `${place}. ${formula} for ${date}`,
    start: (clock) => `begin at ${clock}`,
    startLatest: (clock) => `at the latest at ${clock}`,
    coolerAt: (clock) => `in the cooler at ${clock}`,
    reason: {
      bringsLater: (allergens) => `is the first with ${line.list(allergens)}, so what has none goes before it`,
      stronger: 'is stronger in flavour than all before it',
      sameBowl: 'goes after the one before without a wash',
      soonest: 'must begin soonest of those still to come',
      wash: (allergens) =>
        allergens.length === 0
          ? 'wash the mixer before it: it is milder'
          : `wash the mixer before it, which held ${line.list(allergens)}`,
      contact: (allergens) => `comes after ${line.list(allergens)}, which it does not contain`,
      waits: (span) => `the mixer waits ${span} for it`,
      benchWaits: (span) => `waits ${span} for the bench or for room to proof`,
      late: (span) => `${span} late in the cooler`,
    },
    contains: (allergens) => `contains ${line.list(allergens)}`,
    legend: {
      wash: 'wash',
      mix: 'mixer',
      wait: 'rest and bulk',
      bench: 'divide and shape',
      proof: 'proof',
      due: 'due in the cooler',
    },
  }
}

const MINUTE_MS = 60_000

function costs(contacts: number, washes: number): string[] {
  return [
    contacts === 0 ? 'no allergen contact' : `${contacts} allergen ${contacts === 1 ? 'contact' : 'contacts'}`,
    washes === 0 ? 'no wash' : `${washes} ${washes === 1 ? 'wash' : 'washes'}`,
  ]
}

function signed(count: number, one: string, many: string): string {
  if (count === 0) return ''
  return `${count > 0 ? '+' : '−'}${Math.abs(count)} ${Math.abs(count) === 1 ? one : many}`
}
