import type { Batch, Line, State, Until } from '../day/state.ts'
import { untilOf } from '../ferment/until-of.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { LineActDue } from './act-due.ts'
import { actDue } from './act-due.ts'
import { linesOf } from './contents.ts'
import { needsAhead } from './dips.ts'
import type { Fed } from './feed.ts'
import { feed } from './feed.ts'
import type { LookAhead } from './look-ahead.ts'

/**
 * The dips and pulls that the planned loads need, worked back from when each goes in. A load planned for a time makes
 * its pull late when the dough could no longer stand its shortest time on the rack; one that goes in "when a shelf is
 * free" makes nothing late but the dough itself.
 */
export function dipsAndPulls(ahead: LookAhead): readonly LineActDue[] {
  const { tapped, state, shop, allotments, nowMs } = ahead
  if (!tapped.has('dip') && !tapped.has('pull')) return []
  const fed = feed(state, shop, needsAhead(state, shop, allotments, nowMs))
  const dips = fed.filter(({ need }) => need.boiled).map((one) => dip(one, state, nowMs))
  return [...dips, ...pulls(fed, ahead)]
}

function dip({ need, ready }: Fed, state: State, nowMs: EpochMs): LineActDue {
  const { expected, doughId, varietyId, atMs, lines, pieces, dipsLeft, heldUntilMs } = need
  const plannedId = expected.planned.id
  const key = `dip:${plannedId}:${varietyId ?? doughId}:${dipsLeft}`
  const { earliestAtMs, latestAtMs } = tightest(state, ready)
  const when = latest(earliestAtMs, heldUntilMs)
  return actDue(
    { key, act: 'dip', atMs, earliestAtMs: when, latestAtMs, doughId, varietyId, plannedId, lines, pieces },
    nowMs,
  )
}

/** One for each planned load and dough: whole trays, in time for the first dip that needs them. */
function pulls(fed: readonly Fed[], ahead: LookAhead): readonly LineActDue[] {
  const groups = new Map<string, [Fed, ...Fed[]]>()
  for (const one of fed) {
    if (one.pullPieces === 0) continue
    const key = `pull:${one.need.expected.planned.id}:${one.need.varietyId ?? one.need.doughId}`
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [one])
    else group.push(one)
  }
  return [...groups].map(([key, group]) => pull(key, group, ahead))
}

function pull(key: string, group: readonly [Fed, ...Fed[]], { state, shop, nowMs }: LookAhead): LineActDue {
  const [{ need }] = group
  const { doughId, varietyId } = need
  const plannedId = need.expected.planned.id
  const rack = windowOf(shop, 'rack', doughId, varietyId)
  const before = (ms: number) => epochMs(Math.max(0, need.unheldAtMs - ms))
  const timed = need.expected.planned.inAtMs !== null && rack !== null
  const chill = tightest(
    state,
    group.flatMap((one) => one.chilled),
  )
  const sums = new Map<Line['varietyId'], number>()
  for (const line of group.flatMap((one) => one.need.lines))
    sums.set(line.varietyId, (sums.get(line.varietyId) ?? 0) + line.pieces)
  return actDue(
    {
      key,
      act: 'pull',
      atMs: before(rack?.targetMs ?? 0),
      earliestAtMs: latest(chill.earliestAtMs, timed ? before(rack.latestMs) : null),
      latestAtMs: soonest(chill.latestAtMs, timed ? before(rack.earliestMs) : null),
      doughId,
      varietyId,
      plannedId,
      lines: linesOf(sums, shop),
      pieces: group.reduce((sum, one) => sum + one.pullPieces, 0),
      trays: group.reduce((sum, one) => sum + one.pullTrays, 0),
    },
    nowMs,
  )
}

/** All of the batches must be ready, and the first of them to run over sets the latest. */
function tightest(state: State, batches: readonly Batch[]): Pick<LineActDue, 'earliestAtMs' | 'latestAtMs'> {
  const untils = batches.map((batch) => untilOf(state, batch)).filter((until): until is Until => until !== null)
  return {
    earliestAtMs: untils.reduce<EpochMs | null>((at, until) => latest(at, until.earliestAtMs), null),
    latestAtMs: untils.reduce<EpochMs | null>((at, until) => soonest(at, until.latestAtMs), null),
  }
}

function latest(one: EpochMs | null, other: EpochMs | null): EpochMs | null {
  return one === null ? other : other === null ? one : one > other ? one : other
}

function soonest(one: EpochMs | null, other: EpochMs | null): EpochMs | null {
  return one === null ? other : other === null ? one : one < other ? one : other
}
