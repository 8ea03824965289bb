import type { Chance } from '../days/chance.ts'
import type { Files, Victim } from './victim.ts'

/** What became of a journal's files. */
export interface Damage {
  readonly what: string
  readonly files: Files
  /** The journal is a folder. */
  readonly isFolder?: boolean
}

const PAGE_BYTES = 4_096
const LOG_HEADER_BYTES = 32
const FRAME_HEADER_BYTES = 24

/** By the first byte of a page: https://sqlite.org/fileformat2.html#b_tree_pages; all others hold long texts or nothing. */
const PAGE_KINDS: Readonly<Record<number, string>> = {
  2: 'interior page of an index',
  5: 'interior page of a table',
  10: 'leaf of an index',
  13: 'leaf of a table',
}
const OTHER_PAGE = 'overflow or free page'

type Maker = (victim: Victim, chance: Chance) => Damage

const MAKERS: readonly Maker[] = [
  ({ closed }, chance) => flipped(closed, '', chance.between(0, 99), chance, 'a bit of the header'),
  ({ closed }, chance) =>
    inPage(closed, chance, (file, at) => flipBit(file, at + chance.between(0, PAGE_BYTES - 1), chance), 'a bit of'),
  ({ closed }, chance) =>
    inPage(closed, chance, (file, at) => flipBit(file, at + chance.between(0, PAGE_BYTES - 1), chance), 'a bit of'),
  ({ closed }, chance) => inPage(closed, chance, (file, at) => file.fill(0, at, at + PAGE_BYTES), 'all of'),
  // A sector that was not written, as after a power cut.
  ({ closed }, chance) =>
    inPage(
      closed,
      chance,
      (file, at) => file.fill(0, at + 512 * chance.between(0, 7)).subarray(0),
      'the rest of the file from',
    ),
  ({ closed, older }, chance) => stalePage(closed, older, chance),
  ({ closed }, chance) => truncated(closed, '', chance.between(1, sizeOf(closed, '') - 1)),
  ({ closed }, chance) => truncated(closed, '', PAGE_BYTES * chance.between(1, sizeOf(closed, '') / PAGE_BYTES - 1)),
  ({ killed }, chance) => truncated(killed, '', PAGE_BYTES * chance.between(1, sizeOf(killed, '') / PAGE_BYTES - 1)),
  ({ killed }, chance) =>
    inPage(
      killed,
      chance,
      (file, at) => flipBit(file, at + chance.between(0, PAGE_BYTES - 1), chance),
      'under a log, a bit of',
    ),
  ({ killed }, chance) => truncated(killed, '-wal', chance.between(1, sizeOf(killed, '-wal') - 1)),
  ({ killed }, chance) => truncated(killed, '-wal', wholeFrames(killed, chance)),
  ({ killed }, chance) =>
    flipped(killed, '-wal', chance.between(0, LOG_HEADER_BYTES - 1), chance, 'a bit of the log’s header'),
  ({ killed }, chance) =>
    flipped(killed, '-wal', chance.between(0, sizeOf(killed, '-wal') - 1), chance, 'a bit of the log'),
  ({ killed }, chance) =>
    flipped(killed, '-wal', chance.between(0, sizeOf(killed, '-wal') - 1), chance, 'a bit of the log'),
  ({ killed }) => without(killed, ['-wal']),
  ({ killed }) => without(killed, ['-wal', '-shm']),
  ({ killed }) => without(killed, ['-shm']),
  ({ killed }, chance) => garbage(killed, '-shm', chance),
  ({ killed }, chance) => garbage(killed, '-wal', chance),
  ({ closed }, chance) => garbage(closed, '', chance),
  ({ closed }) => ({ what: 'the file is empty', files: changed(closed, '', () => Buffer.alloc(0)) }),
  () => ({ what: 'the file is a folder', files: new Map(), isFolder: true }),
]

export const DAMAGE_KINDS = MAKERS.length

