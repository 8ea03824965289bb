import { Stepper } from '../../parts/stepper.tsx'
import type { BenchWords, CountedWords } from '../../words/bench.ts'

export interface PiecesStepperProps {
  readonly words: BenchWords
  readonly value: number
  readonly min: number
  readonly max: number
  /** Smallest first; narrow glass has room for the first alone. */
  readonly steps: readonly number[]
  readonly isNarrow?: boolean | undefined
  /** What is counted; pieces when left out. */
  readonly counted?: CountedWords | undefined
  readonly detail?: string | undefined
  readonly onChange: (value: number) => void
}

/** Counts pieces, trays or hours, in steps of one and of a board or tray. */
export function PiecesStepper({
  words,
  value,
  min,
  max,
  steps,
  isNarrow = false,
  counted,
  detail,
  onChange,
}: PiecesStepperProps) {
  const { sheet, pieces } = words.bench
  const { one, many } = counted ?? pieces.number
  const nameOf = (step: number) => (step === 1 ? one : many)
  return (
    <Stepper
      name={many}
      value={value}
      min={min}
      max={max}
      steps={isNarrow ? steps.slice(0, 1) : steps}
      detail={detail ?? many}
      lessName={(step) => sheet.less(nameOf(step), step)}
      moreName={(step) => sheet.plus(nameOf(step), step)}
      limitWords={{ least: sheet.least, most: sheet.most }}
      onChange={onChange}
    />
  )
}
