import type { Answer } from '../day/answers.ts'
import type { Command } from '../day/commands.ts'
import type { Entry } from '../day/events.ts'
import type { StateJson } from '../day/state-json.ts'
import type { CommandId, DeviceId, StationId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import type { NotJoined } from './devices.ts'
import type { Outlook } from './outlook.ts'
import type { Plan } from './plan.ts'

/**
 * What a screen and the server say to each other, over any ordered link. One message each way per turn:
 *
 *   screen:  hello → (commands | probe | coming)*
 *   server:  welcome → (turn | probed | check | coming | outlook | plan)*
 *
 * A screen has at most one `commands` message unanswered, so a device's taps arrive in the order in which they were made;
 * a repeat after a lost link is answered with the first answer.
 */
export const PROTOCOL_VERSION = 3
/** Most commands in one message; a longer queue goes in several. */
export const COMMANDS_PER_MESSAGE_MAX = 50

export type Role = 'wall' | 'bench' | 'counter' | 'desk'

export interface DeviceHello {
  readonly deviceId: DeviceId
  readonly name: string
  readonly role: Role
  readonly stationId: StationId | null
}

export type FromScreen =
  | {
      readonly type: 'hello'
      readonly protocol: number
      readonly foldVersion: number
      readonly buildId: string
      readonly device: DeviceHello
      /** The device was given another name or station at itself since the last welcome; else the server's word holds. */
      readonly isRenamed: boolean
      /** The last entry that it knows; null: nothing yet. */
      readonly afterSeq: number | null
      /** Which journal it knows: another shop's screen starts afresh. */
      readonly journalId: string | null
      /** Which course of that journal it knows. */
      readonly course: string | null
    }
  | { readonly type: 'commands'; readonly commands: readonly Command[] }
  | { readonly type: 'probe'; readonly t0: number }
  | { readonly type: 'coming'; readonly actKey: string }

export type ToScreen =
  | Welcome
  /** What this turn did: entries for all, answers for the screen that asked. */
  | { readonly type: 'turn'; readonly entries: readonly Entry[]; readonly answers: readonly CommandAnswer[] }
  | { readonly type: 'probed'; readonly t0: number; readonly t1: number; readonly t2: number }
  /** The server's hash at `seq`: a screen at the same seq compares. */
  | { readonly type: 'check'; readonly seq: number; readonly hash: string }
  /** Somebody is on the way to this act: its sound rests until then. */
  | { readonly type: 'coming'; readonly actKey: string; readonly untilMs: EpochMs }
  | { readonly type: 'clockTable'; readonly clock: ShopClock }
  /** Values outside fold and hash, latest only. */
  | { readonly type: 'screens'; readonly screens: readonly ScreenPresence[] }
  | OutlookTold
  | PlanTold
  /** Not let in, or cut off. `flooding`: it sent more than a link may; `moved`: its role, and so its page, is another now. */
  | { readonly type: 'refusedHello'; readonly reason: 'malformed' | 'flooding' | NotJoined }
  | { readonly type: 'refusedHello'; readonly reason: 'moved'; readonly role: Role }

export interface Welcome {
  readonly type: 'welcome'
  readonly protocol: number
  readonly foldVersion: number
  /** Build of the client files that the server serves: a screen with another one reloads when idle. */
  readonly buildId: string
  readonly journalId: string
  /**
   * Which course of the journal this is: after a copy was put back it is a new one, since entries that some screens have
   * seen may be gone and their numbers given to others.
   */
  readonly course: string
  readonly seq: number
  /** What the server calls this device; null: the device names itself. */
  readonly device: Pick<DeviceHello, 'name' | 'stationId'> | null
  /** The state whole, when there is too much to catch up with or nothing known; else the entries since `afterSeq`. */
  readonly state: StateJson | null
  readonly entries: readonly Entry[]
  readonly clock: ShopClock
  /** `speed`: how many times as fast as real time the server's runs; screens count at its pace. */
  readonly demo: { readonly handsOff: boolean; readonly speed: number } | null
  readonly version: string
}

/** Advice on the rest of today: what the shop had become by `basedOnSeq`, as the reckoning of `engine` sees it. */
export interface OutlookTold {
  readonly type: 'outlook'
  readonly basedOnSeq: number
  readonly engine: number
  /** Null: there is none any more, as no day is open. */
  readonly outlook: Outlook | null
}

/** Which loads when, as advised: told when it is another one. */
export interface PlanTold {
  readonly type: 'plan'
  readonly basedOnSeq: number
  readonly engine: number
  /** Null: there is none, as no day is open, nothing is known of what will sell, or advice is switched off. */
  readonly plan: Plan | null
}

export interface CommandAnswer {
  readonly commandId: CommandId
  readonly answer: Answer
}

/** The shop's local time without a zone table: offsets from UTC, each from an instant on, oldest first. */
export interface ShopClock {
  readonly zone: string
  readonly offsets: readonly { readonly fromMs: EpochMs; readonly offsetMinutes: number }[]
}

export interface ScreenPresence {
  readonly device: DeviceHello
  readonly connected: boolean
  readonly seenAtMs: EpochMs
}
