import { isValidJson } from './loads-panel.tsx'
import { OutcomeText } from './outcome.tsx'
import type { SetUpPanelProps } from './set-up-panel.tsx'
import { usePosting } from './use-posting.ts'

const ADDRESS = '/api/v1/set-up'

/** A set-up file that makes the shop; each mistake is told with its place. */
export function SetUpUpload({ store, live, words }: SetUpPanelProps) {
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
      <div class="desk-line">
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
