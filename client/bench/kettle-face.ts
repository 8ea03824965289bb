import type { Line, State } from '../../shared-core/day/state.ts'
import type { InKettle, NextDip } from '../../shared-core/line/kettle.ts'
import { kettleNow } from '../../shared-core/line/kettle.ts'
import { boilsAgainAt } from '../../shared-core/line/kettle-care.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { planLoad } from '../parts/advice.ts'
import type { RingState } from '../parts/ring.tsx'
import type { BenchWords } from '../words/bench.ts'
import type { LineParts } from './line-view.ts'

/** What the kettle's ring counts and what stands beside it. */
export interface KettleView {
  readonly ring: { readonly fraction: number; readonly state: RingState }
  /** "22 s" in the ring; "" when nothing is in it. */
  readonly label: string
  /** "Plain 36", or that it is empty. */
  readonly title: string
  /** What its pieces become, or what comes next; each by itself. */
  readonly details: readonly string[]
}

/** What is in the kettle with its countdown; empty, what is dipped next. */
export function kettleView({ state, plan, nowMs, words }: LineParts): KettleView {
  const { in: inside, next } = kettleNow(state, nowMs)
  const { station } = words.bench
  const [batch] = inside
  if (batch === undefined) {
    const ring = recoveringRing(state, nowMs, words)
    const details =
      next === null
        ? [station.nothingPlanned]
        : [station.next(words.names.dough(next.doughId), next.pieces), ...dipsText(next, { plan, nowMs, words })]
    const title = ring.label === '' ? station.empty : words.shift.care.boilsAgain
    return { ...ring, title, details }
  }
  return {
    ...kettleRing(batch, nowMs, words),
    title: inside.map((one) => station.amount(nameOf(one, words), one.pieces)).join(', '),
    details: becoming(batch.becomes, words),
  }
}

/**
 * When its load's dips should begin and how many they are. What has gone by is not said: where nobody taps the kettle
 * the board does not know how far it is.
 */
function dipsText(
  { plannedId, dipsLeft }: NextDip,
  { plan, nowMs, words: { advice } }: Pick<LineParts, 'plan' | 'nowMs' | 'words'>,
): readonly string[] {
  const atMs = planLoad(plan, plannedId)?.kettleAtMs ?? null
  return atMs === null || atMs <= nowMs ? [] : [`${advice.firstDip(atMs, nowMs)}, ${advice.dips(dipsLeft)}`]
}

/** Counts down to the water boiling again after cold water went in; idle while it boils. */
function recoveringRing(state: State, nowMs: EpochMs, { times }: BenchWords): Pick<KettleView, 'ring' | 'label'> {
  const atMs = boilsAgainAt(state, nowMs)
  if (atMs === null) return { ring: { fraction: 0, state: 'idle' }, label: '' }
  const fraction = (atMs - nowMs) / Math.max(1, state.shop?.kettle.recoverMs ?? 1)
  return { ring: { fraction, state: 'running' }, label: times.left(atMs - nowMs) }
}

function kettleRing(
  { until, sinceMs }: InKettle,
  nowMs: EpochMs,
  { times }: BenchWords,
): Pick<KettleView, 'ring' | 'label'> {
  if (until === null) return { ring: { fraction: 0, state: 'idle' }, label: times.span(nowMs - sinceMs) }
  const leftMs = until.targetAtMs - nowMs
  if (leftMs > 0) {
    const fraction = leftMs / Math.max(1, until.targetAtMs - sinceMs)
    return { ring: { fraction, state: 'running' }, label: times.left(leftMs) }
  }
  const state = nowMs > until.latestAtMs ? 'late' : 'act'
  return { ring: { fraction: 0, state }, label: times.span(-leftMs) }
}

export function nameOf({ doughId, varietyId }: Pick<InKettle, 'doughId' | 'varietyId'>, { names }: BenchWords): string {
  return varietyId === null ? names.dough(doughId) : names.variety(varietyId)
}

/** "becomes 24 Sesame", "12 Poppy": what the pieces become, each by itself. */
export function becoming(lines: readonly Line[], { line, bench }: BenchWords): readonly string[] {
  const pieces = piecesOf(lines)
  return lines.map((one, index) => {
    const what = line.becomes([one])
    return index === 0 ? bench.station.becomes(what, pieces) : what
  })
}
