import type { Mix } from '../../shared-core/dough/mix.ts'
import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { capitalised } from '../words/joined.ts'
import type { DoughInput } from './dough-view.ts'
import type { RowText } from './oven-row.ts'
import { SOON_MS } from './oven-row.ts'
import { roomActInSentence } from './room-act-name.ts'
import { whenText } from './when-text.ts'

interface Row {
  readonly text: RowText
  readonly atMs: EpochMs | null
}

/**
 * A mix: its name and when its stage is over, with what comes then below; once somebody has to do it, the act itself. On
 * the bench, how much of it is shaped.
 */
export function mixRow(mix: Mix, act: RoomAct | null, input: DoughInput): Row {
  const { dough } = input
  const { stage, formula, gives } = mix
  const stageText = stage === 'ended' ? '' : dough.stage(stage)
  const pieces = gives.map((one) => dough.pieces(one.pieces, nameOfDough(one.doughId, input)))
  if (act === null) return { text: benchRow(mix, stageText, input), atMs: null }
  const lead = act.kind === 'mixIns' ? dough.toMixIns : act.kind === 'fold' ? dough.toFold(act.fold) : stageText
  const text = actRow(act, { name: formula.name, lead, lines: pieces }, input)
  return { text, atMs: act.atMs }
}

/** Trays that proof, or chilled ones that should be used. */
export function trayRow(act: RoomAct, input: DoughInput): Row {
  const { shop } = input
  const dough = act.doughId === null ? undefined : shop.doughs.get(act.doughId)
  const trays = Math.ceil(act.pieces / (dough?.trayPieces ?? 1))
  const name =
    act.kind === 'use'
      ? capitalised(roomActInSentence(act, input.state, input.dough))
      : input.dough.pieces(act.pieces, dough?.name ?? '')
  const text = actRow(act, { name, lead: '', lines: [input.dough.trays(trays)] }, input)
  return { text, atMs: act.atMs }
}

interface RowParts {
  readonly name: string
  readonly lead: string
  readonly lines: readonly string[]
}

function actRow(act: RoomAct, { name, lead, lines }: RowParts, input: DoughInput): RowText {
  const { nowMs, words, wall, dough } = input
  const isCalling = act.status !== 'coming' || act.atMs - nowMs <= SOON_MS
  const state = act.status === 'late' ? 'late' : isCalling ? 'act' : 'plain'
  const what = isCalling ? capitalised(roomActInSentence(act, input.state, dough)) : name
  const when = act.status === 'late' ? words.times.late(nowMs - act.atMs) : whenText(act.atMs, nowMs, words)
  const left = act.sinceMs === null ? 0 : (act.atMs - nowMs) / Math.max(1, act.atMs - act.sinceMs)
  const ringState = state === 'plain' ? (act.sinceMs === null ? 'idle' : 'running') : state
  return {
    key: act.key,
    state,
    what: state === 'late' ? `${what},` : what,
    when,
    whenShort: state === 'late' ? wall.late : when,
    ring: { fraction: Math.min(1, Math.max(0, left)), state: ringState },
    lines,
    // Where room is short it stays: it says what the time is for.
    note: isCalling ? '' : lead,
  }
}

function benchRow(mix: Mix, stageText: string, { state, dough }: DoughInput): RowText {
  const { id, formula, gives, shapedMilligrams } = mix
  const weight = gives.reduce((sum, { pieces, pieceMilligrams }) => sum + pieces * pieceMilligrams, 0)
  const all = gives.reduce((sum, { pieces }) => sum + pieces, 0)
  const share = weight === 0 ? 0 : Math.min(1, shapedMilligrams / weight)
  const made = [...state.batches.values()].reduce((sum, { mixId, pieces }) => sum + (mixId === id ? pieces : 0), 0)
  const shaped = all === 0 ? [] : [dough.shaped(Math.min(made, all), all)]
  const ring = { fraction: 1 - share, state: 'running' } as const
  return {
    key: id,
    state: 'plain',
    what: formula.name,
    when: '',
    whenShort: '',
    ring,
    lines: shaped,
    note: stageText,
  }
}

function nameOfDough(id: Mix['gives'][number]['doughId'], { shop }: DoughInput): string {
  return shop.doughs.get(id)?.name ?? ''
}
