import { Drawing } from '../../parts/drawing.tsx'
import type { GuideStep, SetUpSentences } from '../../words/set-up.ts'
import { GUIDE_STEPS, hashOf } from './route.ts'

/** The steps as rings on a rod: what has been passed is baked, what is to come is an outline. Any of them can be opened. */
export function GuideRod({ step, say }: { readonly step: GuideStep; readonly say: SetUpSentences }) {
  const at = GUIDE_STEPS.indexOf(step)
  return (
    <nav class="setup-rod" aria-label={say.guide.title}>
      <ol>
        {GUIDE_STEPS.map((one, index) => (
          <li key={one} class={index < at ? 'setup-passed' : undefined}>
            <a
              href={hashOf({ kind: 'guide', step: one })}
              aria-label={say.guide.steps[one]}
              aria-current={one === step ? 'step' : undefined}
            >
              <Drawing class="setup-rod-ring" viewBox="0 0 28 28" width="28px" height="28px">
                <circle cx="14" cy="14" r="9" stroke-width="7" fill="none" />
              </Drawing>
              <span>{say.guide.steps[one]}</span>
            </a>
          </li>
        ))}
      </ol>
    </nav>
  )
}
