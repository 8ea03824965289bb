import type { NotJoined } from '../../shared-core/live/devices.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { enDoor } from './en-door.ts'
import { esDoor } from './es-door.ts'

/** What is said to a device that is not let in, and to one that joins. Nothing of the shop is known to it. */
export interface DoorWords {
  readonly outside: OutsideWords
  readonly join: JoinWords
  readonly joined: JoinedWords
  readonly noContact: string
  readonly asking: string
}

/** Over a screen that was not let in. */
export interface OutsideWords {
  readonly title: { readonly [why in NotJoined | 'moved']: string }
  readonly how: string
  /** @example "3 taps were not sent. They stay on this device and go out once it has joined." */
  unsent(taps: number): string
  readonly join: string
  readonly again: string
}

export interface JoinWords {
  readonly claimTitle: string
  readonly claimLead: string
  readonly claimHow: string
  readonly title: string
  readonly lead: string
  /** Why it has to join; "" for one that never has. */
  readonly why: { readonly [why in NotJoined]: string }
  readonly code: string
  readonly key: string
  readonly joining: string
  readonly wrong: string
  /** Where there is no desk yet to make a new one. */
  readonly claimWrong: string
  /** @param waitS null: it was not said how long */
  tooMany(waitS: number | null): string
  readonly noContact: string
  /** The server's own sentence follows, where it has one. */
  readonly failed: string
}

export interface JoinedWords {
  /** @example "This device is Bench 2" */
  is(name: string): string
  readonly going: string
  readonly open: string
  readonly leave: string
  readonly leaveHow: string
  unsent(taps: number): string
  readonly leaveYes: string
  readonly leaveNo: string
}

export const DOOR_WORDS: { readonly [language in Language]: DoorWords } = { en: enDoor, es: esDoor }
