import type { Wanted, WantedLine } from '../../../shared-core/dough/mix.ts'
import type { DoughId, VarietyId } from '../../../shared-core/ids.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'

/** One row of the table of a day: a dough, whatever it becomes, or below it one of its varieties. */
export interface WantedRow {
  readonly key: string
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly name: string
}
export interface WantedGroup {
  readonly dough: WantedRow
  readonly varieties: readonly WantedRow[]
}

export const WANTED_FIELDS = ['pieces', 'ordered'] as const
export type WantedField = (typeof WANTED_FIELDS)[number]

/** What is typed and not saved, by `typedKey`. It lies over what stands, so that others may change the rest meanwhile. */
export type Typed = ReadonlyMap<string, string>
export const typedKey = (row: string, field: WantedField) => `${row}|${field}`

/** What the server takes of one line. */
const PIECES_MAX = 50_000

/** Doughs in the order of the set-up with their varieties; what is retired stays while something of it is wanted. */
export function wantedGroups(shop: Shop, wanted: Wanted | undefined): readonly WantedGroup[] {
  const named = new Set(wanted?.lines.flatMap(({ doughId, varietyId }) => [doughId, rowKey(doughId, varietyId)]))
  const inOrder = <Thing extends { order: number; retired: boolean }>(
    things: Iterable<Thing>,
    isNamed: (thing: Thing) => boolean,
  ) => [...things].filter((thing) => !thing.retired || isNamed(thing)).sort((one, other) => one.order - other.order)
  return inOrder(shop.doughs.values(), ({ id }) => named.has(id)).map(({ id: doughId, name }) => {
    const ofDough = [...shop.varieties.values()].filter((variety) => variety.doughId === doughId)
    const varieties = inOrder(ofDough, ({ id }) => named.has(rowKey(doughId, id)))
    return {
      dough: { key: rowKey(doughId, null), doughId, varietyId: null, name },
      varieties: varieties.map(({ id, name: own }) => ({
        key: rowKey(doughId, id),
        doughId,
        varietyId: id,
        name: own,
      })),
    }
  })
}

export function rowKey(doughId: DoughId, varietyId: VarietyId | null): string {
  return varietyId === null ? doughId : `${doughId}/${varietyId}`
}

/** Pieces as typed: a number, or dozens with a d. @returns null while it cannot be read @example typedPieces('12d') // 144 */
export function typedPieces(text: string): number | null {
  const [, digits, dozens = ''] = /^(\d{1,5})(\s*d)?$/i.exec(text.trim()) ?? []
  if (digits === undefined) return text.trim() === '' ? 0 : null
  const pieces = Number(digits) * (dozens === '' ? 1 : 12)
  return pieces <= PIECES_MAX ? pieces : null
}

export function standingOf(wanted: Wanted | undefined, key: string, field: WantedField): number {
  return wanted?.lines.find((line) => rowKey(line.doughId, line.varietyId) === key)?.[field] ?? 0
}

/** What the field shows. */
export function shownText(wanted: Wanted | undefined, typed: Typed, key: string, field: WantedField): string {
  const pieces = standingOf(wanted, key, field)
  return typed.get(typedKey(key, field)) ?? (pieces === 0 ? '' : String(pieces))
}

/** Pieces of a row as it would be saved; null: something in it cannot be read. */
export function rowPieces(wanted: Wanted | undefined, typed: Typed, key: string): number | null {
  const counter = typedPieces(shownText(wanted, typed, key, 'pieces'))
  const ordered = typedPieces(shownText(wanted, typed, key, 'ordered'))
  return counter === null || ordered === null ? null : counter + ordered
}

/** What a save would make of it, in the table's order; null while something cannot be read. */
export function linesToSave(
  groups: readonly WantedGroup[],
  wanted: Wanted | undefined,
  typed: Typed,
): readonly WantedLine[] | null {
  const lines = allRows(groups).map(({ key, doughId, varietyId }) => {
    const pieces = typedPieces(shownText(wanted, typed, key, 'pieces'))
    const ordered = typedPieces(shownText(wanted, typed, key, 'ordered'))
    if (pieces === null || ordered === null) return null
    // What was advised stays beside the number, whoever changes it.
    const advised = wanted?.lines.find((line) => rowKey(line.doughId, line.varietyId) === key)?.advised
    return { doughId, varietyId, pieces, ordered, ...(advised === undefined ? {} : { advised }) }
  })
  const read = lines.filter((line) => line !== null)
  return read.length < lines.length ? null : read.filter(({ pieces, ordered }) => pieces + ordered > 0)
}

/** How many numbers would change. What was typed as it stands already is no change. */
export function changesIn(groups: readonly WantedGroup[], wanted: Wanted | undefined, typed: Typed): number {
  return allRows(groups).reduce((sum, { key }) => {
    const changed = WANTED_FIELDS.filter((field) => {
      const text = typed.get(typedKey(key, field))
      return text !== undefined && typedPieces(text) !== standingOf(wanted, key, field)
    })
    return sum + changed.length
  }, 0)
}

/** Every number as on another day. */
export function copiedFrom(groups: readonly WantedGroup[], from: Wanted | undefined): Typed {
  return everyField(groups, (key, field) => standingOf(from, key, field))
}

export function allCleared(groups: readonly WantedGroup[]): Typed {
  return everyField(groups, () => 0)
}

/**
 * So much more or less for the counter, rounded up to whole pieces; orders stay as they are ordered.
 * @param percent −100 and up
 */
export function raisedBy(
  percent: number,
  groups: readonly WantedGroup[],
  wanted: Wanted | undefined,
  typed: Typed,
): Typed {
  const next = new Map(typed)
  for (const { key } of allRows(groups)) {
    const pieces = typedPieces(shownText(wanted, typed, key, 'pieces'))
    if (pieces === null || pieces === 0) continue
    next.set(typedKey(key, 'pieces'), String(Math.min(PIECES_MAX, Math.ceil((pieces * (100 + percent)) / 100))))
  }
  return next
}

export function allRows(groups: readonly WantedGroup[]): readonly WantedRow[] {
  return groups.flatMap(({ dough, varieties }) => [dough, ...varieties])
}

function everyField(groups: readonly WantedGroup[], value: (key: string, field: WantedField) => number): Typed {
  const entries = allRows(groups).flatMap(({ key }) =>
    WANTED_FIELDS.map((field): [string, string] => {
      const pieces = value(key, field)
      return [typedKey(key, field), pieces === 0 ? '' : String(pieces)]
    }),
  )
  return new Map(entries)
}
