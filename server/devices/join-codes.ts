import { randomInt } from 'node:crypto'
import type { JoinCode } from '../../shared-core/live/devices.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

/** Time to walk from the desk to a tablet, and to be called away once in between. */
const CODE_LASTS_MS = 600_000
const CODES_MAX = 20
const A_MINUTE_MS = 60_000
/** A person who mistypes tries two or three times. */
export const WRONG_A_MINUTE_MAX = 5
/** From all addresses together: of a million codes thirty tries with twenty open hit one in 1,700 times. */
export const WRONG_IN_ALL_MAX = 30
const WRONG_IN_ALL_MS = 600_000
/** For a new desk, asked for at the start: long enough to find the tablet. */
const NEW_DESK_LASTS_MS = 3_600_000

export interface CodeParts {
  readonly now: () => EpochMs
  /** Six digits, drawn by chance that nobody can foresee. */
  readonly drawCode?: () => string
}

export type Tried =
  | { readonly kind: 'right'; readonly code: Pick<JoinCode, 'role' | 'name' | 'stationId'> }
  | { readonly kind: 'wrong' }
  /** Not even looked at. `hasVoided`: this try was the last of all that there may be, and ended all open codes. */
  | { readonly kind: 'too-many'; readonly retryAfterMs: number; readonly hasVoided: boolean }

/** The codes with which devices join. In memory alone: a restart voids them. */
export class JoinCodes {
  readonly #now: () => EpochMs
  readonly #drawCode: () => string
  readonly #codes = new Map<string, JoinCode>()
  #terminal: { readonly code: string; readonly endsAtMs: number } | null = null
  #wrong: { readonly from: string; readonly atMs: number }[] = []

  constructor({ now, drawCode = () => String(randomInt(1_000_000)).padStart(6, '0') }: CodeParts) {
    this.#now = now
    this.#drawCode = drawCode
  }

  /** Those that can still be used, the newest first. */
  open(): readonly JoinCode[] {
    const nowMs = this.#now()
    for (const { code, expiresAtMs } of this.#codes.values()) if (expiresAtMs <= nowMs) this.#codes.delete(code)
    return [...this.#codes.values()].reverse()
  }

  /** @returns null when there are as many open ones as there may be */
  make(what: Pick<JoinCode, 'role' | 'name' | 'stationId'>): JoinCode | null {
    if (this.open().length >= CODES_MAX) return null
    const code = { ...what, code: this.#newCode(), expiresAtMs: epochMs(this.#now() + CODE_LASTS_MS) }
    this.#codes.set(code.code, code)
    return code
  }

  cancel(code: string): JoinCode | null {
    const known = this.open().find((one) => one.code === code) ?? null
    this.#codes.delete(code)
    return known
  }

  /** The code that only the server's terminal shows; null: none is open. */
  get terminalCode(): string | null {
    if (this.#terminal !== null && this.#terminal.endsAtMs <= this.#now()) this.#terminal = null
    return this.#terminal?.code ?? null
  }

  /**
   * Opens one that makes a desk.
   * @param lasts `unclaimed`: until a desk has joined; `hour`: for a shop that has desks, all of them lost
   */
  openTerminal(lasts: 'unclaimed' | 'hour'): string {
    const code = this.#newCode()
    const endsAtMs = lasts === 'hour' ? this.#now() + NEW_DESK_LASTS_MS : Number.POSITIVE_INFINITY
    this.#terminal = { code, endsAtMs }
    return code
  }

  /**
   * A code as somebody typed it. It still holds when it is right: `spend` it once the device is written down, so that a
   * full disk uses up no code.
   * @param from whose wrong ones are counted together; "own" is this machine, whose tries never hold up the others
   */
  look(code: string, from: string): Tried {
    const nowMs = this.#now()
    this.#wrong = this.#wrong.filter(({ atMs }) => atMs > nowMs - WRONG_IN_ALL_MS)
    const waitMs = this.#waitMs(from, nowMs)
    if (waitMs > 0) return { kind: 'too-many', retryAfterMs: waitMs, hasVoided: false }
    const right = this.#find(code)
    if (right !== null) return { kind: 'right', code: right }
    this.#wrong.push({ from, atMs: nowMs })
    const isLast = from !== OWN_MACHINE && this.#others().length >= WRONG_IN_ALL_MAX
    if (!isLast) return { kind: 'wrong' }
    this.#codes.clear()
    if (this.#terminal !== null) this.#terminal = { ...this.#terminal, code: this.#newCode() }
    return { kind: 'too-many', retryAfterMs: this.#waitMs(from, nowMs), hasVoided: true }
  }

  /** A code holds once. */
  spend(code: string): void {
    if (code === this.#terminal?.code) this.#terminal = null
    this.#codes.delete(code)
  }

  #find(code: string): Pick<JoinCode, 'role' | 'name' | 'stationId'> | null {
    if (code === this.terminalCode) return { role: 'desk', name: '', stationId: null }
    return this.open().find((one) => one.code === code) ?? null
  }

  /** How long this address must wait before its next try is looked at; 0: not at all. */
  #waitMs(from: string, nowMs: number): number {
    const lately = this.#wrong.filter((one) => one.from === from && one.atMs > nowMs - A_MINUTE_MS)
    const own = lately.length >= WRONG_A_MINUTE_MAX ? (lately[0]?.atMs ?? nowMs) + A_MINUTE_MS - nowMs : 0
    const others = this.#others()
    const isFull = from !== OWN_MACHINE && others.length >= WRONG_IN_ALL_MAX
    return isFull ? Math.max(own, (others[0]?.atMs ?? nowMs) + WRONG_IN_ALL_MS - nowMs) : own
  }

  #others() {
    return this.#wrong.filter(({ from }) => from !== OWN_MACHINE)
  }

  /** One that is not open already. */
  #newCode(): string {
    for (;;) {
      const code = this.#drawCode()
      if (!this.#codes.has(code) && code !== this.#terminal?.code) return code
    }
  }
}

/** Whose tries do not count with those of the network. */
export const OWN_MACHINE = 'own'

/** A code as people read it out. @example asTyped('123456') // "123 456" */
export function asTyped(code: string): string {
  return `${code.slice(0, 3)} ${code.slice(3)}`
}
