import { useState } from 'preact/hooks'
import type { OrdersParts } from './parts.ts'

/** A file of orders is chosen or dropped. */
export function PickFile({ say, onFile }: OrdersParts & { readonly onFile: (file: File) => void }) {
  const [isOver, setOver] = useState(false)
  const take = (file: File | undefined) => {
    if (file !== undefined) onFile(file)
  }
  return (
    <section
      class={isOver ? 'sales-drop sales-drop-over' : 'sales-drop'}
      aria-label={say.files.choose}
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
      <div class="desk-line">
        <label class="desk-button sales-choose">
          {say.files.choose}
          <input
            type="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            onChange={(event) => {
              const input = event.currentTarget
              const file = input.files?.[0]
              input.value = ''
              take(file)
            }}
          />
        </label>
        <span>{isOver ? say.files.dropNow : say.files.orDrop}</span>
      </div>
      <p class="desk-quiet">{say.files.lead}</p>
    </section>
  )
}
