import type { State } from '../../shared-core/day/state.ts'
import { plannedAhead } from '../../shared-core/line/planned.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Connection, LiveState } from '../live/shop-store.ts'
import { standsStill } from '../live/stands-still.ts'
import { changeNow, lastDipNear, lastLines } from '../parts/advice.ts'
import { rulerOfDay } from '../parts/ruler-of-day.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import type { BenchWords } from '../words/bench.ts'

/** The band at the top: the time, the day as a ruler, what is to come and how the link is. */
export interface DayView {
  readonly clock: string
  /** What is another about the next load and why, from all of it to the shortest; none most of the time. */
  readonly changed: readonly string[]
  /** "last dip in 24 min", "last load in by 10:34", "6 loads to go" */
  readonly toGo: readonly string[]
  /** Null before the shop's clock is known. */
  readonly ruler: RulerDay | null
  readonly link: LinkView
  /** Shown under the time; "" in a real shop. */
  readonly demo: string
}

export interface LinkView {
  readonly text: string
  /** Without the name of this device. */
  readonly short: string
  /** What is shown may be old, or taps wait here. */
  readonly isTrouble: boolean
}

export interface DayParts extends Pick<LiveState, 'demo' | 'connection' | 'nowMs' | 'shopClock'> {
  readonly state: State
  /** Null: loads are not advised. */
  readonly plan: Plan | null
  readonly words: BenchWords
  readonly deviceName: string
  readonly pending: number
}

export function dayView(parts: DayParts): DayView {
  const { state, plan, nowMs, words, demo, shopClock } = parts
  const { bench, advice } = words
  const { top } = bench
  const dipByMs = plan?.last?.kettleByMs
  const lastDip = dipByMs === undefined ? null : { atMs: dipByMs, text: advice.lastDipMark }
  const ruler = shopClock === null ? null : rulerOfDay(state, nowMs, shopClock, top.ruler, lastDip)
  const change = changeNow(plan, state, nowMs)
  const lastLoadMs = ruler?.lastLoad?.atMs ?? null
  const lastLoad = lastLoadMs === null || lastLoadMs < nowMs ? [] : [top.lastLoad(epochMs(lastLoadMs))]
  return {
    clock: words.times.clock(nowMs),
    changed: change === null ? [] : [advice.change(change), advice.changeShort(change)],
    toGo: [...lastDips(parts), ...lastLoad, top.loadsToGo(plannedAhead(state).length)],
    ruler,
    link: linkView(parts),
    demo: demo === null ? '' : top.demo,
  }
}

/** In the last hour: the last dip counted down, and what the last loads carry to the close. */
function lastDips({ plan, nowMs, words: { advice } }: DayParts): readonly string[] {
  const atMs = lastDipNear(plan, nowMs)
  if (atMs === null) return []
  const { lines, others } = lastLines(plan)
  return [advice.lastDip(atMs, nowMs), ...(lines.length === 0 ? [] : [advice.carries(lines, others)])]
}

/** "linked · bench tablet", or what is wrong and since when; taps that wait are told once they wait for something. */
export function linkView({
  connection,
  words,
  deviceName,
  pending,
}: Pick<DayParts, 'connection' | 'words' | 'deviceName' | 'pending'>): LinkView {
  const { top } = words.bench
  const name = deviceName === '' ? top.device : deviceName
  if (connection.phase === 'live') {
    return { text: `${top.linked} · ${name}`, short: top.linked, isTrouble: false }
  }
  const waiting = words.live.pending(pending)
  const text = [words.live.connection(connection), waiting].filter((part) => part !== '').join(' · ')
  return { text, short: text, isTrouble: isTrouble(connection) }
}

function isTrouble(connection: Connection): boolean {
  return connection.phase === 'away' || standsStill(connection)
}
