import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { Archive } from '../journal/archives.ts'
import type { Before } from '../journal/entry-table.ts'
import { EntryTable } from '../journal/entry-table.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { CopyError } from './copy-words.ts'
import { copyWhole, openToRead, putInPlace, removeFile } from './journal-file.ts'

export interface BringYearly {
  readonly sqlite: Sqlite
  /** The yearly archives that a journal, or a copy of it, reads its oldest entries from. */
  readonly archives: readonly Archive[]
  readonly from: string
  readonly to: string
  /** `end`: what is there already is taken for good when it ends as it should; `all`: when each entry is as written. */
  readonly look: Look
  /** Moves away what has an archive's name and is not it. */
  readonly setAside: (file: string) => void
}

type Look = 'end' | 'all'

/**
 * Brings a journal's yearly archives to another folder, those that do not lie there yet. They never change, and every copy
 * of the journal reads the same ones: one that was spoilt, or is of a journal that has gone another way since, spoils all.
 * @throws CopyError when there is no good one to bring
 */
export async function bringYearly({ sqlite, archives, from, to, look, setAside }: BringYearly): Promise<void> {
  let before: Before = { seq: 0, sum: null }
  for (const archive of archives) {
    const file = join(to, archive.name)
    const isGood = (path: string, how: Look) => isAsWritten(sqlite, path, { archive, before, look: how })
    if (!isGood(file, look)) {
      const part = `${file}.part`
      const source = openToRead(sqlite, join(from, archive.name))
      try {
        await copyWhole(sqlite, source, part)
      } finally {
        source.close()
      }
      if (!isGood(part, 'all')) {
        removeFile(part)
        throw new CopyError(`the archive ${join(from, archive.name)} is not as it was written.`)
      }
      if (existsSync(file)) setAside(file)
      putInPlace(part, file)
    }
    before = { seq: archive.lastSeq, sum: archive.lastSum }
  }
}

interface Expected {
  readonly archive: Archive
  readonly before: Before
  readonly look: Look
}

function isAsWritten(sqlite: Sqlite, file: string, { archive, before, look }: Expected): boolean {
  if (!existsSync(file)) return false
  try {
    const db = openToRead(sqlite, file)
    try {
      const table = new EntryTable(db, file, before)
      const { seq, sum } = table.last()
      if (seq !== archive.lastSeq || sum !== archive.lastSum) return false
      if (look === 'end') return true
      table.assertPagesFit()
      for (const _entry of table.eachAfter(before.seq));
      return true
    } finally {
      db.close()
    }
  } catch {
    return false
  }
}
