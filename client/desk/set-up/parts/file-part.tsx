import { useState } from 'preact/hooks'
import type { Problem } from '../../../../shared-core/shop/problem.ts'
import { isValidJson } from '../../loads-panel.tsx'
import { OutcomeText } from '../../outcome.tsx'
import { previewFile } from '../preview.ts'
import { hashOf } from '../route.ts'
import type { SetUpProps } from '../set-up-parts.ts'

type Read = 'same' | 'read' | 'away' | { readonly problems: readonly Problem[] }
const ADDRESS = '/api/v1/set-up'

/** The set-up as one file. What is read in becomes the draft: it is seen, and saved like anything else. */
export function FilePart({ store, words, say, change, clear }: SetUpProps) {
  const { mistakes } = words.desk
  const [read, setRead] = useState<Read | null>(null)
  const take = async (body: string) => {
    if (!isValidJson(body)) {
      setRead({ problems: [{ path: '', wrong: mistakes.notJson, right: mistakes.notJsonRight }] })
      return
    }
    const preview = await previewFile(body, store.deviceId)
    if (preview.kind === 'mistakes') setRead({ problems: preview.problems })
    else if (preview.kind === 'no-contact') setRead('away')
    else {
      clear()
      change(preview.changes)
      setRead(preview.changes.length === 0 ? 'same' : 'read')
    }
  }
  return (
    <>
      <p class="setup-hint">{say.file.hint}</p>
      <div class="setup-acts">
        <a class="desk-button" href={ADDRESS} download={say.file.fileName}>
          {say.file.download}
        </a>
        <label class="desk-button">
          {say.file.upload}
          <input
            type="file"
            accept=".json,application/json"
            onChange={(event) => {
              const input = event.currentTarget
              const [file] = input.files ?? []
              if (file === undefined) return
              void file
                .text()
                .then(take)
                .then(() => {
                  input.value = ''
                })
            }}
          />
        </label>
        <a href={`${ADDRESS}.schema.json`}>{say.file.schema}</a>
      </div>
      <ReadText read={read} words={words} say={say} />
    </>
  )
}

function ReadText({ read, words, say }: Pick<SetUpProps, 'words' | 'say'> & { readonly read: Read | null }) {
  if (read === null) return null
  if (read === 'same') return <p role="status">{say.file.same}</p>
  if (read === 'away') {
    return (
      <p class="desk-trouble" role="alert">
        {words.desk.mistakes.noContact}
      </p>
    )
  }
  if (read === 'read') {
    return (
      <p class="setup-done" role="status">
        {say.file.read} <a href={hashOf({ kind: 'part', part: 'save' })}>{say.save.look}</a>
      </p>
    )
  }
  return (
    <OutcomeText
      outcome={{ kind: 'mistakes', problems: read.problems }}
      words={words}
      taken=""
      place={(path) => (path === '' ? words.desk.mistakes.wholeFile : path)}
      onConfirm={() => undefined}
      onPutAway={() => undefined}
    />
  )
}
