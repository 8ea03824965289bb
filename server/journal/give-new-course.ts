import { randomBytes } from 'node:crypto'
import { orInWords } from './journal-words.ts'
import type { Sqlite } from './sqlite.ts'

/**
 * Gives a journal that was put back another course, so that screens which saw entries that it lacks fetch the state
 * whole; its id stays, and with it the taps that they still have to send. Where another course ended no longer counts.
 * @param file of a journal that nobody has open, in any form
 * @returns the course, random
 * @throws JournalError when it cannot be written
 */
export function giveNewCourse(sqlite: Sqlite, file: string): string {
  const course = randomBytes(12).toString('hex')
  orInWords(file, () => {
    const db = new sqlite.DatabaseSync(file)
    try {
      db.exec('PRAGMA synchronous = FULL')
      db.prepare(
        `INSERT OR REPLACE INTO about (key, value)
         VALUES ('course', ?), ('course_from_seq', (SELECT coalesce(max(seq), 0) FROM entries))`,
      ).run(course)
    } finally {
      db.close()
    }
  })
  return course
}
