import { useEffect, useState } from 'preact/hooks'
import type { BadRow, BadRows, SalesFile } from '../../../shared-core/live/sales-import.ts'
import { Panel } from '../panel.tsx'
import { useGot } from '../use-got.ts'
import { fileAddress, mendRows } from './sales-api.ts'
import type { SalesParts } from './sales-place.tsx'
import { troubleOf } from './trouble.ts'

interface BadRowsProps extends SalesParts {
  readonly file: SalesFile
  readonly onChanged: () => void
}

/** Rows that could not be read, each as its line stands in the file, to be corrected there and taken. */
export function BadRowsPanel(props: BadRowsProps) {
  const { file, say, onChanged } = props
  const [after, setAfter] = useState(0)
  const [rows, setRows] = useState<readonly BadRow[]>([])
  const [typed, setTyped] = useState<ReadonlyMap<number, string>>(new Map())
  const [told, setTold] = useState({ text: '', isTrouble: false })
  const got = useGot<BadRows>(`${fileAddress(file.id)}/bad?after=${after}`)
  const page = got.kind === 'got' ? got.value : null
  useEffect(() => {
    if (page !== null) setRows((so) => [...so, ...page.bad.filter(({ line }) => !so.some((one) => one.line === line))])
  }, [page])
  const changed = rows.filter(({ line, text }) => (typed.get(line) ?? text) !== text)
  const send = async (sent: readonly Pick<BadRow, 'line' | 'text'>[]) => {
    const done = await mendRows(file.id, sent)
    if (done.kind !== 'done') {
      setTold({ text: troubleOf(done, say), isTrouble: true })
      return
    }
    const { taken, doubled, bad } = done.value
    setRows((so) => afterMending(so, sent, bad))
    setTyped((so) => new Map([...so].filter(([line]) => !sent.some((one) => one.line === line))))
    setTold(taken + doubled === 0 ? NOTHING_TOLD : { text: say.bad.taken(taken, doubled), isTrouble: false })
    onChanged()
  }
  const save = (some: readonly BadRow[]) =>
    send(some.map(({ line, text }) => ({ line, text: typed.get(line) ?? text })))
  return (
    <Panel part="bad" title={say.bad.title}>
      <p>{say.bad.hint}</p>
      {told.text !== '' && (
        <p class={told.isTrouble ? 'desk-trouble' : 'desk-even'} role="status">
          {told.text}
        </p>
      )}
      <ol class="sales-bad">
        {rows.map((row) => (
          <li key={row.line} data-line={row.line}>
            <form
              onSubmit={(event) => {
                event.preventDefault()
                void save([row])
              }}
            >
              <label>
                <span class="sales-line">{say.bad.line(row.line)}</span>
                <input
                  type="text"
                  spellcheck={false}
                  value={typed.get(row.line) ?? row.text}
                  onInput={(event) => setTyped(new Map([...typed, [row.line, event.currentTarget.value]]))}
                />
              </label>
              <button type="submit" disabled={!changed.includes(row)}>
                {say.bad.save}
              </button>
              <button
                type="button"
                aria-label={`${say.bad.line(row.line)}: ${say.bad.letGo}`}
                onClick={() => void send([{ line: row.line, text: '' }])}
              >
                {say.bad.letGo}
              </button>
            </form>
            <p class={changed.includes(row) ? 'desk-quiet' : 'desk-trouble'}>
              {changed.includes(row) ? say.bad.unsaved : say.fault(row.fault)}
            </p>
          </li>
        ))}
      </ol>
      <div class="desk-line">
        {changed.length > 1 && (
          <button type="button" class="desk-strong" onClick={() => void save(changed)}>
            {say.bad.saveAll(changed.length)}
          </button>
        )}
        {page?.hasMore === true && (
          <button type="button" onClick={() => setAfter(page.bad[page.bad.length - 1]?.line ?? after)}>
            {say.bad.more}
          </button>
        )}
      </div>
    </Panel>
  )
}

const NOTHING_TOLD = { text: '', isTrouble: false }

/** Of the lines sent those that are still bad stay, with what is wrong now; the others are gone. */
export function afterMending(
  rows: readonly BadRow[],
  sent: readonly Pick<BadRow, 'line'>[],
  stillBad: readonly BadRow[],
): readonly BadRow[] {
  return rows.flatMap((row) => {
    if (!sent.some(({ line }) => line === row.line)) return [row]
    return stillBad.filter(({ line }) => line === row.line)
  })
}
