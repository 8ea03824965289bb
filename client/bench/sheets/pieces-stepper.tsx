import { Stepper } from '../../parts/stepper.tsx'
import type { BenchWords } from '../../words/bench.ts'

export interface PiecesStepperProps {
  readonly words: BenchWords
  readonly value: number
  readonly min: number
  readonly max: number
  /** Smallest first; narrow glass has room for the first alone. */
  readonly steps: readonly number[]
  readonly isNarrow?: boolean | undefined
  /** What is counted; pieces when left out. */
  readonly name?: string | undefined
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
  name,
  detail,
  onChange,
}: PiecesStepperProps) {
  const { sheet, pieces } = words.bench
  const counted = name ?? pieces.numberName
  return (
    <Stepper
      name={counted}
      value={value}
      min={min}
      max={max}
      steps={isNarrow ? steps.slice(0, 1) : steps}
      detail={detail ?? counted}
      lessName={(step) => sheet.less(counted, step)}
      moreName={(step) => sheet.plus(counted, step)}
      limitWords={{ least: sheet.least, most: sheet.most }}
      onChange={onChange}
    />
  )
}
