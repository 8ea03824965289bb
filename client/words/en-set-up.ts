import { EN_BAKING, EN_BAKING_MISFITS } from './en-set-up-baking.ts'
import { EN_DEMAND, EN_DEMAND_MISFITS } from './en-set-up-demand.ts'
import { EN_DOUGH, EN_DOUGH_MISFITS } from './en-set-up-dough.ts'
import { EN_FIELDS, EN_OPTIONS } from './en-set-up-fields.ts'
import { EN_FILE, EN_FORM, EN_GUIDE, EN_LIST, EN_SAVE, EN_VERSIONS } from './en-set-up-ways.ts'
import type { SetUpSentences, SumWords } from './set-up.ts'
import type { Words } from './words.ts'

export function enSetUp({ cautions }: Words): SetUpSentences {
  return {
    title: 'Set-up',
    intro: 'What the shop is: its hours, oven, kettle, doughs, varieties, times, and who taps what.',
    lead: 'Go through it step by step',
    newShop: 'This shop is new. Seven short steps, and the screens can open; every step has sensible values already.',
    back: 'Back to the desk',
    overview: 'All parts',
    groups: {
      shop: 'The shop',
      equipment: 'Equipment',
      made: 'What is made',
      mixed: 'The dough room',
      howMany: 'How many',
      work: 'How the work goes',
      changes: 'Changes',
    },
    parts: PARTS,
    about: ABOUT,
    fields: EN_FIELDS,
    options: EN_OPTIONS,
    dough: EN_DOUGH,
    demand: EN_DEMAND,
    baking: EN_BAKING,
    list: EN_LIST,
    form: EN_FORM,
    guide: EN_GUIDE,
    save: EN_SAVE,
    versions: EN_VERSIONS,
    file: EN_FILE,
    sums: SUMS,
    cautions: {
      timers: cautions.aid,
      oven: 'Hot decks, stones and doors burn: a reading on a screen does not say that an oven is safe to touch.',
      kettle:
        'Boiling water and steam scald: stand clear when dough goes in, and let the kettle cool before it is drained.',
      allergens:
        'What is shown of allergens follows from what is entered here and nothing else. Cross-contact is judged by the people there; the board never says that something is free from an allergen.',
    },
    misfit: (entity, field) => MISFITS[`${entity}/${field.split('/')[0]}`] ?? null,
    entity: (entity, name) => (name === null ? ENTITIES[entity] : `${ENTITIES[entity]} ${name}`),
  }
}

const PARTS: SetUpSentences['parts'] = {
  shop: 'Shop',
  hours: 'Hours',
  people: 'People',
  counter: 'Counter',
  oven: 'Oven',
  kettle: 'Kettle',
  boards: 'Boards',
  room: 'Mixer and cooler',
  doughs: 'Doughs',
  toppings: 'Toppings',
  varieties: 'Varieties',
  doughRoom: 'How it works',
  formulas: 'Formulas',
  preparations: 'Pre-ferments and soakers',
  ingredients: 'Ingredients',
  worth: 'What pieces are worth',
  baking: 'Which loads when',
  usual: 'A usual day',
  specialDays: 'Special days',
  windows: 'Times',
  steps: 'Opening and changeover',
  stations: 'Who taps what',
  screens: 'Screens',
  save: 'See and save',
  versions: 'Versions',
  file: 'As one file',
}

const ABOUT: SetUpSentences['about'] = {
  shop: 'What the screens are called after, and how they tell times, temperatures and weights.',
  hours: 'The usual day, and the weekdays that differ. The ruler on every screen follows them.',
  people: 'Names to give a step of a list to. What you call each other is enough.',
  counter: 'How the counter knows what is left.',
  oven: 'A shelf is one oven floor that is loaded as one.',
  kettle: 'What one dip holds and how soon the next can follow; and when the water wants care.',
  boards: 'Wet boards carry the first side. A board is taken from the lift to the flip.',
  room: 'What one mix can be, and what the cooler holds. Leave it unsaid and nothing is reckoned with it.',
  doughs: 'Each has its way through the shop. Retired ones stay in the records.',
  toppings: 'Seeds, salt, mixes: what goes on the outside.',
  varieties: 'A dough, a size and shape, and a topping.',
  doughRoom: 'Hours, hands, scale, water and air: what mixes are planned and water is reckoned by.',
  formulas: 'What is mixed, in baker’s percent: all flour is 100 %. Several doughs can be shaped from one formula.',
  preparations: 'Made ahead of the mix; their flour and water are counted in the formula.',
  ingredients: 'What is bought: its kind, allergens as on its label, its price and its bag.',
  worth: 'What it costs to have too few and too many: the number of pieces that is advised balances the two.',
  baking: 'What the planner may count on and what it weighs: freshness, hands and people, what must be on show.',
  usual: 'Pieces of each variety on a usual day, before there are sales to learn from.',
  specialDays:
    'Days that sell otherwise than their weekday. What they do to sales is learnt by their name, over the years.',
  windows:
    'Earliest, target and latest of each stage, where neither dough nor variety says otherwise. Screens count down to the target.',
  steps: 'Back-timed lists: the opening counts from the first load in, the changeover from the oven being empty.',
  stations:
    'What nobody taps is presumed from the next act that somebody does. Load and out must be tapped by someone.',
  screens: 'Size, distance, sound and pedals belong to each screen and are set on it.',
  save: 'What will change, in words. Loads that are running keep the times they began with.',
  versions: 'Changes to come, and how the set-up was before.',
  file: 'The whole set-up out and in: for a copy, for another shop, or for those who rather type.',
}

