import type { Role } from '../../shared-core/live/protocol.ts'
import type { SavedText } from './saved-text.ts'
import { readJson } from './saved-text.ts'

/**
 * When a page loads itself anew. At once when it cannot go on (the server folds in another form); when left alone, for
 * a new build. A page that comes back no newer than it was must not reload for ever: each target is tried once and then
 * again after a while, which is remembered across the reload.
 */
export interface ReloadWish {
  readonly kind: 'form' | 'build'
  /** What the page would be after it: another target may be tried at once. */
  readonly target: string
}

/** Long enough for a person to finish at the screen and walk off. */
const IDLE_MS = 60_000
/** A server that was updated while its files were not ready serves the right ones soon after. */
const AGAIN_MS = { form: 30_000, build: 600_000 } as const

export class ReloadPolicy {
  readonly #saved: SavedText
  readonly #key: string
  #wish: ReloadWish | null = null

  constructor(saved: SavedText, role: Role) {
    this.#saved = saved
    this.#key = `boilboard.${role}.reloaded`
  }

  /** Null: nothing to reload for. */
  wish(wish: ReloadWish | null): void {
    this.#wish = wish
  }

  /** A page that still counts is not given up for a newer one that nobody serves now; one that cannot go on, is. */
  contactLost(): void {
    if (this.#wish?.kind === 'build') this.#wish = null
  }

  /** Whether a newer page waits for this screen to be left alone. */
  get awaitsBuild(): boolean {
    return this.#wish?.kind === 'build'
  }

  /** Whether to reload now; when so, it is remembered, and the caller reloads. */
  isDue(now: {
    readonly wallMs: number
    readonly idleMs: number
    readonly pending: number
    readonly hasUnsaved: boolean
  }): boolean {
    const wish = this.#wish
    // Taps that could not be saved would be lost.
    if (wish === null || now.hasUnsaved) return false
    if (wish.kind === 'build' && (now.idleMs < IDLE_MS || now.pending > 0)) return false
    const last = readJson(this.#saved, this.#key)
    // The device's clock may have been set back in between: then it is a while ago, too.
    if (isTried(last, wish.target) && Math.abs(now.wallMs - last.wallMs) < AGAIN_MS[wish.kind]) return false
    // A device that keeps nothing would forget that it has tried.
    return this.#saved.write(this.#key, JSON.stringify({ target: wish.target, wallMs: now.wallMs }))
  }
}

function isTried(value: unknown, target: string): value is { readonly wallMs: number } {
  if (typeof value !== 'object' || value === null || !('target' in value) || !('wallMs' in value)) return false
  return value.target === target && typeof value.wallMs === 'number'
}
