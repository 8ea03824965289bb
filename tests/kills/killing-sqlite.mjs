// @ts-check
// Takes the place of the SQLite package in the server's bundle (where Node has no SQLite of its own): the same, but it
// ends the process with SIGKILL at one SQL statement, so that every moment of a start, a step of the file's form, a
// snapshot or a copy can be met, also those that last microseconds. The environment says which: KILL_AT is a pattern for
// the statement's text, KILL_COUNT which of those that match, KILL_WHEN "before" or "after" it, KILL_IN "main" for the server itself or "thread" for
// the thread that keeps the copies.
import { createRequire } from 'node:module'
import { isMainThread } from 'node:worker_threads'

/** @type {typeof import('@photostructure/sqlite')} */
const packaged = createRequire(import.meta.url)('@photostructure/sqlite')
const { KILL_AT, KILL_COUNT, KILL_WHEN, KILL_IN } = process.env
const isHere = KILL_AT !== undefined && (KILL_IN === 'main') === isMainThread
const pattern = isHere ? new RegExp(KILL_AT) : null
let left = Number(KILL_COUNT ?? 1)

/** @type {typeof packaged.backup} */
export function backup(source, file, ...rest) {
  // It goes on by itself: after its beginning is in the middle of it.
  return around('BACKUP', () => packaged.backup(source, file, ...rest))
}

export class DatabaseSync extends packaged.DatabaseSync {
  /**
   * @override
   * @param {string} sql
   */
  exec(sql) {
    // Several statements in one text are several moments.
    for (const one of sql.split(/;\s*(?=\S)/)) around(one, () => super.exec(one))
  }

  /**
   * @override
   * @param {string} sql
   * @param {any[]} rest
   */
  prepare(sql, ...rest) {
    const statement = super.prepare(sql, ...rest)
    if (pattern === null) return statement
    const run = statement.run.bind(statement)
    Object.defineProperty(statement, 'run', {
      value: (/** @type {any[]} */ ...values) => around(sql, () => run(...values)),
    })
    return statement
  }
}

/**
 * @template Result
 * @param {string} sql
 * @param {() => Result} run
 */
function around(sql, run) {
  const isIt = pattern?.test(sql) === true && --left === 0
  if (isIt && KILL_WHEN === 'before') process.kill(process.pid, 'SIGKILL')
  const result = run()
  if (isIt) process.kill(process.pid, 'SIGKILL')
  return result
}
