import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { BATCH_STAGES, LINE_ACTS } from '../../../shared-core/shop/stages.ts'
import { BAKING_TEXTS } from './baking-text.ts'
import { DEMAND_TEXTS } from './demand-text.ts'
import { DOUGH_ROOM_TEXTS, madeOfSaid } from './dough-room-text.ts'
import { KITCHEN_TEXTS } from './kitchen-text.ts'
import type { Telling } from './say-value.ts'
import {
  allergensSaid,
  hoursSaid,
  minuteSaid,
  moneySaid,
  spanSaid,
  temperatureSaid,
  weightOrNot,
  weightSaid,
} from './say-value.ts'

/** How each field of the set-up is told; the compiler asks for every field that there is. */
type ValueOf<E extends SetUpChange['entity']> = NonNullable<Extract<SetUpChange, { entity: E }>['value']>
/** Windows and care are told one by one, not as a field. */
type ToldField<E extends SetUpChange['entity']> = E extends 'windows'
  ? never
  : Exclude<keyof ValueOf<E>, 'id' | 'order' | 'retired' | 'windows' | 'care'>
export type Texts = {
  readonly [E in SetUpChange['entity']]: {
    readonly [F in ToldField<E>]: (value: ValueOf<E>[F], telling: Telling) => string
  }
}

const text = (value: string) => value
const count = (value: number) => String(value)
const minuteOrNot = (value: number | null, telling: Telling) =>
  value === null ? telling.say.form.notSaid : minuteSaid(value, telling)
const span = (value: number, telling: Telling) => spanSaid(value, telling)

const TEXTS: Texts = {
  ...DOUGH_ROOM_TEXTS,
  ...DEMAND_TEXTS,
  ...BAKING_TEXTS,
  ...KITCHEN_TEXTS,
  profile: {
    name: text,
    zone: text,
    language: (value) => ({ en: 'English', es: 'Español' })[value],
    temperature: (value, { say }) => say.options.temperature[value],
    weight: (value, { say }) => say.options.weight[value],
    clock: (value, { say }) => say.options.clock[value],
  },
  hours: {
    ovenReadyMinute: minuteSaid,
    openMinute: minuteSaid,
    changeoverFromMinute: minuteOrNot,
    changeoverToMinute: minuteOrNot,
    closeMinute: minuteSaid,
    secondMenu: (value, { say }) => value ?? say.form.notSaid,
  },
  kettle: { pieces: count, cycleMs: span, recoverMs: span },
  boards: { count, pieces: count, rewetMs: span },
  oven: {
    kind: (value, { say }) => say.options.ovenKind[value].name,
    handlingMs: span,
    bakeAt: (value, { say }) => (value === null ? say.form.notSaid : temperatureSaid(value)),
    secondAt: (value, { say }) => (value === null ? say.form.notSaid : temperatureSaid(value)),
  },
  mixer: { name: text, washMs: span, leastFlour: weightSaid, mostFlour: weightSaid },
  cooler: {
    trays: count,
    keepsAt: (value, { say }) => (value === null ? say.form.notSaid : temperatureSaid(value)),
  },
  counter: {
    salesFrom: (value, { say }) => say.options.salesFrom[value],
    sweepEveryMs: span,
    dayOldPercent: (value) => `${value} %`,
  },
  windows: {},
  shelf: {
    name: text,
    pieces: count,
    emptyByMinute: minuteOrNot,
    floorBoards: (value) => String(value ?? 0),
    slots: count,
  },
  dough: {
    name: text,
    route: (value, { say }) => list(BATCH_STAGES, value, say.options.stage, value),
    trayPieces: count,
    contains: allergensSaid,
    formulaId: (value, { shop, say }) =>
      (value === null ? undefined : shop.formulas.get(value)?.name) ?? say.dough.noFormulas,
    pieceWeight: weightOrNot,
    shapedBy: (value, { say }) => say.dough.shapedBy[value],
    labelWeight: weightOrNot,
  },
  topping: { name: text, contains: allergensSaid, madeOf: madeOfSaid },
  variety: {
    name: text,
    doughId: (value, { words }) => words.names.dough(value),
    size: (value, { say }) => say.options.size[value],
    decidedAt: (value, { say }) => say.options.decidedAt[value],
    topping: (value, { say }) => say.options.topping[value],
    toppingId: (value, { words, say }) => (value === null ? say.form.notSaid : words.names.topping(value)),
    bakedOn: (value, { say }) => say.options.bakedOn[value],
    flip: (value, { say }) => (value ? say.options.yes : say.options.no),
    priceCents: moneySaid,
    costCents: moneySaid,
    kitchenCents: (value, { say }) => (value === null ? say.form.notSaid : moneySaid(value)),
    showLeast: count,
    avoids: allergensSaid,
    usual: (value, { say }) => (value === null ? say.form.notSaid : String(value)),
  },
  station: {
    name: text,
    acts: (value, { words }) =>
      LINE_ACTS.filter((act) => value.includes(act))
        .map(words.acts.verb)
        .join(', ') || '–',
  },
  person: { name: text },
  step: {
    name: text,
    list: (value, { say }) => say.options.list[value],
    offsetMs: span,
    kind: (value, { say }) => say.options.stepKind[value],
  },
  weekday: { hours: hoursSaid },
}

/** A field's value in words. @returns null for what is not told as a field: order, windows, care */
export function fieldText(change: SetUpChange, field: string, value: unknown, telling: Telling): string | null {
  // The table is checked field by field above; here the field's name has come as text.
  const texts = TEXTS[change.entity] as Readonly<Record<string, (value: never, telling: Telling) => string>>
  return texts[field]?.(value as never, telling) ?? null
}

/** Named in the order of the line; a route in its own. */
function list<Word extends string>(
  all: readonly Word[],
  some: readonly Word[],
  names: { readonly [word in Word]: string },
  order: readonly Word[] = all,
): string {
  return (
    order
      .filter((word) => some.includes(word))
      .map((word) => names[word])
      .join(', ') || '–'
  )
}
