import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { DoughCommand, MixAsked } from '../day/dough-commands.ts'
import { DAYS_AHEAD_MAX, MIXES_MAX, WANTED_DATES_MAX } from '../day/dough-limits.ts'
import { dateAfter } from '../day/label.ts'
import { mixId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import type { Mix, MixTemps } from './mix.ts'
import { pieceMilligrams, sheetLines } from './scale.ts'

type Of<Type extends DoughCommand['type']> = Case<Extract<DoughCommand, { type: Type }>>

/** What is wanted for one day of boiling, in place of what was. */
export function decideSetWanted(oneCase: Of<'setWanted'>): Decision {
  const { command, state, shop, context } = oneCase
  const { date } = command
  const refusal = dateRefusal(date, context.localDate) ?? linesRefusal(shop, command.lines)
  if (refusal !== null) return refusal
  const lines = command.lines.filter(({ pieces, ordered }) => pieces + ordered > 0)
  const isNew = !state.wanted.has(date)
  if (isNew && lines.length === 0) return refuse('already-moved', { stage: null })
  if (isNew && state.wanted.size >= WANTED_DATES_MAX) return refuse('too-many', { most: WANTED_DATES_MAX })
  happen(oneCase, happenedAt(oneCase), { type: 'wantedSet', wanted: { date, lines } })
  return take(oneCase, { date, pieces: lines.reduce((sum, { pieces, ordered }) => sum + pieces + ordered, 0) })
}

/**
 * The mixes for one day of boiling, in place of those that nobody has begun. One that comes out as it stands already
 * stays itself, with what was weighed and read of it.
 */
export function decidePlanMixes(oneCase: Of<'planMixes'>): Decision {
  const { command, state, shop, context } = oneCase
  const { date } = command
  const refusal = dateRefusal(date, context.localDate) ?? mixesRefusal(shop, command.mixes)
  if (refusal !== null) return refusal
  const isReplaced = (mix: Mix) => mix.stage === 'planned' && mix.bakeDate === date
  const before = [...state.mixes.values()].filter(isReplaced).sort(inOrder)
  const others = [...state.mixes.values()].filter((mix) => !isReplaced(mix))
  if (before.length + command.mixes.length === 0) return refuse('already-moved', { stage: null })
  if (others.length + command.mixes.length > MIXES_MAX) return refuse('too-many', { most: MIXES_MAX })
  const atMs = happenedAt(oneCase)
  const after = others.reduce((most, { order }) => Math.max(most, order + 1), 0)
  const mixes = command.mixes.map((asked, index) => {
    const mix = planned(oneCase, asked, { order: after + index, atMs })
    const same = before.findIndex((one) => isSameSheet(one, mix))
    const [kept] = same < 0 ? [] : before.splice(same, 1)
    return kept === undefined ? mix : { ...kept, order: mix.order, startAtMs: mix.startAtMs, gives: mix.gives }
  })
  happen(oneCase, atMs, { type: 'mixesPlanned', date, mixes })
  return take(oneCase, { date, pieces: mixes.length })
}

/** Those that are named first, in that order; the other planned ones after them as they stood. */
export function decideOrderMixes(oneCase: Of<'orderMixes'>): Decision {
  const { command, state } = oneCase
  const asked = command.mixes.map(({ mixId: id, startAtMs }) => ({ mix: state.mixes.get(id), startAtMs }))
  if (asked.some(({ mix }) => mix === undefined)) return refuse('unknown-mix')
  const first = asked.flatMap(({ mix, startAtMs }) => (mix?.stage === 'planned' ? [{ ...mix, startAtMs }] : []))
  if (first.length === 0) return refuse('already-moved', { stage: null })
  const named = new Set(first.map(({ id }) => id))
  const rest = [...state.mixes.values()].filter(({ id, stage }) => stage === 'planned' && !named.has(id)).sort(inOrder)
  const mixes = [...first, ...rest].map(({ id, startAtMs }, order) => ({ mixId: id, order, startAtMs }))
  happen(oneCase, happenedAt(oneCase), { type: 'mixesOrdered', mixes })
  return take(oneCase, { pieces: first.length })
}

export function decideDropMix(oneCase: Of<'dropMix'>): Decision {
  const { command, state } = oneCase
  const mix = state.mixes.get(command.mixId)
  if (mix === undefined) return refuse('unknown-mix')
  if (mix.stage !== 'planned') return refuse('mix-begun')
  happen(oneCase, happenedAt(oneCase), { type: 'mixDropped', mixId: mix.id })
  return take(oneCase, { formulaId: mix.formula.id })
}

/** Planning is for today and the days ahead, a year of them. */
export function dateRefusal(date: string, localDate: string): Decision | null {
  if (date < localDate) return refuse('date-over', { label: date })
  return date <= dateAfter(localDate, DAYS_AHEAD_MAX) ? null : refuse('date-too-far', { label: date })
}

function linesRefusal(shop: Shop, lines: Of<'setWanted'>['command']['lines']): Decision | null {
  for (const { doughId, varietyId } of lines) {
    const dough = shop.doughs.get(doughId)
    if (dough === undefined) return refuse('unknown-dough', { doughId })
    if (dough.retired) return refuse('retired', { doughId })
    if (varietyId === null) continue
    const variety = shop.varieties.get(varietyId)
    if (variety === undefined || variety.doughId !== doughId) return refuse('unknown-variety', { varietyId })
    if (variety.retired) return refuse('retired', { varietyId })
  }
  return null
}

function mixesRefusal(shop: Shop, mixes: readonly MixAsked[]): Decision | null {
  for (const { formulaId, gives } of mixes) {
    const formula = shop.formulas.get(formulaId)
    if (formula === undefined) return refuse('unknown-formula')
    if (formula.retired) return refuse('retired', { name: formula.name })
    for (const { doughId } of gives) {
      const dough = shop.doughs.get(doughId)
      if (dough === undefined) return refuse('unknown-dough', { doughId })
      if (dough.formulaId !== formulaId) return refuse('other-formula', { doughId, name: formula.name })
    }
  }
  return null
}

const NO_TEMPS: MixTemps = { room: null, flour: null, preferment: null, tap: null, water: null, dough: null }

function planned(
  { shop, command, newId }: Of<'planMixes'>,
  asked: MixAsked,
  { order, atMs }: { readonly order: number; readonly atMs: EpochMs },
): Mix {
  const formula = must(shop.formulas, asked.formulaId)
  return {
    id: mixId(newId()),
    formula,
    bakeDate: command.date,
    order,
    startAtMs: asked.startAtMs,
    stage: 'planned',
    sinceMs: atMs,
    until: null,
    mixedAtMs: null,
    mixer: '',
    lines: sheetLines(shop, formula, asked.flourMilligrams),
    gives: asked.gives.map((one) => ({ ...one, pieceMilligrams: pieceMilligrams(shop, one.doughId) })),
    temps: NO_TEMPS,
    water: null,
    folds: 0,
    builds: [],
    shapedMilligrams: 0,
    lostMilligrams: 0,
    spoiltMilligrams: 0,
    unexplainedMilligrams: 0,
  }
}

function isSameSheet(one: Mix, other: Mix): boolean {
  const sheet = ({ lines, formula }: Mix) =>
    JSON.stringify([formula, lines.map((line) => ({ ...line, weighedAtMs: null }))])
  return one.formula.id === other.formula.id && sheet(one) === sheet(other)
}

function inOrder(one: Mix, other: Mix): number {
  return one.order - other.order || (one.id < other.id ? -1 : 1)
}
