import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { JournalError } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'

export interface ShopFolder {
  readonly journalFile: string
  release(): void
}

/**
 * Takes a shop's folder for this process alone. The lock is an exclusive transaction on a small SQLite file: the
 * operating system frees it when the process ends, however it ends, which a file with a process number in it does not.
 * @throws JournalError when another server has it
 */
export function takeFolder(sqlite: Sqlite, folder: string): ShopFolder {
  mkdirSync(folder, { recursive: true })
  const lock = new sqlite.DatabaseSync(join(folder, 'in-use.sqlite'))
  try {
    lock.exec('PRAGMA busy_timeout = 0; BEGIN EXCLUSIVE')
  } catch {
    lock.close()
    throw new JournalError(
      `Another server is running on ${folder}. Stop it first, or give this one a folder of its own.`,
    )
  }
  return { journalFile: join(folder, 'journal.sqlite'), release: () => lock.close() }
}
