// @ts-check
// Loaded before the server (`node --import`): the machine's clock as somebody sets it. The file that CLOCK_FILE names
// holds by how many milliseconds it is off, read anew at each look at the clock.
import { readFileSync } from 'node:fs'

const file = process.env.CLOCK_FILE ?? ''
const Machine = Date

function nowMs() {
  return Machine.now() + Number(readFileSync(file, 'utf8'))
}

globalThis.Date = /** @type {DateConstructor} */ (
  class extends Machine {
    /** @param {any[]} parts */
    constructor(...parts) {
      // Without parts it is now.
      super(.../** @type {[number]} */ (parts.length === 0 ? [nowMs()] : parts))
    }

    /** @override */
    static now() {
      return nowMs()
    }
  }
)
