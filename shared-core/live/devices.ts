import type { StationId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import type { Role } from './protocol.ts'

/**
 * What the server's API says of devices: which have joined, with which role, and how another joins. A secret appears
 * once, in the answer to whoever asked for it.
 */

export type DeviceKind =
  /** A browser that joined with a code. */
  | 'screen'
  /** A till, sensor or script that carries a token. */
  | 'script'
  /** A calendar that has a link with a token in it: it shows when orders are due, and lets in to nothing else. */
  | 'calendar'

/** A device that has joined. A desk may open any screen; the others only the screen of their role. */
export interface JoinedDevice {
  readonly id: string
  readonly kind: DeviceKind
  readonly name: string
  readonly role: Role
  readonly stationId: StationId | null
  readonly joinedAtMs: EpochMs
  /** When it last asked for anything; null: not yet. */
  readonly seenAtMs: EpochMs | null
  /** From then on it must join again; null: a script's or a calendar's token without an end. */
  readonly expiresAtMs: EpochMs | null
}

/** A code of six digits with which one device joins, once. */
export interface JoinCode {
  readonly code: string
  readonly role: Role
  /** What the device will be called; "": what it calls itself. */
  readonly name: string
  readonly stationId: StationId | null
  readonly expiresAtMs: EpochMs
}

/** What the desk sees of who may come in. */
export interface WhoIsIn {
  readonly devices: readonly JoinedDevice[]
  readonly codes: readonly JoinCode[]
  /** Ids of the devices of which a screen is linked now. */
  readonly linked: readonly string[]
}

/** Who is asking, as the server sees it. */
export type Standing =
  /** Everybody on the network may choose a screen: the demo, and a shop started with --open. */
  | { readonly kind: 'open' }
  /** No desk has joined yet: the code in the server's terminal makes this the first one. */
  | { readonly kind: 'unclaimed' }
  | { readonly kind: 'unknown'; readonly why: NotJoined }
  | { readonly kind: 'joined'; readonly device: JoinedDevice }

/** Why a device is not let in. */
export type NotJoined =
  /** It has no token. */
  | 'no-token'
  /** Its token is none of ours. */
  | 'forged'
  /** The desk has shown it out. */
  | 'revoked'
  /** It was away for too long. */
  | 'expired'

/** What was refused, by kind: told at the desk. */
export type RefusedKind =
  | NotJoined
  /** A name of the server, or a page, that is not ours. */
  | 'foreign-host'
  | 'foreign-origin'
  | 'wrong-code'
  | 'not-its-role'
  | 'too-many'
  | 'malformed'
  /** More messages a second than a link may send. */
  | 'flooding'

export interface RefusedAttempts {
  readonly kind: RefusedKind
  readonly times: number
  readonly lastAtMs: EpochMs
  /** The address that the last one came from. */
  readonly lastFrom: string
}

/** How well the journal is kept beside its own file. */
export interface SafeCopies {
  /** Where the copies lie. */
  readonly folder: string
  /** On the drive of the journal itself, a copy does not outlive the drive. */
  readonly isSameDrive: boolean
  /** The running copy; null: none yet. */
  readonly copy: { readonly seq: number; readonly atMs: EpochMs } | null
  /** Daily ones, newest first. */
  readonly archives: readonly SafeCopy[]
  /** What went wrong the last time, in a sentence; null: nothing. */
  readonly trouble: string | null
}

export interface SafeCopy {
  readonly file: string
  readonly atMs: EpochMs
  readonly bytes: number
  readonly seq: number
  /** Fingerprint of the state that it folds to. */
  readonly hash: string
}
