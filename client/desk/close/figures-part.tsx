import type { DeskWords } from '../../words/desk.ts'
import type { DaySheetWords } from '../../words/desk-day-sheet.ts'
import { FiguresList } from '../sheet/figures-list.tsx'
import { figureTexts } from '../sheet/figures-view.ts'
import type { GotFigures } from './close-place.tsx'

interface FiguresPartProps {
  readonly got: GotFigures
  readonly words: DeskWords
  readonly sheet: DaySheetWords
}

/** The five figures, or why they are not there. */
export function FiguresPart({ got, words, sheet }: FiguresPartProps) {
  if (got.kind === 'got' && got.value.figures !== null)
    return <FiguresList figures={figureTexts(got.value.figures, sheet, words.names)} />
  const text = got.kind === 'no-contact' ? sheet.figures.noContact : sheet.figures.waiting
  return <p class="desk-quiet">{text}</p>
}
