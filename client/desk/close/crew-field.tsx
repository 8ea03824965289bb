import type { CloseWords } from '../../words/desk-close.ts'
import { readCrew } from './crew-view.ts'

interface CrewFieldProps {
  readonly text: string
  readonly onText: (text: string) => void
  readonly say: CloseWords
}

export function CrewField({ text, onText, say }: CrewFieldProps) {
  return (
    <>
      <label class="desk-field">
        <span>{say.crew.field}</span>
        <input
          class="desk-short"
          inputMode="decimal"
          value={text}
          aria-describedby="desk-crew-hint"
          onInput={(event) => onText(event.currentTarget.value)}
        />
      </label>
      <p id="desk-crew-hint" class={readCrew(text).kind === 'wrong' ? 'desk-trouble' : 'desk-quiet'}>
        {readCrew(text).kind === 'wrong' ? say.crew.wrong : say.crew.hint}
      </p>
    </>
  )
}
