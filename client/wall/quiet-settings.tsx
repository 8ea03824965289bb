import { minuteText } from '../live/clock-text.ts'
import { Key } from '../parts/key.tsx'
import type { SheetPartProps } from './settings-sheet.tsx'
import { Field } from './settings-sheet.tsx'

const STEP_MINUTES = 30
const DAY_MINUTES = 1_440
/** Morning and evening must be told apart here, whatever the shop's clock. */
const HOURS = 24
/** What is offered first: from the evening to before the oven is hot. */
const FIRST_OFFER = { fromMinute: 20 * 60, toMinute: 4 * 60 }

/** The hours in which this screen makes no sound; they may run over midnight. */
export function QuietSettings({ store, live, settingsWords: say }: SheetPartProps) {
  const { quiet } = live.settings
  if (quiet === null) {
    return (
      <Field title={say.quiet} hint={say.quietHint}>
        <div class="key-group">
          <Key label={say.quietOff} chosen={true} onPress={() => undefined} />
          <Key
            label={`${minuteText(FIRST_OFFER.fromMinute, HOURS)} – ${minuteText(FIRST_OFFER.toMinute, HOURS)}`}
            chosen={false}
            onPress={() => store.changeSettings({ quiet: FIRST_OFFER })}
          />
        </div>
      </Field>
    )
  }
  const end = (which: 'fromMinute' | 'toMinute', label: string) => {
    const move = (minutes: number) =>
      store.changeSettings({ quiet: { ...quiet, [which]: (quiet[which] + minutes + DAY_MINUTES) % DAY_MINUTES } })
    return (
      <div class="key-group wall-time-end">
        <span>{label}</span>
        <Key label={say.earlier} name={`${label} ${say.earlier}`} onPress={() => move(-STEP_MINUTES)} />
        <output>{minuteText(quiet[which], HOURS)}</output>
        <Key label={say.later} name={`${label} ${say.later}`} onPress={() => move(STEP_MINUTES)} />
      </div>
    )
  }
  return (
    <Field title={say.quiet} hint={say.quietHint}>
      <div class="key-group">
        <Key label={say.quietOff} chosen={false} onPress={() => store.changeSettings({ quiet: null })} />
        {end('fromMinute', say.from)}
        {end('toMinute', say.to)}
      </div>
    </Field>
  )
}
