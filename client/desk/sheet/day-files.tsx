import type { DaySheetWords } from '../../words/desk-day-sheet.ts'

interface DayFilesProps {
  /** A date, or "today". */
  readonly label: string
  /** Which of two days of one date; null: the newer. */
  readonly openedAtMs: number | null
  readonly say: DaySheetWords
}

/** The day on paper and as files. */
export function DayFiles({ label, openedAtMs, say }: DayFilesProps) {
  const query = openedAtMs === null ? '' : `?opened=${openedAtMs}`
  const address = (file: string) => `/api/v1/days/${label}/${file}${query}`
  return (
    <div class="desk-line">
      <button type="button" title={say.printHint} onClick={() => window.print()}>
        {say.print}
      </button>
      <a class="desk-button" href={address('account.csv')} download>
        {say.csv}
      </a>
      <a class="desk-button" href={address('entries.jsonl')} download>
        {say.jsonLines}
      </a>
    </div>
  )
}
