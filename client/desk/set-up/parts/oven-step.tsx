import { inUse } from '../../../../shared-core/shop/in-order.ts'
import type { OvenStep } from '../../../../shared-core/shop/kitchen.ts'
import { SLOTS_MAX, TAKES_MS_MAX, TAKES_MS_MIN, TURNS_MAX } from '../../../../shared-core/shop/set-up-limits.ts'
import type { DurationMs } from '../../../../shared-core/units.ts'
import { durationMs } from '../../../../shared-core/units.ts'
import { NumberField } from '../fields/number-field.tsx'
import { PickField } from '../fields/pick-field.tsx'
import { SpanField } from '../fields/span-field.tsx'
import { TemperatureField } from '../fields/temperature-field.tsx'
import type { SetUpProps } from '../set-up-parts.ts'

export interface OvenStepFieldsProps extends SetUpProps {
  readonly takesMs: DurationMs
  readonly oven: OvenStep
  readonly put: (oven: OvenStep) => void
}

type Turn = OvenStep['turns'][number]

/** What the oven does to an item: how many places, how hot, and what is done meanwhile. */
export function OvenStepFields(props: OvenStepFieldsProps) {
  const { draft, say, oven, put, takesMs } = props
  const words = say.kitchen.item
  const { temperature: unit } = draft.profile
  const places = inUse(draft.shelves).reduce((sum, { slots }) => sum + slots, 0)
  const begin = draft.oven.secondAt ?? { degrees: unit === 'F' ? 550 : 290, unit }
  return (
    <>
      <NumberField
        label={words.slots}
        value={oven.slots}
        min={1}
        max={SLOTS_MAX}
        step={1}
        say={say}
        onChange={(slots) => put({ ...oven, slots })}
      />
      {places === 0 && <p class="setup-rule">{words.noSlots}</p>}
      <TemperatureField
        label={words.bakesAt}
        value={oven.at}
        begin={begin}
        unit={unit}
        say={say}
        onChange={(at) => put({ ...oven, at })}
      />
      <p class="setup-hint">{words.bakesAtHint}</p>
      {oven.turns.map((turn, at) => (
        // Turns have no name of their own: their place in the list is what they are.
        <TurnFields
          key={at}
          {...props}
          turn={turn}
          no={at + 1}
          setTurn={(next) => put({ ...oven, turns: withTurn(oven.turns, at, next) })}
        />
      ))}
      {oven.turns.length < TURNS_MAX && (
        <div class="setup-acts">
          <button type="button" onClick={() => put({ ...oven, turns: [...oven.turns, nextTurn(oven.turns, takesMs)] })}>
            + {words.addTurn}
          </button>
        </div>
      )}
    </>
  )
}

interface TurnFieldsProps extends OvenStepFieldsProps {
  readonly turn: Turn
  readonly no: number
  /** Null: it goes. */
  readonly setTurn: (turn: Turn | null) => void
}

function TurnFields({ say, words: deskWords, turn, no, setTurn }: TurnFieldsProps) {
  const words = say.kitchen.item
  return (
    <div class="setup-columns setup-hour">
      <PickField
        label={words.done(no)}
        options={(['turn', 'move'] as const).map((value) => ({ value, label: words.what[value] }))}
        value={turn.what}
        onChange={(what) => setTurn({ ...turn, what })}
      />
      <SpanField
        label={words.after(no)}
        ms={turn.afterMs}
        minMs={TAKES_MS_MIN}
        maxMs={TAKES_MS_MAX}
        words={deskWords}
        say={say}
        onChange={(afterMs) => setTurn({ ...turn, afterMs })}
      />
      <button type="button" aria-label={words.remove(words.turn(no))} onClick={() => setTurn(null)}>
        ×
      </button>
    </div>
  )
}

function withTurn(turns: readonly Turn[], at: number, turn: Turn | null): readonly Turn[] {
  return turns.flatMap((one, index) => (index !== at ? [one] : turn === null ? [] : [turn]))
}

/** Half-way between the last turn and the out, in whole seconds. */
export function nextTurn(turns: readonly Turn[], takesMs: DurationMs): Turn {
  const last = turns[turns.length - 1]?.afterMs ?? 0
  return { afterMs: durationMs(Math.round((last + takesMs) / 2_000) * 1_000), what: 'turn' }
}
