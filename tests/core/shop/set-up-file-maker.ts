import type { Problem } from '../../../shared-core/shop/problem.ts'
import { parseSetUpFile } from '../../../shared-core/shop/set-up-file.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'

/** The least that a set-up file must say; the rest has defaults. */
export function smallFile() {
  return {
    format: 'boilboard set-up 1',
    shop: { name: 'Test Bagels', zone: 'America/Chicago' },
    hours: { ovenReady: '04:30', open: '06:00', close: '15:00' },
    kettle: { pieces: 36, cycle: { seconds: 90 } },
    boards: { count: 24, pieces: 6 },
    oven: { kind: 'shelves', shelves: [{ id: '1', name: '1', pieces: 72 }] },
    doughs: [
      { id: 'plain', name: 'Plain', route: ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven'] },
      { id: 'rye', name: 'Rye', route: ['proof', 'chill', 'kettle', 'boards', 'oven'] },
    ],
    varieties: [
      { id: 'plain', name: 'Plain', dough: 'plain' },
      { id: 'sesame', name: 'Sesame', dough: 'plain', topping: 'before-flip' },
      { id: 'rye', name: 'Rye', dough: 'rye' },
    ],
    stations: [{ id: 'line', name: 'Line', acts: ['load', 'flip', 'out'] }],
  }
}

/** A file that says every part, in units that differ from the defaults. */
export function fullFile() {
  const { doughs, varieties, hours, kettle, oven, ...small } = smallFile()
  return {
    ...small,
    hours: { ...hours, changeover: { from: '11:00', to: '12:00' }, secondMenu: 'Flatbreads' },
    weekdays: { sunday: null, saturday: { ovenReady: '05:30', open: '07:00', close: '14:00' } },
    kettle: { ...kettle, recover: { minutes: 7 }, care: { topUp: 300, malt: 600, change: 3_000 } },
    oven: { ...oven, bakeAt: { degrees: 475, unit: 'F' }, secondAt: { degrees: 290, unit: 'C' } },
    mixer: { leastFlour: { amount: 5.5, unit: 'kg' }, mostFlour: { amount: 50, unit: 'lb' } },
    cooler: { trays: 40, keepsAt: { degrees: 4, unit: 'C' } },
    baking: {
      boardWait: { minutes: 10 },
      door: { load: { seconds: 45 } },
      people: [{ from: '03:30', people: 2 }],
      showUntil: '09:30',
    },
    counter: { salesFrom: 'till', sweepEvery: { minutes: 120 }, dayOldPercent: 40 },
    doughs: doughs.map((dough) => (dough.id === 'plain' ? { ...dough, contains: ['wheat', 'egg'] } : dough)),
    toppings: [
      { id: 'sesame', name: 'Sesame', contains: ['sesame'] },
      { id: 'old', name: 'Gold leaf', retired: true },
    ],
    varieties: varieties.map((variety) => (variety.id === 'sesame' ? { ...variety, toppedWith: 'sesame' } : variety)),
    people: [{ id: 'ana', name: 'Ana' }],
    steps: [
      { id: 'oven', name: 'Oven', list: 'opening', before: { minutes: 90 } },
      { id: 'float', name: 'Float', list: 'opening', before: { seconds: 90 }, kind: 'float-test' },
      { id: 'empty', name: 'Last load out', list: 'changeover' },
      { id: 'stones', name: 'Brush the stones', list: 'changeover', after: { minutes: 5 } },
    ],
  }
}

export function smallHearthFile() {
  return { ...smallFile(), oven: { kind: 'hearth', floor: { id: 'floor', name: 'Floor', boards: 20 } } }
}

export const CHECKS = { isZone: (name: string) => name === 'America/Chicago' || name === 'Europe/Madrid' }

export function shopOf(file: unknown): Shop {
  const parsed = parseSetUpFile(file, CHECKS)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems, null, 1))
  return parsed.shop
}

export function problemsOfFile(file: unknown): readonly Problem[] {
  const parsed = parseSetUpFile(file, CHECKS)
  return parsed.ok ? [] : parsed.problems
}

/** A copy of `file` with the value at a JSON Pointer put in, or taken out where it is undefined. */
export function withValue(file: object, path: string, value: unknown): object {
  const copy = structuredClone(file)
  const keys = path.split('/').slice(1)
  let inside: object = copy
  for (const key of keys.slice(0, -1)) {
    const next: unknown = Reflect.get(inside, key)
    if (typeof next !== 'object' || next === null) throw new Error(`nothing at ${path}`)
    inside = next
  }
  const last = keys.at(-1) ?? ''
  if (value === undefined) Reflect.deleteProperty(inside, last)
  else Reflect.set(inside, last, value)
  return copy
}