const ENTITIES: { readonly [entity in Parameters<SetUpSentences['entity']>[0]]: string } = {
  profile: 'Shop',
  hours: 'Hours',
  kettle: 'Kettle',
  boards: 'Boards',
  oven: 'Oven',
  mixer: 'Mixer',
  cooler: 'Cooler',
  doughRoom: 'Dough room',
  ingredient: 'Ingredient',
  preparation: 'Preparation',
  formula: 'Formula',
  counter: 'Counter',
  demand: 'What pieces are worth',
  specialDay: 'Special day',
  baking: 'Which loads when',
  windows: 'Times',
  shelf: 'Shelf',
  dough: 'Dough',
  topping: 'Topping',
  variety: 'Variety',
  station: 'Station',
  person: 'Person',
  step: 'Step',
  weekday: 'Weekday',
}

const ORDER = 'No time is longer than the next: earliest, target, latest. The whole bake is longer than its first side.'
const NAME = 'Another one in use has this name. Give it one of its own.'

/** Sentences of what would be right; a misfit without one is told as the core tells it. */
const MISFITS: Readonly<Record<string, string>> = {
  ...EN_DOUGH_MISFITS,
  ...EN_DEMAND_MISFITS,
  ...EN_BAKING_MISFITS,
  'hours/ovenReadyMinute': 'The oven is ready when the shop opens, or before.',
  'hours/closeMinute': 'The shop closes after it opens, within one day.',
  'hours/changeoverFromMinute': 'The changeover begins while the shop is open.',
  'hours/changeoverToMinute': 'The changeover ends after it begins, and before the shop closes.',
  'hours/secondMenu': 'A second menu needs the hours of the changeover.',
  'windows/proof': ORDER,
  'windows/chill': ORDER,
  'windows/rack': ORDER,
  'windows/kettle': ORDER,
  'windows/boards': ORDER,
  'windows/firstSide': ORDER,
  'windows/bake': ORDER,
  'windows/cool': ORDER,
  'shelf/': 'The oven has one shelf in use at least; a hearth has one floor.',
  'shelf/name': NAME,
  'shelf/pieces': 'A shelf holds 1000 pieces at most.',
  'dough/': 'One dough at least is in use, and no more than there is room for.',
  'dough/name': NAME,
  'dough/route': 'It begins where shaped pieces wait: proof, chill or rack. It ends in the oven.',
  'dough/windows': ORDER,
  'variety/': 'One variety at least is in use, and no more than there is room for.',
  'variety/name': NAME,
  'variety/flip': 'What bakes on a board is flipped off it. Flip it, or bake it on a pan.',
  'variety/topping': 'A topping after the flip needs a flip.',
  'variety/toppingId': 'Its topping is in use, and there when it says so.',
  'variety/doughId': 'Its dough is in use. Bring the dough back, or retire this too.',
  'variety/bakedOn': 'A board needs boards: in the shop, and on the way of its dough. Else a pan.',
  'variety/windows': ORDER,
  'station/': 'Somebody taps load, and somebody taps out.',
  'station/name': NAME,
  'ingredient/name': NAME,
  'preparation/name': NAME,
  'formula/name': NAME,
  'topping/name': NAME,
  'person/name': NAME,
  'step/name': NAME,
  'mixer/mostFlour': 'The most flour is no less than the least.',
  'mixer/leastFlour': 'The least flour is no more than the most.',
  'weekday/hours': 'Oven ready, open, changeover, close: in this order, within one day.',
}

const SUMS: SumWords = {
  worth: (amount, percent) => `${amount} for who is sent away, ${percent} % take another`,
  usual: (pieces) => `${pieces} pieces`,
  shelves: (count, pieces) => `${count} ${count === 1 ? 'shelf' : 'shelves'} of ${pieces}`,
  floor: (boards) => `a floor of ${boards} boards`,
  kettle: (pieces, cycle) => `${pieces} pieces every ${cycle}`,
  boards: (count, pieces) => `${count}, ${pieces} pieces on each`,
  count: (count) => String(count),
  steps: (opening, changeover) => `opening ${opening} steps, changeover ${changeover}`,
  nothing: 'not said',
  closed: 'closed',
  changeover: (from, to) => `changeover ${from} – ${to}`,
  toCome: (count) => `${count} to come`,
  room: (mixer, cooler) =>
    [
      ...(mixer === null
        ? []
        : [`${mixer.leastFlour.thousandths / 1_000} – ${mixer.mostFlour.thousandths / 1_000} ${mixer.mostFlour.unit}`]),
      ...(cooler === null ? [] : [`${cooler.trays} trays`]),
    ].join(' · '),
}
