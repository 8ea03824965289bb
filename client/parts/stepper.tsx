import { Key } from './key.tsx'
import { FAST_TAP_MS } from './press-guard.ts'
import { stepDown, stepUp } from './steps.ts'

export interface StepperProps {
  /** What is counted, for those who listen, e.g. "Sesame". */
  readonly name: string
  readonly value: number
  readonly min: number
  readonly max: number
  /** One pair of keys each, smallest first: [6] by boards; [1, 6] by pieces and by boards. */
  readonly steps: readonly number[]
  /** The value in words under the number, e.g. "2 boards". */
  readonly detail?: string | undefined
  /** The words for a key, e.g. (6) => "6 fewer". */
  readonly lessName: (step: number) => string
  readonly moreName: (step: number) => string
  /** The words on a key that cannot go on, short: "least", "most". */
  readonly limitWords: { readonly least: string; readonly most: string }
  readonly onChange: (value: number) => void
}

/** Counts up and down with large keys: `− n +`. Steps land on multiples, so that a board is full after one touch. */
export function Stepper({
  name,
  value,
  min,
  max,
  steps,
  detail,
  lessName,
  moreName,
  limitWords,
  onChange,
}: StepperProps) {
  const keyOf = (step: number, towards: 'less' | 'more') => {
    const range = { step, min, max }
    const to = towards === 'less' ? stepDown(value, range) : stepUp(value, range)
    const sign = towards === 'less' ? '−' : '+'
    return (
      <Key
        key={`${sign}${step}`}
        label={steps.length > 1 ? `${sign}${step}` : sign}
        name={towards === 'less' ? lessName(step) : moreName(step)}
        refusal={to !== value ? undefined : towards === 'less' ? limitWords.least : limitWords.most}
        sameTouchMs={FAST_TAP_MS}
        onPress={() => onChange(to)}
      />
    )
  }
  return (
    <div class="key-group stepper" role="group" aria-label={name}>
      {[...steps].reverse().map((step) => keyOf(step, 'less'))}
      <output class="stepper-value">
        <span class="stepper-number">{value}</span>
        {detail !== undefined && <span class="stepper-detail">{detail}</span>}
      </output>
      {steps.map((step) => keyOf(step, 'more'))}
    </div>
  )
}
