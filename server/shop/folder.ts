import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { JournalError } from '../journal/journal.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { DETAILS_FILE } from '../orders/details-table.ts'

export interface ShopFolder {
  readonly journalFile: string
  /** Past days, which can be made again from the journal. */
  readonly historyFile: string
  /** Past sales from tills' files. */
  readonly salesFile: string
  /** Whom orders are for. */
  readonly detailsFile: string
  /** Which devices may come in: secrets as hashes. */
  readonly devicesFile: string
  release(): void
}

/**
 * Takes a shop's folder for this process alone. The lock is an exclusive transaction on a small SQLite file: the
 * operating system frees it when the process ends, however it ends, which a file with a process number in it does not.
 * @throws JournalError when another server has it, or when it is no folder that can be written to
 */
export function takeFolder(sqlite: Sqlite, folder: string): ShopFolder {
  const lock = openLock(sqlite, folder)
  try {
    lock.exec('PRAGMA busy_timeout = 0; BEGIN EXCLUSIVE')
  } catch (error) {
    lock.close()
    if (!isBusy(error)) throw unusable(folder, error)
    throw new JournalError(
      `Another server is running on ${folder}. Stop it first, or give this one a folder of its own.`,
    )
  }
  return {
    journalFile: join(folder, 'journal.sqlite'),
    historyFile: join(folder, 'history.sqlite'),
    salesFile: join(folder, 'sales.sqlite'),
    detailsFile: join(folder, DETAILS_FILE),
    devicesFile: join(folder, 'devices.sqlite'),
    release: () => lock.close(),
  }
}

function openLock(sqlite: Sqlite, folder: string) {
  try {
    mkdirSync(folder, { recursive: true })
    return new sqlite.DatabaseSync(join(folder, 'in-use.sqlite'))
  } catch (error) {
    throw unusable(folder, error)
  }
}

/** SQLITE_BUSY: https://sqlite.org/rescode.html#busy */
function isBusy(error: unknown): boolean {
  return error instanceof Error && /database is locked/.test(error.message)
}

function unusable(folder: string, error: unknown): JournalError {
  const why = error instanceof Error ? error.message : String(error)
  return new JournalError(`The folder ${folder} cannot be used: ${why}. Choose one that this user may write to.`)
}
