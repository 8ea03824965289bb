import { DateTime } from 'luxon'
import type { DayCommand } from '../../shared-core/day/commands.ts'
import type { Line } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localInstant } from '../live/shop-clock.ts'
import { readCsv } from './load-list-csv.ts'
import { readJson } from './load-list-json.ts'
import { named } from './named.ts'
import type { TypedLoad } from './typed-load.ts'
import { PIECES_MAX } from './typed-load.ts'

type Loads = Extract<DayCommand, { type: 'setLoadList' }>['loads']
export type LoadListRead =
  | { readonly ok: true; readonly loads: Loads }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * A load list as people type it, with local times and names, as the loads of a command: instants and ids. CSV comes as
 * text, anything else is JSON. Every mistake is told with its place; with one, nothing is taken.
 * @param today the shop's date, YYYY-MM-DD, for a list that names none. When all its times are past by then, it was
 * typed in the evening for the next morning, and counts for the next day.
 */
export function readLoadList(
  raw: unknown,
  shop: Shop,
  { today, nowMs }: { today: string; nowMs: EpochMs },
): LoadListRead {
  const read = typeof raw === 'string' ? readCsv(raw) : readJson(raw)
  if (!read.ok) return read
  const problems: Problem[] = []
  const date = read.date ?? dateOf(read.loads, shop.profile.zone, { today, nowMs })
  const loads = read.loads.map(({ at, shelf, lines }) => ({
    shelfId: shelf === null ? null : named(shop.shelves, { typed: shelf, what: 'shelf', problems }),
    inAtMs: at === null ? null : instantOf(at.value, shop.profile.zone, date),
    lines: linesOf(shop, lines, problems),
  }))
  return problems.length > 0 ? { ok: false, problems } : { ok: true, loads }
}

/** An hour late is still this morning's load. */
const STILL_TODAY_MS = 3_600_000

function dateOf(
  loads: readonly TypedLoad[],
  zone: string,
  { today, nowMs }: { today: string; nowMs: EpochMs },
): string {
  const times = loads.flatMap(({ at }) => (at === null ? [] : [instantOf(at.value, zone, today)]))
  const isPast = times.length > 0 && times.every((atMs) => atMs < nowMs - STILL_TODAY_MS)
  return isPast ? (DateTime.fromISO(today, { zone }).plus({ days: 1 }).toISODate() ?? today) : today
}

function instantOf(clock: string, zone: string, date: string): EpochMs {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number)
  return localInstant(zone, date, hours * 60 + minutes)
}

/** A variety that stands in two lines of one load stands there once, with the sum. */
function linesOf(shop: Shop, lines: TypedLoad['lines'], problems: Problem[]): Line[] {
  const sums = new Map<VarietyId, number>()
  for (const { variety, pieces } of lines) {
    const id = named(shop.varieties, { typed: variety, what: 'variety', problems })
    if (id === null) continue
    const sum = (sums.get(id) ?? 0) + pieces
    sums.set(id, sum)
    if (sum <= PIECES_MAX) continue
    const { path, where, value } = variety
    problems.push({ path, wrong: `${where}${sum} pieces of "${value}" in one load.`, right: `At most ${PIECES_MAX}.` })
  }
  return [...sums].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}
