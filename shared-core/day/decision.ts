import type { CommandId, DeviceId } from '../ids.ts'
import { derivedId, unsureId } from '../ids.ts'
import { tappedActs } from '../line/stations.ts'
import type { LineAct, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { clampMs } from '../units.ts'
import type { Answer, Ask, AskCode, Params, RefusalCode } from './answers.ts'
import type { Act, Command, CommandHead } from './commands.ts'
import type { Event, Fact } from './events.ts'
import type { State, UnsureWhat } from './state.ts'
import type { Told } from './trace.ts'
import { eventVersion } from './upcast.ts'

/** What deciding needs to know besides the state. */
export interface Context {
  readonly nowMs: EpochMs
  readonly deviceId: DeviceId
  /** The shop's date now, YYYY-MM-DD: zone tables live at the server's edge. */
  readonly localDate: string
  /** The shop's noon of a date, YYYY-MM-DD; left out: not known, and no leak is assumed on a day that is opened so. */
  readonly noonOf?: (isoDate: string) => EpochMs
}

export type Decision =
  | { readonly kind: 'taken'; readonly events: readonly Event[]; readonly told: Told }
  | Exclude<Answer, { kind: 'taken' }>

/** A command being decided: the state as it is, and the events that it will make. Nothing of it changes the state. */
export interface Case<OneAct extends Act = Act> {
  readonly state: State
  readonly shop: Shop
  readonly command: CommandHead & OneAct
  readonly context: Context
  readonly events: Event[]
  /** Acts that some station taps: what of these was skipped is worth a question for dry hands. */
  readonly tapped: ReadonlySet<LineAct>
  readonly newId: () => string
}

export function openCase<OneAct extends Act>(
  state: State,
  shop: Shop,
  command: CommandHead & OneAct,
  context: Context,
): Case<OneAct> {
  const newId = idMaker(command.id)
  return { state, shop, command, context, events: [], tapped: tappedActs(shop), newId }
}

export function refuse(code: RefusalCode, params: Params = {}): Decision {
  return { kind: 'refused', refusal: { code, params } }
}

/** The asks that the person has not said yes to yet; null when there is nothing to ask. */
export function askFor(command: Command, asks: readonly Ask[]): Decision | null {
  const confirmed = new Set<AskCode>(command.confirmed)
  const open = asks.filter((ask) => !confirmed.has(ask.code))
  return open.length === 0 ? null : { kind: 'ask', asks: open }
}

export function take(oneCase: Case, told: Omit<Told, 'type'> = {}): Decision {
  return { kind: 'taken', events: oneCase.events, told: { type: oneCase.command.type, ...told } }
}

export function happen(oneCase: Case, atMs: EpochMs, fact: Fact): void {
  oneCase.events.push({ v: eventVersion(fact.type), atMs, ...fact })
}

/**
 * When it happened: the tap, kept between the beginning of what it ends and now. A tap without a known server time
 * counts from its arrival.
 */
export function happenedAt({ command, context }: Case, ...sinceMs: readonly EpochMs[]): EpochMs {
  const { nowMs } = context
  const tappedAtMs = command.tappedAtMs ?? nowMs
  return sinceMs.reduce((atMs, since) => clampMs(atMs, since, nowMs), clampMs(tappedAtMs, tappedAtMs, nowMs))
}

/** More questions than this nobody answers: further ones are not asked, what happened is recorded all the same. */
export const UNSURE_MAX = 200

/** Puts a question on the list for dry hands; it never stops the line. */
export function raise(oneCase: Case, atMs: EpochMs, what: UnsureWhat): void {
  const { newId, command, state } = oneCase
  if (state.unsure.size >= UNSURE_MAX) return
  const unsure = { id: unsureId(newId()), commandId: command.id, atMs, what }
  happen(oneCase, atMs, { type: 'unsureRaised', unsure })
}

function idMaker(command: CommandId): () => string {
  let made = 0
  return () => {
    made += 1
    return derivedId(command, made)
  }
}
