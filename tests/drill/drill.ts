import { cpSync, mkdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { putBack } from '../../server/commands/restore.ts'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { takeFolder } from '../../server/shop/folder.ts'
import { applyEntry, emptyState } from '../../shared-core/day/apply.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import type { SafeCopies } from '../../shared-core/live/devices.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import type { Chance } from '../days/chance.ts'
import { command } from '../server/support/room-world.ts'
import { ServerRun } from '../server/support/server-program.ts'

export interface DrillParts {
  readonly sqlite: Sqlite
  /** The bundled server, the thread that keeps the copies beside it. */
  readonly program: string
  /** Empty. */
  readonly folder: string
  readonly chance: Chance
  readonly damage: string
}

export interface Drilled {
  readonly damage: string
  /** Commands that were answered before the kill. */
  readonly answered: number
  /** Entries that the journal had, that the running copy had, and that are there after the restore. */
  readonly had: number
  readonly copied: number
  readonly restored: number
  /** What is not right, in words; empty when all is. */
  readonly wrong: readonly string[]
  readonly said: readonly string[]
}

/** What becomes of the shop's folder. */
export const DRILL_DAMAGES: Readonly<Record<string, (journal: string, chance: Chance) => void>> = {
  'cut off': (journal, chance) => truncateSync(journal, chance.between(0, readFileSync(journal).length - 1)),
  'bits flipped': (journal, chance) => {
    const bytes = readFileSync(journal)
    for (let n = 0; n < 64; n += 1) {
      const at = chance.between(0, bytes.length - 1)
      bytes[at] = (bytes[at] ?? 0) ^ (1 << chance.between(0, 7))
    }
    writeFileSync(journal, bytes)
  },
  deleted: (journal) => rmSync(journal),
  'deleted with all beside it': (journal) => {
    for (const end of ['', '-wal', '-shm', '-end']) rmSync(`${journal}${end}`, { force: true })
  },
}

/**
 * A restore as a shop would live it: the real server under load with its copies kept, killed, its journal broken, the
 * copy put back, the server started again, and everything that was answered asked once more.
 */
export async function drill(parts: DrillParts): Promise<Drilled> {
  const { sqlite, folder, chance, damage } = parts
  const shop = join(folder, 'shop')
  const copies = join(folder, 'copies')
  writeFileSync(join(folder, 'set-up.json'), JSON.stringify(toSetUpFile(shopWith())))
  const first = startServer(parts, ['--setup', join(folder, 'set-up.json')])
  const answered = await load(await first.port(), chance)
  const { copy } = await copiesOf(await first.port())
  await first.kill('SIGKILL')
  const known = knownOf(parts, shop)
  DRILL_DAMAGES[damage]?.(join(shop, 'journal.sqlite'), chance)
  const said: string[] = []
  const taken = takeFolder(sqlite, shop)
  await putBack(
    { sqlite, folder: shop, nowMs: Date.now() },
    { from: copies, isOnly: false, say: (line) => said.push(line) },
  )
  taken.release()
  const second = startServer(parts, [])
  const wrong = [...(await compare(await second.port(), { known, copied: copy?.seq ?? 0, answered }))]
  const restored = Number(/with ([\d,]+) entries/.exec(said.join('\n'))?.[1]?.replaceAll(',', ''))
  await second.kill('SIGTERM')
  return { damage, answered: answered.size, had: known.length, copied: copy?.seq ?? 0, restored, wrong, said }
}

function startServer({ program, folder }: DrillParts, more: readonly string[]): ServerRun {
  const args = ['--shop', join(folder, 'shop'), '--copies', join(folder, 'copies'), '--no-name', ...more]
  return new ServerRun({ program, args, cwd: folder })
}

const TILLS = 4

/** The server answers six hundred requests a minute; more would be refused, and a copy never seen. */
const LOOK_EVERY_MS = 100

/** Tills that sell at once, a drawn number of times, and as often again once there is a copy. */
async function load(port: number, chance: Chance): Promise<ReadonlyMap<string, number>> {
  const answered = new Map<string, number>()
  const copied = begunCopy(port)
  const sell = async (till: number, count: number) => {
    for (let n = 1; n <= 2 * count; n += 1) {
      if (n > count) await copied
      const id = `till${till}${String(n).padStart(7, '0')}`
      const seq = seqOf(await sale(port, id))
      if (seq !== null) answered.set(id, seq)
    }
  }
  await Promise.all(Array.from({ length: TILLS }, (_, till) => sell(till, chance.between(5, 20))))
  return answered
}

/** @param afterSeq the copy has more than that; 1 is the set-up */
export async function begunCopy(port: number, afterSeq = 1): Promise<void> {
  while (((await copiesOf(port)).copy?.seq ?? -1) <= afterSeq) await wait(LOOK_EVERY_MS)
}

async function sale(port: number, id: string): Promise<unknown> {
  const headers = { 'content-type': 'application/json' }
  const body = JSON.stringify(command({ type: 'sell', lines: lines('sesame', 1) }, { id }))
  return (await fetch(`http://127.0.0.1:${port}/api/v1/commands`, { method: 'POST', headers, body })).json()
}

function seqOf(answered: unknown): number | null {
  const { answer } = answered as { answer?: { kind: string; seq?: number } }
  return answer?.kind === 'taken' ? (answer.seq ?? null) : null
}

async function copiesOf(port: number): Promise<SafeCopies> {
  return (await fetch(`http://127.0.0.1:${port}/api/v1/copies`)).json() as Promise<SafeCopies>
}

interface Known {
  readonly seq: number
  readonly id: string
  /** Of the state after it. */
  readonly hash: string
}

/** What the journal had when the server was killed, read from copies of its files. */
function knownOf({ sqlite, folder }: DrillParts, shop: string): readonly Known[] {
  const place = join(folder, 'before')
  mkdirSync(place)
  for (const end of ['', '-wal']) cpSync(join(shop, `journal.sqlite${end}`), join(place, `journal.sqlite${end}`))
  const journal = new SqliteJournal(sqlite, join(place, 'journal.sqlite'), 'shop')
  const state = emptyState()
  const known: Known[] = []
  for (const entry of journal.entriesAfter(0)) {
    applyEntry(state, entry)
    known.push({ seq: entry.seq, id: entry.commandId, hash: hashState(state) })
  }
  journal.close()
  return known
}

interface Compare {
  readonly known: readonly Known[]
  readonly copied: number
  readonly answered: ReadonlyMap<string, number>
}

async function compare(port: number, { known, copied, answered }: Compare): Promise<readonly string[]> {
  const wrong: string[] = []
  const body = await (await fetch(`http://127.0.0.1:${port}/api/v1/state`)).json()
  const { hash, state } = body as { hash: string; state: { seq: number } }
  const last = known[state.seq - 1]
  if (last?.hash !== hash) wrong.push(`the state after entry ${state.seq} is not what it was`)
  if (state.seq < copied) wrong.push(`${state.seq} entries are there, the copy had ${copied}`)
  for (const [id, seq] of answered) {
    if (known[seq - 1]?.id !== id) wrong.push(`${id} was answered with ${seq} and was not on disk`)
    const again = seqOf(await sale(port, id))
    if (seq <= state.seq && again !== seq) wrong.push(`${id} was answered with ${seq}, and now with ${again}`)
    // What is missing is taken as if it were new, once.
    if (seq > state.seq && (again === null || again <= state.seq))
      wrong.push(`${id} is missing and was not taken again`)
  }
  return wrong
}
