import { Choice } from '../../parts/choice.tsx'
import { Key } from '../../parts/key.tsx'
import { FAST_TAP_MS } from '../../parts/press-guard.ts'
import type { SettingsPart } from './settings-sheet.tsx'

const INCHES = { min: 6, max: 30 } as const
const INCH_STEPS = [-1, -0.1, 0.1, 1] as const
const METRES = [0.4, 0.5, 0.6, 0.8, 1] as const

/** How large the glass is and from how far it is read: the 20 mm of a key and the size of text follow from these. */
export function SizePart({ store, live, say }: SettingsPart) {
  const { diagonalInches, viewingMetres } = live.settings
  const step = (by: number) => {
    const inches = Math.round((diagonalInches + by) * 10) / 10
    store.changeSettings({ diagonalInches: Math.min(INCHES.max, Math.max(INCHES.min, inches)) })
  }
  const key = (by: number) => (
    <Key
      key={by}
      label={`${by < 0 ? '−' : '+'}${Math.abs(by)}`}
      name={`${Math.abs(by)} ${by < 0 ? say.less : say.more}`}
      sameTouchMs={FAST_TAP_MS}
      onPress={() => step(by)}
    />
  )
  return (
    <>
      <div class="bench-field">
        <strong>{say.diagonal}</strong>
        <div class="key-group">
          {INCH_STEPS.filter((by) => by < 0).map(key)}
          <output class="stepper-value">
            <span class="bench-label">{say.inches(diagonalInches)}</span>
          </output>
          {INCH_STEPS.filter((by) => by > 0).map(key)}
        </div>
      </div>
      <div class="bench-field">
        <strong>{say.distance}</strong>
        <Choice
          name={say.distance}
          options={METRES.map((metres) => ({ value: String(metres), label: say.metres(metres) }))}
          chosen={String(viewingMetres)}
          onChoose={(value) => store.changeSettings({ viewingMetres: Number(value) })}
        />
      </div>
    </>
  )
}
