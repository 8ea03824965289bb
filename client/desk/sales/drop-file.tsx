import { useEffect, useRef, useState } from 'preact/hooks'
import { addressOf } from '../place.ts'
import { DropArea } from './drop-area.tsx'
import { withinOf } from './pages.ts'
import type { SalesParts } from './sales-place.tsx'
import { troubleOf } from './trouble.ts'
import type { Upload } from './upload.ts'
import { upload } from './upload.ts'

interface Sending {
  readonly name: string
  readonly percent: number
}

/** A file is chosen or dropped; it is sent, and the page of what it would be read as opens. */
export function DropFile({ say }: SalesParts) {
  const [sending, setSending] = useState<Sending | null>(null)
  const [trouble, setTrouble] = useState('')
  const running = useRef<Upload | null>(null)
  const stop = () => {
    const one = running.current
    running.current = null
    one?.stop()
    setSending(null)
  }
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when the page is left.
  useEffect(() => stop, [])
  const send = async (file: File) => {
    if (running.current !== null) return
    setTrouble('')
    setSending({ name: file.name, percent: 0 })
    const one = upload(file, (part) => setSending({ name: file.name, percent: Math.round(part * 100) }))
    running.current = one
    const done = await one.done
    // Stopped by hand, or the page was left.
    if (running.current !== one) return
    running.current = null
    setSending(null)
    if (done.kind === 'done') {
      window.location.hash = addressOf('salesIn', withinOf({ kind: 'file', id: done.value.file.id }))
    } else setTrouble(done.kind === 'no-contact' ? say.drop.notSent : troubleOf(done, say))
  }
  return (
    <DropArea
      words={say.drop}
      hint={say.drop.hint}
      onFile={(file) => void send(file)}
      sending={
        sending === null ? null : (
          <div class="desk-line" role="status">
            <progress max={100} value={sending.percent} aria-label={sending.name} />
            <span>{say.drop.sending(sending.name, sending.percent)}</span>
            <button type="button" onClick={stop}>
              {say.drop.stop}
            </button>
          </div>
        )
      }
    >
      {trouble !== '' && (
        <p class="desk-trouble" role="alert">
          {trouble}
        </p>
      )}
    </DropArea>
  )
}
