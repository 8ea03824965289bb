// @ts-check
// Takes the place of the SQLite package in the server's bundle (where Node has no SQLite of its own): the same, but it
// ends the process with SIGKILL at one SQL statement, so that every moment of a start, a step of the file's form, a
// snapshot or a copy can be met, also those that last microseconds. The environment says which: KILL_AT is a pattern for
// the statement's text, KILL_COUNT which of those that match, KILL_WHEN "before" or "after" it.
import { createRequire } from 'node:module'

/** @type {typeof import('@photostructure/sqlite')} */
const packaged = createRequire(import.meta.url)('@photostructure/sqlite')
const { KILL_AT, KILL_COUNT, KILL_WHEN } = process.env
const pattern = KILL_AT === undefined ? null : new RegExp(KILL_AT)
let left = Number(KILL_COUNT ?? 1)

export const { backup } = packaged

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
