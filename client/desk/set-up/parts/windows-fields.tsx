import { DEFAULT_WINDOWS } from '../../../../shared-core/shop/default-windows.ts'
import type { DwellWindow, WindowStage, Windows } from '../../../../shared-core/shop/shop.ts'
import { WINDOW_STAGES } from '../../../../shared-core/shop/stages.ts'
import { DwellFields } from '../fields/dwell-fields.tsx'
import { dwellSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'

export interface WindowsFieldsProps {
  readonly parts: SetUpProps
  readonly windows: Windows
  /** What holds where nothing is said here; null for the shop's own windows, which say most things themselves. */
  readonly otherwise: Windows | null
  readonly onChange: (windows: Windows) => void
}

/** The two times that the shop must have: every load counts down to them. */
const NEEDED: readonly WindowStage[] = ['firstSide', 'bake']

/** One line for each stage: its own three times, or that it is as the wider one says. */
export function WindowsFields({ parts, windows, otherwise, onChange }: WindowsFieldsProps) {
  const { say, words, draft } = parts
  const telling = { words, say, shop: draft }
  const put = (stage: WindowStage, window: DwellWindow | undefined) => {
    const { [stage]: _, ...rest } = windows
    onChange(window === undefined ? rest : { ...rest, [stage]: window })
  }
  return (
    <ul class="setup-windows">
      {WINDOW_STAGES.map((stage) => {
        const own = windows[stage]
        const wider = otherwise?.[stage] ?? null
        const label = say.options.window[stage]
        return (
          <li key={stage} class="setup-window" data-stage={stage}>
            <span class="setup-window-name">{label}</span>
            {own === undefined ? (
              <>
                <span class="setup-hint">
                  {wider === null ? say.form.notSaid : say.form.asOther(dwellSaid(wider, telling))}
                </span>
                <button
                  type="button"
                  aria-label={`${label}: ${say.form.own}`}
                  onClick={() => put(stage, wider ?? DEFAULT_WINDOWS[stage])}
                >
                  {say.form.own}
                </button>
              </>
            ) : (
              <>
                <DwellFields
                  label={label}
                  window={own}
                  words={words}
                  say={say}
                  onChange={(window) => put(stage, window)}
                />
                {(otherwise !== null || !NEEDED.includes(stage)) && (
                  <button
                    type="button"
                    aria-label={`${label}: ${otherwise === null ? say.form.leaveUnsaid : say.form.asShop}`}
                    onClick={() => put(stage, undefined)}
                  >
                    {otherwise === null ? say.form.leaveUnsaid : say.form.asShop}
                  </button>
                )}
              </>
            )}
          </li>
        )
      })}
    </ul>
  )
}
