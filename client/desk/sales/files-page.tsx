import { useState } from 'preact/hooks'
import type { SalesFile } from '../../../shared-core/live/sales-import.ts'
import type { SalesWords } from '../../words/desk-sales.ts'
import { Cell, Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { Sideways } from '../sideways.tsx'
import { useGot } from '../use-got.ts'
import { DropFile } from './drop-file.tsx'
import { withinOf } from './pages.ts'
import { FILES, removeFile } from './sales-api.ts'
import type { SalesParts } from './sales-place.tsx'
import { troubleOf } from './trouble.ts'

const LOOK_EVERY_MS = 2_000
const REST_EVERY_MS = 20_000

/** Where a file is dropped, and the files taken so far. */
export function FilesPage(parts: SalesParts) {
  const { live, say } = parts
  const [changes, setChanges] = useState(0)
  const [isBusy, setBusy] = useState(false)
  const beat = Math.floor(live.nowMs / (isBusy ? LOOK_EVERY_MS : REST_EVERY_MS))
  const got = useGot<readonly SalesFile[]>(FILES, `${changes} ${beat}`)
  const files = got.kind === 'got' ? got.value : null
  const isTaking = files?.some(({ state }) => state === 'taking') ?? false
  if (isTaking !== isBusy) setBusy(isTaking)
  return (
    <>
      <p>{say.lead}</p>
      <DropFile {...parts} />
      <Panel part="files" title={say.files.title}>
        {files === null ? (
          <p class="desk-quiet" role="status">
            {got.kind === 'no-contact' ? say.noContact : say.waiting}
          </p>
        ) : files.length === 0 ? (
          <p class="desk-quiet">{say.files.none}</p>
        ) : (
          <FilesTable {...parts} files={files} onRemoved={() => setChanges(changes + 1)} />
        )}
      </Panel>
    </>
  )
}

interface FilesTableProps extends SalesParts {
  readonly files: readonly SalesFile[]
  readonly onRemoved: () => void
}

function FilesTable({ files, onRemoved, ...parts }: FilesTableProps) {
  const { words, say } = parts
  const [asked, setAsked] = useState<SalesFile | null>(null)
  const [trouble, setTrouble] = useState('')
  const { columns } = say.files
  const remove = async (file: SalesFile) => {
    setAsked(null)
    setTrouble(troubleOf(await removeFile(file.id), say))
    onRemoved()
  }
  return (
    <>
      {asked !== null && (
        <div class="desk-notice" role="alert">
          <p>{removeAsked(asked, say)}</p>
          <button type="button" class="desk-strong" onClick={() => void remove(asked)}>
            {say.files.removeYes}
          </button>
          <button type="button" onClick={() => setAsked(null)}>
            {say.files.removeNo}
          </button>
        </div>
      )}
      {trouble !== '' && (
        <p class="desk-trouble" role="alert">
          {trouble}
        </p>
      )}
      <Sideways name={say.files.title}>
        <table class="desk-cards sales-files">
          <thead>
            <tr>
              <th scope="col">{columns.name}</th>
              <th scope="col">{columns.state}</th>
              <th scope="col">{columns.days}</th>
              <th scope="col" class="desk-number">
                {columns.taken}
              </th>
              <th scope="col" class="desk-number">
                {columns.doubled}
              </th>
              <th scope="col" class="desk-number">
                {columns.bad}
              </th>
              <th />
            </tr>
          </thead>
          <tbody>
            {files.map((file) => (
              <tr key={file.id} data-file={file.id}>
                <th scope="row">
                  <a href={addressOf('salesIn', withinOf({ kind: 'file', id: file.id }))}>{file.name}</a>
                </th>
                <td data-label={columns.state}>{say.files.state[file.state]}</td>
                <td data-label={columns.days}>
                  {file.from === null || file.to === null
                    ? '–'
                    : say.files.span(words.times.date(file.from), yearTold(file.to, words.times.date(file.to)))}
                </td>
                <Cell label={columns.taken} value={say.number(file.taken)} />
                <Cell label={columns.doubled} value={say.number(file.doubled)} />
                <Cell label={columns.bad} value={say.number(file.bad)} />
                <td>
                  <button type="button" aria-label={`${say.files.remove}: ${file.name}`} onClick={() => setAsked(file)}>
                    {say.files.remove}
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Sideways>
    </>
  )
}

/** What taking a file out costs. */
export function removeAsked({ name, taken }: Pick<SalesFile, 'name' | 'taken'>, say: SalesWords): string {
  return taken === 0 ? say.files.removeEmptyAsk(name) : say.files.removeAsk(name, say.number(taken))
}

/** Files reach over years, so the last day says which. */
function yearTold(date: string, told: string): string {
  return `${told}, ${date.slice(0, 4)}`
}