/** @param kind from 0 to `DAMAGE_KINDS` − 1 */
export function drawDamage(victim: Victim, kind: number, chance: Chance): Damage {
  const make = MAKERS[kind]
  if (make === undefined) throw new Error(`there is no damage of kind ${kind}`)
  return make(victim, chance)
}

function inPage(files: Files, chance: Chance, change: (file: Buffer, at: number) => void, what: string): Damage {
  const file = files.get('') ?? Buffer.alloc(0)
  const pages = Array.from({ length: file.length / PAGE_BYTES }, (_, page) => page)
  const kindOf = (page: number) => PAGE_KINDS[file[page === 0 ? 100 : page * PAGE_BYTES] ?? 0] ?? OTHER_PAGE
  const kind = chance.oneOf([...new Set(pages.map(kindOf))])
  const page = chance.oneOf(pages.filter((one) => kindOf(one) === kind))
  return {
    what: `${what} page ${page + 1}: ${kind}`,
    files: changed(files, '', (copy) => {
      change(copy, page * PAGE_BYTES)
      return copy
    }),
  }
}

function stalePage(files: Files, older: Files, chance: Chance): Damage {
  const [now, then] = [files.get(''), older.get('')]
  if (now === undefined || then === undefined) throw new Error('the files are missing')
  const differs = (page: number) => {
    const [from, to] = [page * PAGE_BYTES, (page + 1) * PAGE_BYTES]
    return to <= then.length && now.compare(then, from, to, from, to) !== 0
  }
  const page = chance.oneOf(Array.from({ length: now.length / PAGE_BYTES }, (_, at) => at).filter(differs))
  const old = then.subarray(page * PAGE_BYTES, (page + 1) * PAGE_BYTES)
  return {
    what: `page ${page + 1} as it was some commits ago`,
    files: changed(files, '', (copy) => {
      old.copy(copy, page * PAGE_BYTES)
      return copy
    }),
  }
}

function flipped(files: Files, end: string, at: number, chance: Chance, what: string): Damage {
  return {
    what: `${what}, byte ${at}`,
    files: changed(files, end, (copy) => {
      flipBit(copy, at, chance)
      return copy
    }),
  }
}

function truncated(files: Files, end: string, bytes: number): Damage {
  return {
    what: `journal.sqlite${end} cut off after ${bytes} bytes`,
    files: changed(files, end, (copy) => copy.subarray(0, bytes)),
  }
}

function wholeFrames(files: Files, chance: Chance): number {
  const frameBytes = FRAME_HEADER_BYTES + PAGE_BYTES
  const frames = Math.floor((sizeOf(files, '-wal') - LOG_HEADER_BYTES) / frameBytes)
  return LOG_HEADER_BYTES + frameBytes * chance.between(0, frames - 1)
}

function garbage(files: Files, end: string, chance: Chance): Damage {
  const make = (copy: Buffer) => {
    for (let at = 0; at + 4 <= copy.length; at += 4) copy.writeUInt32LE(chance.word(), at)
    return copy
  }
  return { what: `journal.sqlite${end} is garbage`, files: changed(files, end, make) }
}

function without(files: Files, ends: readonly string[]): Damage {
  return {
    what: `no ${ends.map((end) => `journal.sqlite${end}`).join(', no ')}`,
    files: new Map([...files].filter(([end]) => !ends.includes(end))),
  }
}

function changed(files: Files, end: string, change: (copy: Buffer) => Buffer): Files {
  const file = files.get(end)
  if (file === undefined) throw new Error(`there is no journal.sqlite${end}`)
  return new Map([...files, [end, change(Buffer.from(file))]])
}

function flipBit(file: Buffer, at: number, chance: Chance): void {
  file.writeUInt8((file[at] ?? 0) ^ (1 << chance.between(0, 7)), at)
}

function sizeOf(files: Files, end: string): number {
  return files.get(end)?.length ?? 0
}
