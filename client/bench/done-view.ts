import type { Refusal } from '../../shared-core/day/answers.ts'
import type { State, Unsure } from '../../shared-core/day/state.ts'
import { changedSince, NEVER_TAKEN_BACK } from '../../shared-core/day/take-back.ts'
import type { Told, Trace } from '../../shared-core/day/trace.ts'
import type { CommandId, DeviceId, UnsureId } from '../../shared-core/ids.ts'
import type { ScreenPresence } from '../../shared-core/live/protocol.ts'
import type { Notice } from '../live/shop-store.ts'
import type { BenchWords } from '../words/bench.ts'
import { outOfWindow } from './out-of-window.ts'

/** An act that was done, and whether it can be undone. */
export interface DoneView {
  readonly commandId: CommandId
  /** "6:46 loaded 3: Onion 24, Garlic 24" */
  readonly text: string
  /** The same without what it was done to. */
  readonly short: string
  /** Who did it. */
  readonly by: string
  readonly isHere: boolean
  /** It was too early or too late, which both texts say. */
  readonly isOutOfWindow: boolean
  /** Why it cannot be taken back, in words; null when it can. */
  readonly refusal: string | null
}

export interface DoneParts {
  readonly state: State
  readonly deviceId: DeviceId
  readonly screens: readonly ScreenPresence[]
  readonly words: BenchWords
}

/** What was done, newest first, with the last act of this screen before all others. */
export function doneViews(parts: DoneParts): readonly DoneView[] {
  const newestFirst = newest(parts.state)
  const mine = lastHere(parts)
  const ordered = mine === null ? newestFirst : [mine, ...newestFirst.filter((trace) => trace !== mine)]
  return ordered.map((trace) => doneView(trace, parts))
}

/** The last act of this screen that is not itself a taking back; null when there is none. */
export function lastDoneHere(parts: DoneParts): DoneView | null {
  const trace = lastHere(parts)
  return trace === null ? null : doneView(trace, parts)
}

function lastHere({ state, deviceId }: DoneParts): Trace | null {
  return newest(state).find((trace) => trace.deviceId === deviceId && trace.told.type !== 'takeBack') ?? null
}

function newest(state: State): readonly Trace[] {
  return [...state.traces].reverse()
}

function doneView(trace: Trace, { state, deviceId, screens, words }: DoneParts): DoneView {
  const isHere = trace.deviceId === deviceId
  const name = screens.find(({ device }) => device.deviceId === trace.deviceId)?.device.name ?? ''
  const refusal = refusalOf(state, trace)
  const over = outOfWindow(trace, state)
  const overText = over === null ? '' : `, ${words.bench.done.outOfWindow(over)}`
  return {
    commandId: trace.commandId,
    text: `${words.told.at(trace.told, trace.atMs)}${overText}`,
    short: `${words.told.at(shortOf(trace.told), trace.atMs)}${overText}`,
    by: isHere ? words.bench.done.here : name,
    isHere,
    isOutOfWindow: over !== null,
    refusal: refusal === null ? null : words.answers.refusal(refusal),
  }
}

function shortOf({ lines: _lines, ...told }: Told): Told {
  return told
}

/** The same answer that the shop would give, before anybody has to ask. */
function refusalOf(state: State, trace: Trace): Refusal | null {
  if (NEVER_TAKEN_BACK.has(trace.told.type)) return { code: 'take-back-never', params: { type: trace.told.type } }
  const after = changedSince(state, trace)
  if (after === null) return null
  const params = { type: after.told.type, atMs: after.atMs, commandId: after.commandId }
  return { code: 'take-back-changed-since', params }
}

/** Something for dry hands: an answer to a tap of this screen, or what the board took for granted at one act. */
export type DryView =
  | {
      readonly kind: 'notice'
      readonly id: string
      readonly title: string
      readonly texts: readonly string[]
      /** Yes and no, for a question; null: it is only to be known. */
      readonly answer: { readonly yes: string; readonly no: string } | null
    }
  | {
      readonly kind: 'unsure'
      readonly id: CommandId
      /** "6:46 loaded 3: Onion 24, Garlic 24" */
      readonly title: string
      /** "48 Plain: dipped?", each by itself. */
      readonly texts: readonly string[]
      readonly unsureIds: readonly UnsureId[]
    }

/**
 * Answers to this screen's taps first, then what is unsure, oldest first: what was forgotten longest is confirmed first.
 * What one tap presumed is one thing to confirm.
 */
export function dryViews(state: State, notices: readonly Notice[], words: BenchWords): readonly DryView[] {
  const told = notices.map((notice) => noticeView(notice, words))
  const byCommand = new Map<CommandId, Unsure[]>()
  for (const one of [...state.unsure.values()].sort(oldestFirst)) {
    const some = byCommand.get(one.commandId)
    if (some === undefined) byCommand.set(one.commandId, [one])
    else some.push(one)
  }
  return [...told, ...[...byCommand].map(([id, some]) => unsureView(id, some, state, words))]
}

function unsureView(id: CommandId, some: readonly Unsure[], state: State, words: BenchWords): DryView {
  const trace = state.traces.find((one) => one.commandId === id)
  const said = some.map((one) => words.live.unsure(one))
  const titles = said.map(({ title }) => title)
  const unsureIds = some.map((one) => one.id)
  // An act so long ago that nobody remembers it: what is unsure speaks for itself.
  const title = trace === undefined ? (titles[0] ?? '') : words.told.at(trace.told, trace.atMs)
  const texts = trace === undefined ? [...titles.slice(1), ...said.slice(0, 1).map(({ text }) => text)] : titles
  return { kind: 'unsure', id, title, texts, unsureIds }
}

function noticeView(notice: Notice, words: BenchWords): DryView {
  const { title, text } = words.live.notice(notice)
  const [ask] = notice.kind === 'ask' ? notice.asks : []
  const question = ask === undefined ? null : words.answers.ask(ask)
  const answer = question === null ? null : { yes: question.yes, no: question.no }
  return { kind: 'notice', id: notice.id, title, texts: [text], answer }
}

function oldestFirst(one: Unsure, other: Unsure): number {
  return one.atMs - other.atMs || (one.id < other.id ? -1 : 1)
}
