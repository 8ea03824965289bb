import type { RefusedKind } from '../../shared-core/live/devices.ts'
import { enDeskDoor } from './en-desk-door.ts'
import { esDeskDoor } from './es-desk-door.ts'
import type { Words } from './words.ts'

/** What the desk says of who comes in, who tried, and how well the journal is kept. */
export interface DeskDoorWords {
  readonly open: string
  readonly closeIt: string
  readonly failed: string
  /** Why the server said no, where that can happen to somebody at the desk. */
  readonly refusals: { readonly [why in 'last-desk' | 'gone' | 'too-many']: string }
  readonly noContact: string
  readonly devices: DevicesWords
  readonly letIn: LetInWords
  readonly tokens: TokensWords
  readonly refused: RefusedWords
  readonly copies: CopiesWords
}

export interface DevicesWords {
  readonly columns: { readonly seen: string; readonly ends: string }
  readonly linked: string
  readonly notYet: string
  readonly endless: string
  /** What a calendar's link is, in place of a screen. */
  readonly calendar: string
  readonly change: string
  readonly name: string
  readonly role: string
  readonly station: string
  readonly save: string
  readonly cancel: string
  readonly showOut: string
  /** The question. */
  showOutAsk(name: string): string
  readonly showOutYes: string
  readonly showOutNo: string
  /** Moving it away from the screen that it is: its page changes by itself. */
  readonly movedHint: string
}

export interface LetInWords {
  readonly title: string
  readonly lead: string
  readonly make: string
  readonly onDevice: string
  /** @example "On the new device open http://… and type these digits, or point its camera at the code." */
  how(address: string): string
  /** For those who listen: the digits one by one. */
  digits(code: string): string
  readonly takeBack: string
  readonly over: string
  /** @example "Bench 2 has joined." */
  joined(name: string): string
  readonly another: string
  readonly others: string
  /** A link to the place where this is done follows. */
  readonly there: string
}

export interface TokensWords {
  readonly title: string
  readonly lead: string
  readonly name: string
  readonly nameHint: string
  readonly role: string
  readonly days: string
  /** @param days null: without an end */
  daysChoice(days: number | null): string
  readonly make: string
  /** Above the token, which is told this once. */
  once(name: string): string
  readonly token: string
  readonly example: string
  readonly copy: string
  readonly copied: string
  readonly putAway: string
}

export interface RefusedWords {
  readonly title: string
  readonly none: string
  readonly lead: string
  /** Since when they are counted. @param at "9:10", "Wed, Nov 25, 9:10" */
  since(at: string): string
  readonly columns: { readonly [column in 'what' | 'last' | 'from']: string }
  /** @example "7 wrong codes" */
  times(kind: RefusedKind, count: number): string
}

export interface CopiesWords {
  readonly title: string
  readonly none: string
  /** @param ms since it was made @param missing acts that are not in it yet */
  copied(ms: number, missing: number): string
  readonly folder: string
  readonly sameDrive: string
  readonly trouble: string
  readonly archives: string
  readonly noArchives: string
  readonly columns: { readonly [column in 'when' | 'file' | 'size' | 'acts']: string }
  /** @example "4.2 MB" */
  bytes(bytes: number): string
  readonly restoreTitle: string
  /** The command follows. */
  readonly restore: string
  /** The same for one of the daily ones. */
  readonly restoreOne: string
  readonly exportIt: string
}

export function deskDoorWords(words: Words): DeskDoorWords {
  return words.language === 'en' ? enDeskDoor(words) : esDeskDoor(words)
}
