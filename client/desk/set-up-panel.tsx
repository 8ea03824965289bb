import type { LiveState, ShopStore } from '../live/shop-store.ts'
import type { DeskWords } from '../words/desk.ts'
import { isValidJson } from './loads-panel.tsx'
import { OutcomeText } from './outcome.tsx'
import { usePosting } from './use-posting.ts'

export interface SetUpProps {
  readonly store: ShopStore
  readonly live: LiveState
  readonly words: DeskWords
}

const ADDRESS = '/api/v1/set-up'

/** The shop's set-up as a file: out and in, each mistake with its place. */
export function SetUpPanel({ store, live, words }: SetUpProps) {
  const { setUp, mistakes } = words.desk
  const posting = usePosting(store, live)
  const takeFile = async (file: File | undefined) => {
    if (file === undefined) return
    const body = await file.text()
    if (isValidJson(body)) await posting.send({ address: ADDRESS, body, type: 'application/json' })
    else {
      const problem = { path: '', wrong: mistakes.notJson, right: mistakes.notJsonRight }
      posting.show({ kind: 'mistakes', problems: [problem] })
    }
  }
  return (
    <>
      <p class="desk-quiet">{setUp.hint}</p>
      <div class="desk-line">
        {live.shown?.shop != null && (
          <a class="desk-button" href={ADDRESS} download={setUp.fileName}>
            {setUp.download}
          </a>
        )}
        <label class="desk-button">
          {setUp.upload}
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const input = event.currentTarget
              void takeFile(input.files?.[0]).then(() => {
                input.value = ''
              })
            }}
          />
        </label>
        <a href={`${ADDRESS}.schema.json`}>{setUp.schema}</a>
      </div>
      {posting.outcome !== null && (
        <OutcomeText
          outcome={posting.outcome}
          words={words}
          taken={setUp.taken}
          place={(path) => (path === '' ? mistakes.wholeFile : path)}
          onConfirm={(codes) => void posting.confirm(codes)}
          onPutAway={posting.putAway}
        />
      )}
    </>
  )
}
