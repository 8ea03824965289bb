import type { Command } from '../../shared-core/day/commands.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../shared-core/live/protocol.ts'
import type { QueueStore } from './queue-store.ts'

/**
 * Most taps that wait on a device. A morning without contact is some three hundred; this is a busy day's sales tapped
 * one by one, and half a megabyte at most. Further taps are refused in words rather than lost.
 */
export const QUEUE_MAX = 2_000

/**
 * The taps that the server has not answered, oldest first. A tap is saved before it may be sent; one message at a time
 * is under way, so that a device's taps arrive in the order in which they were made.
 */
export class Outbox {
  readonly #store: QueueStore
  #journalId: string | null = null
  #pending: readonly Command[] = []
  /** Sent on the present contact and not answered. */
  readonly #underWay = new Set<string>()
  /** Could not be saved: they live as long as this page. */
  readonly #unsaved = new Set<string>()

  constructor(store: QueueStore) {
    this.#store = store
  }

  /** Replaced whole at every change. */
  get pending(): readonly Command[] {
    return this.#pending
  }

  get hasUnsaved(): boolean {
    return this.#unsaved.size > 0
  }

  /** Turns to a journal and takes up what was saved for it; taps for the one before stay saved under their own. */
  open(journalId: string): void {
    if (journalId === this.#journalId) return
    this.#journalId = journalId
    this.#underWay.clear()
    this.#unsaved.clear()
    this.#pending = this.#store.load(journalId)
  }

  /** @returns false when the device could not keep it; it is sent all the same */
  add(journalId: string, command: Command): boolean {
    const saved = this.#store.save(journalId, command)
    if (!saved) this.#unsaved.add(command.id)
    this.#pending = [...this.#pending, command]
    return saved
  }

  /** The next message's commands; null while one is unanswered, or when nothing waits. */
  next(): readonly Command[] | null {
    if (this.#underWay.size > 0 || this.#pending.length === 0) return null
    const commands = this.#pending.slice(0, COMMANDS_PER_MESSAGE_MAX)
    for (const { id } of commands) this.#underWay.add(id)
    return commands
  }

  get isWaiting(): boolean {
    return this.#underWay.size > 0
  }

  /** The contact is gone: whatever was under way goes again, and a repeat gets the first answer. */
  contactLost(): void {
    this.#underWay.clear()
  }

  /** Removes an answered tap. @returns it, or null when it was not pending */
  settle(id: string): Command | null {
    this.#underWay.delete(id)
    const command = this.#pending.find((one) => one.id === id)
    if (command === undefined) return null
    this.#pending = this.#pending.filter((one) => one !== command)
    this.#unsaved.delete(id)
    if (this.#journalId !== null) this.#store.remove(this.#journalId, id)
    return command
  }
}
