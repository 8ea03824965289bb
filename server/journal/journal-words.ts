import { JournalError } from './journal.ts'

/** What to do about a damaged journal, as the last sentences of every message about one. */
export function remedyFor(file: string): string {
  return `The file is ${file}. Put back the newest good copy: npm run restore -- --shop FOLDER`
}

export const NOT_WRITABLE =
  'The journal may not be written to. Give this user the right to write to the file and its folder, and look whether the drive has become read-only; if the file itself is damaged, a copy helps.'

/** Primary result codes: https://sqlite.org/rescode.html. A code's last eight bits say which one it is. */
const WHAT_IS_WRONG: { readonly [code: number]: string } = {
  5: 'Another program holds the journal. Close it and start again; nothing is damaged, so no copy is needed for that.',
  8: NOT_WRITABLE,
  10: 'The disk of the journal does not read or write as it should. Look at the drive and its cable first.',
  11: 'The journal is damaged: its pages do not fit together.',
  13: 'The disk of the journal is full, and nothing more can be kept. Make room on it and start again; nothing that was taken is lost, so no copy is needed for that.',
  14: 'The journal cannot be opened. Look whether it is a file that this user may read and write, and not a folder.',
  26: 'The journal is damaged: what is there is not a journal.',
}
/** SQLITE_CONSTRAINT: a caller's mistake, no damage. */
const OTHERS = new Set([19])

/**
 * An error of SQLite as a sentence for the person at the terminal; any other error as it is.
 * @returns JournalError where the code says what is wrong with the file
 */
export function inWords(error: unknown, file: string): unknown {
  if (!(error instanceof Error) || error instanceof JournalError) return error
  const code = sqliteCode(error)
  if (code === null || OTHERS.has(code)) return error
  const what = WHAT_IS_WRONG[code] ?? 'The journal is damaged: it cannot be read as one.'
  return new JournalError(`${what} (${error.message}) ${remedyFor(file)}`, { cause: error })
}

/** Does something with the file, and says in words what SQLite has against it. */
export function orInWords<T>(file: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw inWords(error, file)
  }
}

/**
 * Both SQLites say the code as `errcode`, but the package for Node 20 forgets it where a list of rows is read: there the
 * sentence of SQLite itself says which one it is (https://sqlite.org/c3ref/errcode.html, sqlite3_errstr).
 */
function sqliteCode(error: Error): number | null {
  if ('errcode' in error && typeof error.errcode === 'number') return error.errcode & 0xff
  if (!('code' in error && error.code === 'ERR_SQLITE_ERROR')) return null
  return CODE_OF.find(([sentence]) => error.message.includes(sentence))?.[1] ?? null
}

const CODE_OF: readonly (readonly [string, number])[] = [
  ['constraint failed', 19],
  ['database is locked', 5],
  ['attempt to write a readonly database', 8],
  ['disk I/O error', 10],
  ['database disk image is malformed', 11],
  ['database or disk is full', 13],
  ['unable to open database file', 14],
  ['file is not a database', 26],
]
