// @ts-check
import { spawn } from 'node:child_process'

/** Enough of a failed tool's last words to see what was wrong. */
const TAIL_LENGTH = 4_000

/**
 * @typedef {object} Ended
 * @property {number} code the exit code; 1 when a signal ended it or it could not be started
 * @property {string} tail the end of what it printed; empty when it printed straight to the terminal
 */

/**
 * Runs a program to its end. SIGINT and SIGTERM that reach this process reach the child as well, so that
 * stopping the start during an install leaves nothing behind.
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
  const stopForwarding = forwardSignals(child)
  return new Promise((resolve) => {
    child.once('error', (error) => {
      stopForwarding()
      resolve({ code: 1, tail: error.message })
    })
    child.once('close', (code) => {
      stopForwarding()
      resolve({ code: code ?? 1, tail })
    })
  })
}

/** @param {import('node:child_process').ChildProcess} child */
function forwardSignals(child) {
  const forward = (/** @type {NodeJS.Signals} */ signal) => {
    child.kill(signal)
  }
  process.on('SIGINT', forward)
  process.on('SIGTERM', forward)
  return () => {
    process.off('SIGINT', forward)
    process.off('SIGTERM', forward)
  }
}
