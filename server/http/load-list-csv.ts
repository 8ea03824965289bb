import { parse } from 'csv-parse/sync'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Typed, TypedLoad, TypedRead } from './typed-load.ts'
import { CLOCK, LINES_MAX, LOADS_MAX, PIECES_MAX } from './typed-load.ts'

const HEADER = ['in', 'shelf', 'variety', 'pieces']
const RIGHT = `Four columns: in (5:10, or empty), shelf (or empty), variety, pieces (1 to ${PIECES_MAX}).`

/**
 * A load list as a spreadsheet saves it: `in,shelf,variety,pieces`, with commas, semicolons or tabs, the header line or
 * none. Rows of the same time and shelf that follow each other are one load; an empty line begins another.
 * @example readCsv('5:10,1,Sesame,36\n5:10,1,Poppy,12\n,,Plain,48') // two loads
 */
export function readCsv(text: string): TypedRead {
  const rows = splitRows(text)
  if (!rows.ok) return rows
  const problems = rows.rows.flatMap((row) => wrongWith(row))
  const loads = loadsOf(rows.rows)
  if (loads.length > LOADS_MAX)
    problems.push({ path: '', wrong: `${loads.length} loads are too many.`, right: `At most ${LOADS_MAX}.` })
  for (const { lines } of loads) {
    const late = lines[LINES_MAX]
    if (late === undefined) continue
    const { path, where } = late.variety
    problems.push({ path, wrong: `${where}Too many rows for one load.`, right: `At most ${LINES_MAX}.` })
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, loads, date: null }
}

interface Row {
  readonly cells: readonly string[]
  readonly line: number
}

function splitRows(text: string): { ok: true; rows: Row[] } | { ok: false; problems: Problem[] } {
  const rows: Row[] = []
  const read = (cells: string[], { lines }: { readonly lines: number }) => {
    const isHeader = rows.length === 0 && cells.every((cell, index) => cell.toLowerCase() === HEADER[index])
    if (!isHeader) rows.push({ cells, line: lines })
    return null
  }
  try {
    parse(text, { ...FORM, onRecord: read })
    return { ok: true, rows }
  } catch (error) {
    // A quote that is never closed, say: the rest of the file is one cell.
    const why = error instanceof Error ? error.message : String(error)
    return { ok: false, problems: [{ path: '', wrong: `This is no readable CSV: ${why}.`, right: RIGHT }] }
  }
}

const FORM = {
  bom: true,
  delimiter: [',', ';', '\t'],
  trim: true,
  skipEmptyLines: true,
  relaxColumnCount: true,
  relaxQuotes: true,
}

function wrongWith({ cells, line }: Row): Problem[] {
  const [at = '', , variety = '', pieces = ''] = cells
  const isTime = at === '' || CLOCK.test(at)
  const isCount = /^[1-9]\d{0,3}$/.test(pieces) && Number(pieces) <= PIECES_MAX
  if (cells.length === HEADER.length && isTime && variety !== '' && isCount) return []
  return [{ path: `/rows/${line}`, wrong: `Line ${line} cannot be read: "${cells.join(',')}".`, right: RIGHT }]
}

function loadsOf(rows: readonly Row[]): TypedLoad[] {
  const loads: { -readonly [Field in keyof TypedLoad]: TypedLoad[Field] }[] = []
  rows.forEach(({ cells, line }, index) => {
    const typed = (column: number): Typed<string> => {
      return { value: cells[column] ?? '', where: `Line ${line}: `, path: `/rows/${line}` }
    }
    const [at, shelf, variety] = [typed(0), typed(1), typed(2)]
    const one = { variety, pieces: Number(cells[3]) }
    const before = rows[index - 1]
    const load = loads.at(-1)
    const isSame = before?.cells[0] === at.value && before.cells[1] === shelf.value && before.line === line - 1
    if (load !== undefined && isSame) load.lines = [...load.lines, one]
    else loads.push({ at: at.value === '' ? null : at, shelf: shelf.value === '' ? null : shelf, lines: [one] })
  })
  return loads
}
