import { dateOf } from '../../../shared-core/dough/dates.ts'
import type { OrderId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { Promised } from '../../../shared-core/orders/promise.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { Choice } from '../../parts/choice.tsx'
import { Key } from '../../parts/key.tsx'
import { FAST_TAP_MS } from '../../parts/press-guard.ts'
import type { CounterOrderWords } from '../../words/counter-orders.ts'
import { capitalised } from '../../words/joined.ts'
import { dueText } from './row-text.ts'
import type { TakeProps } from './take-sheet.tsx'
import { moved, onAnotherDay } from './taking.ts'
import type { When } from './use-promise.ts'

/** When and how it goes: as early as can be promised with one touch, or a time that is asked for, and whether that holds. */
export function WhenStep(props: TakeProps) {
  return (
    <div class="counter-when">
      <PromiseKeys {...props} />
      <TimeKeys {...props} />
      <Verdict {...props} />
      <WayKeys {...props} />
    </div>
  )
}

/** Nobody comes twice for less. Common practice, no source. */
const SPLIT_MS_LEAST = 10 * 60_000

function isWorthIt({ restAtMs }: NonNullable<Promised['split']>, nowMs: EpochMs): boolean {
  return restAtMs - nowMs >= SPLIT_MS_LEAST
}

function PromiseKeys({ live, say, taking, setTaking, when, split }: TakeProps) {
  const { take } = say
  const { promised } = when
  if (promised === null) return null
  const { atMs, nextDayAtMs } = promised
  const due = (dueAtMs: EpochMs) => dueText({ order: { dueAtMs } }, say, live)
  return (
    <div class="counter-keys">
      <Key
        label={take.earliest}
        detail={atMs === null ? undefined : due(atMs)}
        refusal={atMs === null ? take.noEarliest : undefined}
        chosen={taking.dueAtMs === null && atMs !== null}
        onPress={() => setTaking({ ...taking, dueAtMs: null })}
      />
      {promised.split !== null && isWorthIt(promised.split, live.nowMs) && taking.orderId === null && (
        <Key
          label={take.split}
          detail={take.splitDetail(piecesOf(promised.split.nowLines), live.nowMs, promised.split.restAtMs)}
          onPress={split}
        />
      )}
      {nextDayAtMs !== null && (
        <Key
          label={take.nextDay}
          detail={due(nextDayAtMs)}
          chosen={taking.dueAtMs === nextDayAtMs}
          onPress={() => setTaking({ ...taking, dueAtMs: nextDayAtMs })}
        />
      )}
    </div>
  )
}

/** Minutes of the keys before and after the time. */
const EARLIER = [-60, -5] as const
const LATER = [5, 60] as const

function TimeKeys({ live, say, taking, setTaking, when }: TakeProps) {
  const { take } = say
  const { supply } = when
  const { nowMs } = live
  const atMs = when.dueAtMs ?? moved(nowMs, 15, nowMs)
  const set = (dueAtMs: EpochMs) => setTaking({ ...taking, dueAtMs })
  const toDay = (days: number) => {
    if (supply === null) return
    const dates = { noonOf: supply.noonOf, dateOf: (ms: EpochMs) => dateOf(supply.noonOf, supply.date, ms) }
    const to = onAnotherDay(atMs, days, dates)
    set(to < nowMs ? moved(nowMs, 0, nowMs) : to)
  }
  const step = (minutes: number) => (
    <Key
      key={minutes}
      label={take.step(minutes)}
      sameTouchMs={FAST_TAP_MS}
      onPress={() => set(moved(atMs, minutes, nowMs))}
    />
  )
  return (
    <div class="counter-time">
      <Key label={take.dayBack} sameTouchMs={FAST_TAP_MS} onPress={() => toDay(-1)} />
      {EARLIER.map(step)}
      <output class="counter-time-now">
        {when.dueAtMs === null ? '–' : dueText({ order: { dueAtMs: atMs } }, say, live)}
      </output>
      {LATER.map(step)}
      <Key label={take.dayOn} sameTouchMs={FAST_TAP_MS} onPress={() => toDay(1)} />
    </div>
  )
}

/** Whether the time can be promised, and what decides. */
function Verdict({ live, state, say, when }: TakeProps) {
  const { promised, dueAtMs, isRisk } = when
  const { take, promise } = say
  const markOf = (id: OrderId) => state.orders.get(id)?.mark ?? ''
  if (dueAtMs === null) {
    if (promised === null) return null
    const texts = [promise.notToday, promise.why(promised.why, markOf), promise.noNextDay]
    return <p class="counter-verdict counter-verdict-not">{texts.join(' ')}</p>
  }
  const text = dueText({ order: { dueAtMs } }, say, live)
  return (
    <p class={isRisk ? 'counter-verdict counter-verdict-not' : 'counter-verdict'} role="status">
      {[isRisk ? take.holdsNot(text) : take.holds(text), ...reasons(when, say, markOf)].join(' ')}
    </p>
  )
}

/** What decides the earliest time, where that is later than asked for or not today. */
function reasons({ promised, dueAtMs, isRisk }: When, { promise }: CounterOrderWords, markOf: (id: OrderId) => string) {
  if (promised === null) return []
  const why = promise.why(promised.why, markOf)
  if (promised.atMs === null) return [promise.notToday, why]
  return isRisk ? [promise.from(promised.atMs), why] : promised.atMs === dueAtMs ? [why] : []
}

const WAYS = ['pickUp', 'here', 'delivery'] as const
const STOPS_MOST = 99

function WayKeys({ say, shop, taking, setTaking }: TakeProps) {
  const { said, take, names } = say
  const runs = inUse(shop.runs)
  const { way, runId, stop } = taking
  return (
    <div class="counter-ways">
      <Choice
        name={take.steps.when}
        options={WAYS.map((value) => ({ value, label: capitalised(said.way[value]) }))}
        chosen={way}
        onChoose={(value) => setTaking({ ...taking, way: value })}
      />
      {way === 'delivery' && runs.length > 0 && (
        <div class="key-group">
          {runs.map(({ id }) => (
            <Key
              key={id}
              label={names.run(id)}
              chosen={id === runId}
              onPress={() =>
                setTaking({ ...taking, runId: id === runId ? null : id, stop: id === runId ? 0 : Math.max(1, stop) })
              }
            />
          ))}
          {runId !== null && (
            <Key
              label={take.stop(stop)}
              sameTouchMs={FAST_TAP_MS}
              onPress={() => setTaking({ ...taking, stop: (stop % STOPS_MOST) + 1 })}
            />
          )}
        </div>
      )}
    </div>
  )
}
