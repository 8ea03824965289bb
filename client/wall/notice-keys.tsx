import { Key } from '../parts/key.tsx'
import type { SheetPartProps } from './settings-sheet.tsx'
import { Field } from './settings-sheet.tsx'

/** Questions and news about what was done from this screen, with their answers. */
export function NoticeKeys({ store, live, words, settingsWords: say }: SheetPartProps) {
  if (live.notices.length === 0) return null
  return (
    <Field title={say.waiting}>
      {live.notices.map((notice) => {
        const { title, text } = words.live.notice(notice)
        const [ask] = notice.kind === 'ask' ? notice.asks : []
        const question = ask === undefined ? null : words.answers.ask(ask)
        return (
          <div key={notice.id} class="wall-pedal">
            <div class="wall-pedal-name">
              <strong>{title}</strong>
              <span>{text}</span>
            </div>
            <div class="key-group">
              {question !== null && <Key label={question.yes} tone="strong" onPress={() => store.confirm(notice.id)} />}
              <Key label={question?.no ?? say.close} onPress={() => store.dismiss(notice.id)} />
            </div>
          </div>
        )
      })}
    </Field>
  )
}
