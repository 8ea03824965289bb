import { parse } from 'csv-parse/sync'
import * as z from 'zod'
import type { DayCommand } from '../../shared-core/day/commands.ts'
import type { Line } from '../../shared-core/day/state.ts'
import type { ShelfId, VarietyId } from '../../shared-core/ids.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { localInstant } from '../live/shop-clock.ts'

export const LOADS_MAX = 200
const PIECES_MAX = 5_000

type Loads = Extract<DayCommand, { type: 'setLoadList' }>['loads']
export type LoadListRead =
  | { readonly ok: true; readonly loads: Loads }
  | { readonly ok: false; readonly problems: readonly Problem[] }

const clock = z.string().regex(/^([01]?\d|2[0-3]):[0-5]\d$/)
const file = z.object({
  date: z.iso.date().optional(),
  loads: z
    .array(
      z.object({
        in: clock.nullish(),
        shelf: z.string().nullish(),
        lines: z
          .array(z.tuple([z.string(), z.number().int().min(1).max(PIECES_MAX)]))
          .min(1)
          .max(40),
      }),
    )
    .max(LOADS_MAX),
})
type ListFile = z.infer<typeof file>

/**
 * A load list as people type it, with local times and names, as the loads of a command: instants and ids. Either JSON
 * `{ "loads": [{ "in": "5:10", "shelf": "1", "lines": [["Sesame", 36]] }] }` or CSV with the columns in, shelf, variety,
 * pieces, where rows of the same time and shelf are one load. Every mistake is told; with one, nothing is taken.
 * @param today the shop's date, YYYY-MM-DD, for a list that names none
 */
export function readLoadList(raw: unknown, shop: Shop, today: string): LoadListRead {
  const read = typeof raw === 'string' ? readCsv(raw) : readJson(raw)
  if (!read.ok) return read
  const problems: Problem[] = []
  const loads = read.file.loads.map(({ in: inAt, shelf, lines }, index) => {
    const place = `/loads/${index}`
    return {
      shelfId: shelf == null || shelf === '' ? null : shelfNamed(shop, shelf, { place, problems }),
      inAtMs: inAt == null ? null : instantOf(inAt, shop.profile.zone, read.file.date ?? today),
      lines: linesNamed(shop, lines, { place, problems }),
    }
  })
  return problems.length > 0 ? { ok: false, problems } : { ok: true, loads }
}

type FileRead =
  | { readonly ok: true; readonly file: ListFile }
  | { readonly ok: false; readonly problems: readonly Problem[] }

function readJson(raw: unknown): FileRead {
  const parsed = file.safeParse(raw)
  if (parsed.success) return { ok: true, file: parsed.data }
  const right = `{ "loads": [{ "in": "5:10", "shelf": "1", "lines": [["Sesame", 36]] }] }, at most ${LOADS_MAX} loads.`
  const problems = parsed.error.issues.map(({ path, message }) => ({
    path: `/${path.join('/')}`,
    wrong: `${message}.`,
    right,
  }))
  return { ok: false, problems }
}

function readCsv(text: string): FileRead {
  const problems: Problem[] = []
  const loads = new Map<string, { in: string | null; shelf: string | null; lines: [string, number][] }>()
  for (const { cells, line } of csvRows(text)) {
    if (line === 1 && cells[3]?.toLowerCase() === 'pieces') continue
    const [inAt = '', shelf = '', variety = '', pieces = ''] = cells
    const isTime = inAt === '' || clock.safeParse(inAt).success
    if (cells.length !== 4 || !isTime || variety === '' || !/^[1-9]\d{0,3}$/.test(pieces)) {
      const right = 'Four columns: in (5:10, or empty), shelf (or empty), variety, pieces (a whole number).'
      problems.push({ path: `/rows/${line}`, wrong: `Line ${line} cannot be read: "${cells.join(',')}".`, right })
      continue
    }
    const key = inAt === '' ? `line ${line}` : `${inAt} ${shelf}`
    const load = loads.get(key) ?? { in: inAt === '' ? null : inAt, shelf: shelf === '' ? null : shelf, lines: [] }
    load.lines.push([variety, Number(pieces)])
    loads.set(key, load)
  }
  return problems.length > 0 ? { ok: false, problems } : readJson({ loads: [...loads.values()] })
}

function csvRows(text: string): { readonly cells: readonly string[]; readonly line: number }[] {
  const rows: { cells: readonly string[]; line: number }[] = []
  parse(text, {
    bom: true,
    delimiter: [',', ';', '\t'],
    trim: true,
    skipEmptyLines: true,
    relaxColumnCount: true,
    relaxQuotes: true,
    onRecord: (cells: string[], { lines }) => {
      rows.push({ cells, line: lines })
      return null
    },
  })
  return rows
}

function instantOf(text: string, zone: string, date: string): EpochMs {
  const [hours = 0, minutes = 0] = text.split(':').map(Number)
  return localInstant(zone, date, hours * 60 + minutes)
}

interface Place {
  readonly place: string
  readonly problems: Problem[]
}

function shelfNamed(shop: Shop, name: string, { place, problems }: Place): ShelfId | null {
  const shelves = [...shop.shelves.values()].filter((shelf) => !shelf.retired)
  const found = shelves.find((shelf) => isCalled(shelf, name))
  if (found !== undefined) return found.id
  const right = `One of: ${shelves.map((shelf) => shelf.name).join(', ')}.`
  problems.push({ path: `${place}/shelf`, wrong: `The oven has no shelf "${name}".`, right })
  return null
}

function linesNamed(shop: Shop, lines: ListFile['loads'][number]['lines'], { place, problems }: Place): Line[] {
  const sums = new Map<VarietyId, number>()
  const varieties = [...shop.varieties.values()].filter((variety) => !variety.retired)
  lines.forEach(([name, pieces], index) => {
    const found = varieties.find((variety) => isCalled(variety, name))
    if (found !== undefined) sums.set(found.id, (sums.get(found.id) ?? 0) + pieces)
    else {
      const right = `One of: ${varieties.map((variety) => variety.name).join(', ')}.`
      problems.push({ path: `${place}/lines/${index}/0`, wrong: `The shop has no variety "${name}".`, right })
    }
  })
  return [...sums].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}

function isCalled(entity: { readonly id: string; readonly name: string }, name: string): boolean {
  const asked = name.trim().toLowerCase()
  return entity.id === asked || entity.name.toLowerCase() === asked
}
