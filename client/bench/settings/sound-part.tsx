import { minuteText } from '../../live/clock-text.ts'
import { Choice } from '../../parts/choice.tsx'
import { Key } from '../../parts/key.tsx'
import type { SettingsPart } from './settings-sheet.tsx'

const VOLUMES = [0, 20, 40, 60, 80, 100] as const
const STEP_MINUTES = 30
const DAY_MINUTES = 1_440
/** Morning and evening must be told apart here, whatever the shop's clock. */
const HOURS = 24
/** From the evening to before the oven is hot. */
const FIRST_OFFER = { fromMinute: 20 * 60, toMinute: 4 * 60 } as const

/** How loud this tablet is, and when it is silent. */
export function SoundPart({ store, live, say, words, onTrySound }: SettingsPart) {
  return (
    <>
      <div class="bench-field">
        <strong>{say.volume}</strong>
        <div class="key-group">
          <Choice
            name={say.volume}
            options={VOLUMES.map((percent) => ({ value: String(percent), label: say.percent(percent) }))}
            chosen={String(live.settings.volumePercent)}
            onChoose={(value) => store.changeSettings({ volumePercent: Number(value) })}
          />
          <Key label={say.tryOut} onPress={onTrySound} />
        </div>
      </div>
      <div class="bench-field">
        <strong>{say.quiet}</strong>
        <QuietHours store={store} live={live} say={say} />
      </div>
      <div class="bench-quiet">{words.cautions.aid}</div>
    </>
  )
}

function QuietHours({ store, live, say }: Pick<SettingsPart, 'store' | 'live' | 'say'>) {
  const { quiet } = live.settings
  const none = (
    <Key label={say.quietOff} chosen={quiet === null} onPress={() => store.changeSettings({ quiet: null })} />
  )
  if (quiet === null) {
    const { fromMinute, toMinute } = FIRST_OFFER
    return (
      <div class="key-group">
        {none}
        <Key
          label={`${minuteText(fromMinute, HOURS)} – ${minuteText(toMinute, HOURS)}`}
          chosen={false}
          onPress={() => store.changeSettings({ quiet: FIRST_OFFER })}
        />
      </div>
    )
  }
  const end = (which: 'fromMinute' | 'toMinute', label: string) => {
    const move = (minutes: number) => {
      const minute = (quiet[which] + minutes + DAY_MINUTES) % DAY_MINUTES
      store.changeSettings({ quiet: { ...quiet, [which]: minute } })
    }
    return (
      <div class="key-group" role="group" aria-label={label}>
        <Key label="−" name={`${label} ${say.earlier}`} onPress={() => move(-STEP_MINUTES)} />
        <output class="stepper-value">
          <span class="bench-label">{minuteText(quiet[which], HOURS)}</span>
          <span class="stepper-detail">{label}</span>
        </output>
        <Key label="+" name={`${label} ${say.later}`} onPress={() => move(STEP_MINUTES)} />
      </div>
    )
  }
  return (
    <div class="key-group">
      {none}
      {end('fromMinute', say.from)}
      {end('toMinute', say.to)}
    </div>
  )
}
