import { useState } from 'preact/hooks'
import type { DoughId, PersonId } from '../../../shared-core/ids.ts'
import type { DurationMs } from '../../../shared-core/units.ts'
import { spanMs } from '../../../shared-core/units.ts'
import type { ShopStore } from '../../live/shop-store.ts'
import type { DeskWords } from '../../words/desk.ts'

interface FloatKeysProps {
  readonly store: ShopStore
  readonly words: DeskWords
  readonly doughId: DoughId
  readonly name: string
  readonly personId: PersonId | null
}

/** Minutes after which one looks again. Common practice, no source. */
const LOOK_AGAIN = [5, 10, 15, 20, 30] as const
const USUAL = 10

/** What a float test found: it floats, or look again in so many minutes. */
export function FloatKeys({ store, words, doughId, name, personId }: FloatKeysProps) {
  const { steps } = words.desk.today
  const [minutes, setMinutes] = useState<number>(USUAL)
  const found = (passed: boolean, lookAgainMs: DurationMs | null) =>
    store.send({ type: 'testFloat', doughId, passed, lookAgainMs, personId })
  return (
    <>
      <button type="button" aria-label={`${steps.passed}: ${name}`} onClick={() => found(true, null)}>
        {steps.passed}
      </button>
      <button
        type="button"
        aria-label={`${steps.notReady}: ${name}`}
        onClick={() => found(false, spanMs(minutes, 'min'))}
      >
        {steps.notReady}
      </button>
      <select
        aria-label={`${steps.lookAgain}: ${name}`}
        value={minutes}
        onChange={(event) => setMinutes(Number(event.currentTarget.value))}
      >
        {LOOK_AGAIN.map((one) => (
          <option key={one} value={one}>
            {steps.lookAgainIn(one)}
          </option>
        ))}
      </select>
    </>
  )
}
