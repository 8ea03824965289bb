import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'

interface DropAreaProps {
  readonly words: { readonly choose: string; readonly orDrop: string; readonly dropNow: string }
  readonly hint: string
  /** In place of what asks for a file, while one is on its way; null: none is. */
  readonly sending?: ComponentChildren
  readonly onFile: (file: File) => void
  /** Below all else. */
  readonly children?: ComponentChildren
}

/** Where a table's file is chosen or dropped. */
export function DropArea({ words, hint, sending = null, onFile, children }: DropAreaProps) {
  const [isOver, setOver] = useState(false)
  const take = (file: File | undefined) => {
    if (file !== undefined) onFile(file)
  }
  return (
    <section
      class={isOver ? 'sales-drop sales-drop-over' : 'sales-drop'}
      aria-label={words.choose}
      onDragOver={(event) => {
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault()
        setOver(false)
        take(event.dataTransfer?.files[0])
      }}
    >
      {sending ?? (
        <div class="desk-line">
          <label class="desk-button sales-choose">
            {words.choose}
            <input
              type="file"
              accept=".csv,.txt,.tsv,text/csv,text/plain"
              onChange={(event) => {
                const input = event.currentTarget
                const file = input.files?.[0]
                // The same file can be chosen again.
                input.value = ''
                take(file)
              }}
            />
          </label>
          <span>{isOver ? words.dropNow : words.orDrop}</span>
        </div>
      )}
      <p class="desk-quiet">{hint}</p>
      {children}
    </section>
  )
}
