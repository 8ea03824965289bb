import { mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { JournalError } from '../../server/journal/journal.ts'
import type { Sqlite } from '../../server/journal/sqlite.ts'
import { SqliteJournal } from '../../server/journal/sqlite-journal.ts'
import { verifyJournal } from '../../server/journal/verify.ts'
import { wake } from '../../server/shop/wake.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { Damage } from './damage.ts'
import type { Known } from './victim.ts'

export type Verdict =
  /** It says all that it said before. */
  | { readonly kind: 'unharmed' }
  /** The start ends with a sentence. */
  | { readonly kind: 'refused'; readonly words: string }
  /** It starts, and what cannot be read any more is told where it is read, in a sentence. */
  | { readonly kind: 'told when read'; readonly words: string }
  /** Something is gone or another, and nobody is told; or it is told in no words of ours. */
  | { readonly kind: 'silent' | 'not in words'; readonly words: string }

/** Puts damaged files in a folder of their own and starts a shop from them, as far as a server does before it serves. */
export async function judge(sqlite: Sqlite, folder: string, damage: Damage, known: Known): Promise<Verdict> {
  const file = laidDown(folder, damage)
  let journal: SqliteJournal | null = null
  let isStarted = false
  try {
    journal = new SqliteJournal(sqlite, file, 'shop')
    const hash = hashState(await wake(journal, () => undefined))
    isStarted = true
    const missing = differs(journal, hash, known)
    return missing === null ? { kind: 'unharmed' } : { kind: 'silent', words: missing }
  } catch (error) {
    const words = error instanceof Error ? `${error.name}: ${error.message}` : String(error)
    if (!(error instanceof JournalError) || !saysWhatToDo(error.message, file)) return { kind: 'not in words', words }
    return { kind: isStarted ? 'told when read' : 'refused', words: error.message }
  } finally {
    closed(journal)
  }
}

/** The whole check, which `npm run verify` and restore go by: what it calls good has everything in it. */
export async function verifies(sqlite: Sqlite, folder: string, damage: Damage, known: Known): Promise<Verdict> {
  const verified = await verifyJournal(sqlite, laidDown(folder, damage))
  if (!verified.ok) return { kind: 'refused', words: verified.why }
  const isWhole = verified.seq === known.entries.length && verified.hash === known.hash
  return isWhole ? { kind: 'unharmed' } : { kind: 'silent', words: `it verifies with ${verified.seq} entries` }
}

function laidDown(folder: string, damage: Damage): string {
  const file = join(folder, 'journal.sqlite')
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(damage.isFolder === true ? file : folder, { recursive: true })
  for (const [end, bytes] of damage.files) writeFileSync(`${file}${end}`, bytes)
  return file
}

/** What it says otherwise than before, first of all what people would miss; null when it is all there. */
function differs(journal: SqliteJournal, hash: string, { entries, answers, hash: knownHash }: Known): string | null {
  if (journal.lastSeq() !== entries.length) return `it ends at entry ${journal.lastSeq()} instead of ${entries.length}`
  if (hash !== knownHash) return 'it wakes to another state'
  const read = [...journal.entriesAfter(0)].map((entry) => JSON.stringify(entry))
  const at = entries.findIndex((entry, index) => entry !== read[index])
  if (at !== -1 || read.length !== entries.length) return `entry ${at + 1} is another`
  const setUps = [...journal.setUpEntries()].map(({ seq }) => seq)
  const knownSetUps = entries.flatMap((entry, index) => (entry.includes('"type":"setUp') ? [index + 1] : []))
  if (setUps.join() !== knownSetUps.join())
    return `entries of the set-up are ${setUps.join()} instead of ${knownSetUps.join()}`
  for (const [id, answer] of answers) {
    const said = journal.answerOf(commandId(id))
    if (JSON.stringify(said) !== JSON.stringify(answer)) return `${id} is answered ${JSON.stringify(said)}`
  }
  return null
}

function saysWhatToDo(words: string, file: string): boolean {
  return words.includes(file) && words.includes('npm run restore')
}

function closed(journal: SqliteJournal | null): void {
  try {
    journal?.close()
  } catch {
    // A damaged file may refuse to be put in order; it is thrown away.
  }
}
