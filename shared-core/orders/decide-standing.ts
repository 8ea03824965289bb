import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import { standingId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { askedRefusal, orderLines } from './asked-order.ts'
import type { StandingOrder } from './order.ts'
import type { OrderCommand } from './order-commands.ts'

type Of<Type extends OrderCommand['type']> = Case<Extract<OrderCommand, { type: Type }>>

const STANDING_MAX = 500

/** A new standing order, or one said anew. Orders that were made of it already stay as they are. */
export function decideSetStanding(oneCase: Of<'setStanding'>): Decision {
  const { command, state, shop } = oneCase
  const before = command.standingId === null ? null : state.standing.get(command.standingId)
  if (before === undefined) return refuse('unknown-standing')
  if (before === null && state.standing.size >= STANDING_MAX) return refuse('too-many', { most: STANDING_MAX })
  if (command.runId !== null && !shop.runs.has(command.runId)) return refuse('unknown-run', { runId: command.runId })
  const refusal = askedRefusal(shop, { lines: command.lines, items: [] })
  if (refusal !== null) return refusal
  const { mark, way, runId, stop, dueMinute, isPaid, recurrence, onHolidays } = command
  const onRun = way === 'delivery' && runId !== null
  const atMs = happenedAt(oneCase)
  const standing: StandingOrder = {
    id: before?.id ?? standingId(oneCase.newId()),
    mark,
    way,
    runId: onRun ? runId : null,
    stop: onRun ? stop : 0,
    dueMinute,
    lines: orderLines(oneCase, command.lines),
    isPaid,
    details: (before?.details ?? 0) + (command.details === undefined ? 0 : 1),
    recurrence,
    onHolidays,
    takenUp: takenUpBy(oneCase, { dueMinute, atMs, before: before?.takenUp ?? null }),
  }
  happen(oneCase, atMs, { type: 'standingSet', standing })
  return take(oneCase, { mark })
}

interface TakenUp {
  readonly dueMinute: number
  readonly atMs: EpochMs
  readonly before: string | null
}

/** What is said in the afternoon of every morning begins tomorrow: nobody waits for it since this morning. */
function takenUpBy({ state, context }: Case, { dueMinute, atMs, before }: TakenUp): string | null {
  const date = state.day?.label ?? context.localDate
  const noonMs = state.day?.noonMs ?? context.noonOf?.(date) ?? null
  const isOver = noonMs !== null && noonMs + (dueMinute - NOON_MINUTE) * MINUTE_MS < atMs
  return isOver && (before === null || before < date) ? date : before
}
const NOON_MINUTE = 720
const MINUTE_MS = 60_000

export function decideEndStanding(oneCase: Of<'endStanding'>): Decision {
  const standing = oneCase.state.standing.get(oneCase.command.standingId)
  if (standing === undefined) return refuse('unknown-standing')
  happen(oneCase, happenedAt(oneCase), { type: 'standingEnded', standingId: standing.id })
  return take(oneCase, { mark: standing.mark })
}
