import type { z } from 'zod'
import type { Misfit } from './misfit.ts'
import type { Problem } from './problem.ts'
import * as from from './set-up-from-file.ts'
import { KEPT_MAX } from './set-up-limits.ts'
import type { ListName, SetUpParts } from './set-up-parts.ts'
import * as schema from './set-up-schema.ts'
import type { Kettle, Profile } from './shop.ts'

/**
 * What can be read of a set-up file, part by part: a mistake in one part must not hide those between the others, so
 * that people see all mistakes of a file at once. Parts that cannot be read are null or left out.
 */
export interface Draft {
  readonly profile: Profile | null
  readonly kettle: Kettle | null
  readonly parts: SetUpParts
  /** Ids that stand in their list a second time. */
  readonly doubled: readonly Problem[]
  /** Where in the file something is that does not fit. */
  readonly placeOf: (misfit: Misfit) => string
}

export function draftOf(raw: unknown): Draft {
  const boards = readAs(schema.boardsFile, at(raw, 'boards'), from.boardsFrom)
  const boardPieces = boards?.pieces ?? 1
  const floor = at(at(raw, 'oven'), 'floor')
  const shelves = [
    ...(floor === undefined ? [] : readEach(schema.floorFile, [{ path: '/oven/floor', raw: floor }], shelfOf)),
    ...readEach(schema.shelfFile, entriesAt('/oven/shelves', at(at(raw, 'oven'), 'shelves')), shelfOf),
  ]
  function shelfOf(file: from.ShelfOrFloor, order: number) {
    return from.shelfFrom(file, order, boardPieces)
  }
  const doughs = readEach(schema.doughFile, entriesAt('/doughs', at(raw, 'doughs')), from.doughFrom)
  const varieties = readEach(schema.varietyFile, entriesAt('/varieties', at(raw, 'varieties')), from.varietyFrom)
  const stations = readEach(schema.stationFile, entriesAt('/stations', at(raw, 'stations')), from.stationFrom)
  const lists = { shelf: shelves, dough: doughs, variety: varieties, station: stations }
  return {
    profile: readAs(schema.profileFile, at(raw, 'shop'), from.profileFrom),
    kettle: readAs(schema.kettleFile, at(raw, 'kettle'), from.kettleFrom),
    parts: {
      hours: readAs(schema.hoursFile, at(raw, 'hours'), from.hoursFrom),
      boards,
      oven: readAs(schema.ovenFile, at(raw, 'oven'), from.ovenFrom),
      windows: readAs(schema.windowsFile, at(raw, 'windows'), from.windowsFrom),
      shelves: readable(shelves),
      doughs: readable(doughs),
      varieties: readable(varieties),
      stations: readable(stations),
      doughIds: new Set(doughs.flatMap(({ id }) => id ?? [])),
      unread: new Set(
        LISTS.filter((name) => lists[name].length === 0 || lists[name].some(({ entity }) => entity === null)),
      ),
    },
    doubled: LISTS.flatMap((name) => doubledIn(lists[name])),
    placeOf: (misfit) => placeOf(misfit, lists),
  }
}

const LISTS: readonly ListName[] = ['shelf', 'dough', 'variety', 'station']

interface Place {
  readonly path: string
  readonly raw: unknown
}
/** One entry of a list: the id it claims to have, and what it says if it can be read. */
interface Entry<Entity> {
  readonly path: string
  readonly id: string | null
  readonly entity: Entity | null
}

function readAs<Schema extends z.ZodType, Part>(
  part: Schema,
  raw: unknown,
  as: (file: z.output<Schema>) => Part,
): Part | null {
  const read = part.safeParse(raw)
  return read.success ? as(read.data) : null
}

function readEach<Schema extends z.ZodType, Entity>(
  entry: Schema,
  places: readonly Place[],
  as: (file: z.output<Schema>, order: number) => Entity,
): Entry<Entity>[] {
  return places.map(({ path, raw }, order) => {
    const id = at(raw, 'id')
    return { path, id: typeof id === 'string' ? id : null, entity: readAs(entry, raw, (file) => as(file, order)) }
  })
}

function readable<Entity>(entries: readonly Entry<Entity>[]): Entity[] {
  return entries.flatMap(({ entity }) => (entity === null ? [] : [entity]))
}

function doubledIn(entries: readonly Entry<unknown>[]): Problem[] {
  return entries.flatMap(({ id, path }, index) => {
    const first = entries.findIndex((entry) => entry.id === id)
    if (id === null || first === index) return []
    const wrong = `The id "${id}" stands at ${entries[first]?.path} already.`
    return [{ path: `${path}/id`, wrong, right: 'An id of its own.' }]
  })
}

/** Fields that the file calls otherwise than the running shop. */
const FILE_FIELD: Readonly<Record<string, string>> = {
  doughId: 'dough',
  ovenReadyMinute: 'ovenReady',
  openMinute: 'open',
  closeMinute: 'close',
  changeoverFromMinute: 'changeover/from',
  changeoverToMinute: 'changeover/to',
}
const LIST_PATH = { shelf: '/oven', dough: '/doughs', variety: '/varieties', station: '/stations' } as const

function placeOf({ entity, id, field }: Misfit, lists: Record<ListName, readonly Entry<unknown>[]>): string {
  const inside = field === '' ? '' : `/${FILE_FIELD[field] ?? field}`
  if (entity !== 'shelf' && entity !== 'dough' && entity !== 'variety' && entity !== 'station')
    return `/${entity}${inside}`
  const entry = id === null ? undefined : lists[entity].find((one) => one.id === id)
  return (entry?.path ?? LIST_PATH[entity]) + inside
}

function entriesAt(path: string, raw: unknown): Place[] {
  if (!Array.isArray(raw)) return []
  // A longer list is refused as a whole; comparing all its ids would be slow.
  return Array.from(raw.slice(0, KEPT_MAX), (entry, index) => ({ path: `${path}/${index}`, raw: entry }))
}

function at(raw: unknown, key: string): unknown {
  return typeof raw === 'object' && raw !== null && key in raw ? Reflect.get(raw, key) : undefined
}
