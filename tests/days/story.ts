import type { Act } from '../../shared-core/day/commands.ts'
import type { Schedule } from './schedule.ts'

const LINES_MAX = 40

interface Told {
  readonly atMs: number
  readonly who: string
  readonly what: () => string
}

/** The last things that happened, in words and with the shop's time, for the person who has to find out why. */
export class Story {
  readonly #schedule: Schedule
  /** The shop's time is this far ahead of UTC. */
  readonly #offsetMs: number
  readonly #lines: Told[] = []

  constructor(schedule: Schedule, offsetMs: number) {
    this.#schedule = schedule
    this.#offsetMs = offsetMs
  }

  /** Words cost: those of lines that nobody reads are never made. */
  tell(who: string, what: string | (() => string)): void {
    this.#lines.push({ atMs: this.#schedule.nowMs, who, what: typeof what === 'string' ? () => what : what })
    if (this.#lines.length > LINES_MAX) this.#lines.shift()
  }

  toString(): string {
    const line = ({ atMs, who, what }: Told) =>
      `${new Date(atMs + this.#offsetMs).toISOString().slice(11, 23)}  ${who.padEnd(9)} ${what()}`
    return this.#lines.map(line).join('\n')
  }
}

/** @example sayAct({ type: 'sell', lines: [{ varietyId: 'sesame', pieces: 6 }] }) // "sell: 6 sesame" */
export function sayAct(act: Act): string {
  const { type, ...rest } = act
  const said = Object.entries(rest).map(([key, value]) => sayField(key, value))
  return `${type}: ${said.filter((one) => one !== '').join(', ')}`
}

function sayField(key: string, value: unknown): string {
  if (value === null || value === undefined) return ''
  if (Array.isArray(value)) return value.map((one) => sayPart(one)).join(' + ') || `no ${key}`
  if (typeof value === 'object') return JSON.stringify(value)
  return `${key.replace(/Ids?$/, '')} ${value}`
}

function sayPart(part: unknown): string {
  if (typeof part !== 'object' || part === null) return String(part)
  if ('varietyId' in part && 'pieces' in part) return `${part.pieces} ${part.varietyId}`
  // A part of the set-up by its name: whole it would fill the page.
  if ('entity' in part && 'value' in part) return `${part.entity}${sayId(part.value)}`
  if ('lines' in part && Array.isArray(part.lines)) return `[${part.lines.map((line) => sayPart(line)).join(', ')}]`
  return JSON.stringify(part)
}

function sayId(value: unknown): string {
  return typeof value === 'object' && value !== null && 'id' in value ? ` ${value.id}` : ''
}
