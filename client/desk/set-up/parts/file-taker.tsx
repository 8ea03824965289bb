import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import type { Problem } from '../../../../shared-core/shop/problem.ts'
import { isValidJson } from '../../loads-panel.tsx'
import { OutcomeText } from '../../outcome.tsx'
import { previewFile } from '../preview.ts'
import { hashOf } from '../route.ts'
import type { SetUpProps } from '../set-up-parts.ts'

type Read = 'same' | 'read' | 'away' | { readonly problems: readonly Problem[] }

export interface FileTakerProps extends SetUpProps {
  /** The server reads the file there; nothing is taken. */
  readonly address: string
  readonly sentences: { readonly upload: string; readonly same: string; readonly read: string }
  /** The file is the whole draft: what was edited before goes. */
  readonly isWhole?: boolean
  /** Keys beside the one that opens a file. */
  readonly before?: ComponentChildren
  readonly after?: ComponentChildren
}

/** A file becomes changes of the draft: they are seen, and saved like anything else. */
export function FileTaker(props: FileTakerProps) {
  const { store, words, change, clear, address, sentences, isWhole = false, before, after } = props
  const { mistakes } = words.desk
  const [read, setRead] = useState<Read | null>(null)
  const take = async (body: string) => {
    if (!isValidJson(body)) {
      setRead({ problems: [{ path: '', wrong: mistakes.notJson, right: mistakes.notJsonRight }] })
      return
    }
    const preview = await previewFile(address, body, store.deviceId)
    if (preview.kind === 'mistakes') setRead({ problems: preview.problems })
    else if (preview.kind === 'no-contact') setRead('away')
    else {
      if (isWhole) clear()
      change(preview.changes)
      setRead(preview.changes.length === 0 ? 'same' : 'read')
    }
  }
  return (
    <>
      <div class="setup-acts">
        {before}
        <label class="desk-button">
          {sentences.upload}
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
        {after}
      </div>
      <ReadText {...props} read={read} />
    </>
  )
}

function ReadText({ read, words, say, sentences }: FileTakerProps & { readonly read: Read | null }) {
  if (read === null) return null
  if (read === 'same') return <p role="status">{sentences.same}</p>
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
        {sentences.read} <a href={hashOf({ kind: 'part', part: 'save' })}>{say.save.look}</a>
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
