import type { Problem } from '../../shared-core/shop/problem.ts'
import { pointer } from '../../shared-core/shop/problems.ts'
import type { BakeOffJson } from './bake-off-schema.ts'

/** Between the parts of a planning problem: names that are meant must be there, and times must be in order. */
export function bakeOffProblems(given: BakeOffJson): readonly Problem[] {
  return [
    ...timeProblems(given),
    ...twice(given.varieties, ['varieties'], 'variety'),
    ...twice(given.oven.shelves, ['oven', 'shelves'], 'shelf'),
    ...tooManyDips(given),
    ...given.varieties.flatMap((one, at) => varietyProblems(one, at, given)),
    ...given.orders.flatMap((order, at) => orderProblems(order, at, given)),
    ...(['running', 'pinned'] as const).flatMap((list) =>
      (given[list] ?? []).flatMap((load, at) => loadProblems(load, [list, at], given)),
    ),
    ...(given.forbidden ?? []).flatMap((one, at) => forbiddenProblems(one, at, given)),
    ...(given.hands === undefined ? [] : inOrder(given.hands.people, ['hands', 'people'])),
  ]
}

type Path = readonly (string | number)[]

function problem(path: Path, wrong: string, right: string): Problem {
  return { path: pointer(path), wrong, right }
}

function timeProblems({ open, close }: BakeOffJson): Problem[] {
  if (close > open) return []
  return [problem(['close'], `"close" is ${close}.`, `A minute after "open", ${open}.`)]
}

/** A shelf of so many kettle-fulls no shop has, and planning goes by dips: one of 100,000 would take half a minute. */
const DIPS_MAX = 1_000

function tooManyDips({ kettle, oven }: BakeOffJson): Problem[] {
  const most = DIPS_MAX * kettle.pieces
  return oven.shelves.flatMap(({ pieces }, at) =>
    pieces > most
      ? [
          problem(
            ['oven', 'shelves', at, 'pieces'],
            `"pieces" is ${pieces}.`,
            `No more than ${DIPS_MAX} dips, ${most}.`,
          ),
        ]
      : [],
  )
}

/** A name that stands for two is nobody's. */
function twice(all: readonly { readonly name: string }[], path: Path, what: string): Problem[] {
  const first = new Map<string, number>()
  return all.flatMap(({ name }, at) => {
    const before = first.get(name)
    if (before === undefined) {
      first.set(name, at)
      return []
    }
    const right = `A name of its own for each ${what}.`
    return [problem([...path, at, 'name'], `"${name}" is the name of entry ${before + 1} too.`, right)]
  })
}

function varietyProblems({ dough, demand }: BakeOffJson['varieties'][number], at: number, { doughs }: BakeOffJson) {
  const known = Object.keys(doughs)
  const path = ['varieties', at]
  const isKnown = Object.prototype.propertyIsEnumerable.call(doughs, dough)
  return [
    ...(isKnown ? [] : [problem([...path, 'dough'], `There is no dough "${dough}".`, `One of ${quoted(known)}.`)]),
    ...inOrder(demand.profile, [...path, 'demand', 'profile']),
    ...demand.profile.flatMap(([, part], point) =>
      part < (demand.profile[point - 1]?.[1] ?? 0)
        ? [problem([...path, 'demand', 'profile', point], `The part falls to ${part}.`, 'No less than before.')]
        : [],
    ),
  ]
}

function inOrder(points: readonly (readonly [number, number])[], path: Path): Problem[] {
  return points.flatMap(([minute], at) =>
    minute < (points[at - 1]?.[0] ?? minute)
      ? [problem([...path, at], `Minute ${minute} stands after a later one.`, 'Minutes in their order.')]
      : [],
  )
}

function orderProblems({ due, lines }: BakeOffJson['orders'][number], at: number, given: BakeOffJson): Problem[] {
  const { close, now } = given
  const path = ['orders', at]
  const right = now === undefined ? `A minute no later than "close", ${close}.` : `After ${now} and up to ${close}.`
  const isOff = due > close || (now !== undefined && due <= now)
  return [
    ...(isOff ? [problem([...path, 'due'], `"due" is ${due}.`, right)] : []),
    ...lineProblems(lines, [...path, 'lines'], given),
  ]
}

type Load = NonNullable<BakeOffJson['running']>[number]

function loadProblems(load: Load, path: Path, given: BakeOffJson): Problem[] {
  const { shelf, kettleStart, flip, out } = load
  const isInOrder = kettleStart <= load.in && load.in <= flip && load.in <= out
  const right = '"kettleStart" up to "in", and "in" up to "flip" and "out".'
  return [
    ...shelfProblems(shelf, [...path, 'shelf'], given),
    ...(isInOrder ? [] : [problem([...path, 'in'], 'The times of this load are out of order.', right)]),
    ...lineProblems(load.lines, [...path, 'lines'], given),
  ]
}

function lineProblems(lines: Load['lines'], path: Path, { varieties }: BakeOffJson): Problem[] {
  const names = varieties.map(({ name }) => name)
  return lines.flatMap(([variety], at) => (names.includes(variety) ? [] : [unknown(variety, [...path, at], names)]))
}

function shelfProblems(shelf: string, path: Path, { oven }: BakeOffJson): Problem[] {
  const names = oven.shelves.map(({ name }) => name)
  return names.includes(shelf) ? [] : [problem(path, `There is no shelf "${shelf}".`, `One of ${quoted(names)}.`)]
}

function unknown(variety: string, path: Path, names: readonly string[]): Problem {
  return problem(path, `There is no variety "${variety}".`, `One of ${quoted(names)}.`)
}

function forbiddenProblems(one: NonNullable<BakeOffJson['forbidden']>[number], at: number, given: BakeOffJson) {
  const { shelf, variety, fromMin, toMin } = one
  const path = ['forbidden', at]
  const names = given.varieties.map(({ name }) => name)
  const isKnown = variety === undefined || names.includes(variety)
  return [
    ...(shelf === undefined ? [] : shelfProblems(shelf, [...path, 'shelf'], given)),
    ...(isKnown ? [] : [unknown(variety, [...path, 'variety'], names)]),
    ...(toMin > fromMin ? [] : [problem([...path, 'toMin'], `"toMin" is ${toMin}.`, `After "fromMin", ${fromMin}.`)]),
  ]
}

const NAMED_MAX = 12

function quoted(names: readonly string[]): string {
  const shown = names.slice(0, NAMED_MAX).map((name) => `"${name}"`)
  return names.length > NAMED_MAX ? `${shown.join(', ')} and ${names.length - NAMED_MAX} more` : shown.join(', ')
}
