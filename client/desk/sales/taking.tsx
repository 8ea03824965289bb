import { useEffect, useRef, useState } from 'preact/hooks'
import type { SalesFile } from '../../../shared-core/live/sales-import.ts'
import type { SalesWords } from '../../words/desk-sales.ts'
import { ratePerSecond } from './taking-rate.ts'

/** A bar of how far a file is read, and how fast it goes. */
export function Taking({ file, say }: { readonly file: SalesFile; readonly say: SalesWords }) {
  const { rows, bytes, bytesRead, why } = file
  const looks = useRef<readonly { readonly atMs: number; readonly rows: number }[]>([])
  const [rate, setRate] = useState<number | null>(null)
  useEffect(() => {
    looks.current = [...looks.current, { atMs: performance.now(), rows }].slice(-LOOKS)
    setRate(ratePerSecond(looks.current))
  }, [rows])
  const percent = bytes === 0 ? 100 : Math.min(100, Math.floor((bytesRead / bytes) * 100))
  return (
    <div role="status">
      <div class="desk-line">
        <progress class="sales-progress" max={100} value={percent} aria-label={file.name} />
        <span>{say.taking.progress(percent, rate === null ? null : say.number(rate))}</span>
      </div>
      {why === null ? <p class="desk-quiet">{say.taking.leave}</p> : <p class="desk-notice">{say.taking.stuck}</p>}
    </div>
  )
}

/** The pace of the last seconds: it changes when the shop is busy. */
const LOOKS = 6
