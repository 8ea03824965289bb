import type { Role } from '../../shared-core/live/protocol.ts'
import type { SavedText } from './saved-text.ts'

/**
 * Whether this device was given another name or station at itself that the server has not heard of. Where the server
 * names devices its word holds, so a change made here must be said as one: until a welcome has answered it, also over
 * a reload and a day without contact.
 */
export class Renames {
  readonly #saved: SavedText
  readonly #key: string
  /** Changed after the last hello: the welcome that comes says nothing about it. */
  #isNewer = false

  constructor(saved: SavedText, role: Role) {
    this.#saved = saved
    this.#key = `boilboard.${role}.renamed`
  }

  changed(): void {
    this.#isNewer = true
    this.#saved.write(this.#key, 'yes')
  }

  /** For the hello that goes out now. */
  forHello(): boolean {
    const isRenamed = this.#isNewer || this.#saved.read(this.#key) !== null
    this.#isNewer = false
    return isRenamed
  }

  /** @returns whether the server knows all of it, so that its word holds; else another hello is due */
  welcomed(): boolean {
    if (!this.#isNewer) this.#saved.remove(this.#key)
    return !this.#isNewer
  }
}
