// @ts-check
import { spawn } from 'node:child_process'
import { constants } from 'node:os'

/** Enough of a failed tool's last words to see what was wrong. */
const TAIL_LENGTH = 4_000

/**
 * @typedef {object} Ended
 * @property {number} code the exit code; 1 when a signal ended it or it could not be started
 * @property {string} tail the end of what it printed; empty when it printed straight to the terminal
 */

/**
 * Runs a program to its end. SIGINT and SIGTERM that reach this process reach the child as well, and this process
 * ends when the child has: stopping a start during an install leaves nothing behind and goes on with nothing.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ cwd: string, env?: NodeJS.ProcessEnv, quiet?: boolean, shell?: boolean }} options
 * @returns {Promise<Ended>}
 */
export function runChild(command, args, { cwd, env = process.env, quiet = false, shell = false }) {
  const child = spawn(command, args, { cwd, env, shell, stdio: quiet ? ['ignore', 'pipe', 'pipe'] : 'inherit' })
  let tail = ''
  const keep = (/** @type {Buffer} */ chunk) => {
    tail = (tail + chunk).slice(-TAIL_LENGTH)
  }
  child.stdout?.on('data', keep)
  child.stderr?.on('data', keep)
  const settleSignals = forwardSignals(child)
  return new Promise((resolve) => {
    child.once('error', (error) => {
      settleSignals()
      resolve({ code: 1, tail: error.message })
    })
    child.once('close', (code) => {
      settleSignals()
      resolve({ code: code ?? 1, tail })
    })
  })
}

/**
 * @param {import('node:child_process').ChildProcess} child
 * @returns {() => void} to be called when the child has ended; does not return when a signal had come
 */
function forwardSignals(child) {
  /** @type {NodeJS.Signals | null} */
  let came = null
  const forward = (/** @type {NodeJS.Signals} */ signal) => {
    came = signal
    child.kill(signal)
  }
  process.on('SIGINT', forward)
  process.on('SIGTERM', forward)
  return () => {
    process.off('SIGINT', forward)
    process.off('SIGTERM', forward)
    if (came !== null) process.exit(128 + constants.signals[came])
  }
}
