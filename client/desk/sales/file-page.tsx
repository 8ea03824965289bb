import { useState } from 'preact/hooks'
import type { SalesFile } from '../../../shared-core/live/sales-import.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { useGot } from '../use-got.ts'
import { BadRowsPanel } from './bad-rows.tsx'
import { MappingPanel } from './mapping-panel.tsx'
import { withinOf } from './pages.ts'
import { fileAddress, takeFile } from './sales-api.ts'
import type { SalesParts } from './sales-place.tsx'
import { Taking } from './taking.tsx'
import { troubleOf } from './trouble.ts'

interface FilePageProps extends SalesParts {
  readonly id: number
}

const LOOK_EVERY_MS = 1_000
const REST_EVERY_MS = 10_000

/** One file, from how it is read to what came of it. It is looked at again while it is being taken. */
export function FilePage(props: FilePageProps) {
  const { id, live, say } = props
  const [changes, setChanges] = useState(0)
  const [isBusy, setBusy] = useState(false)
  const beat = Math.floor(live.nowMs / (isBusy ? LOOK_EVERY_MS : REST_EVERY_MS))
  const got = useGot<SalesFile>(fileAddress(id), `${changes} ${beat}`)
  const file = got.kind === 'got' ? got.value : null
  if (file !== null && (file.state === 'taking') !== isBusy) setBusy(file.state === 'taking')
  const changed = () => setChanges((count) => count + 1)
  return (
    <>
      <p>
        <a href={addressOf('salesIn')}>← {say.pages.files}</a>
      </p>
      {file === null ? (
        <p class="desk-quiet" role="status">
          {got.kind === 'unknown' ? say.unknown : got.kind === 'no-contact' ? say.noContact : say.waiting}
        </p>
      ) : file.state === 'waiting' ? (
        <MappingPanel {...props} file={file} onTaken={changed} />
      ) : (
        <Result {...props} file={file} onChanged={changed} />
      )}
    </>
  )
}

interface ResultProps extends SalesParts {
  readonly file: SalesFile
  readonly onChanged: () => void
}

/** How far it is, then what came of it. */
function Result(props: ResultProps) {
  const { file, say, words, onChanged } = props
  const { taking } = say
  const [trouble, setTrouble] = useState('')
  const goOn = async () => {
    setTrouble(troubleOf(await takeFile(file.id, null), say))
    onChanged()
  }
  const span =
    file.from === null || file.to === null
      ? null
      : say.files.span(words.times.date(file.from), `${words.times.date(file.to)}, ${file.to.slice(0, 4)}`)
  return (
    <>
      <Panel part="result" title={file.name}>
        {file.state === 'taking' && <Taking file={file} say={say} />}
        {file.state === 'failed' && (
          <div class="desk-notice" role="alert">
            <p>
              {taking.failed} {file.why}
            </p>
            <button type="button" class="desk-strong" onClick={() => void goOn()}>
              {taking.again}
            </button>
          </div>
        )}
        {file.state === 'taken' && (
          <p class="desk-even" role="status">
            ✓ {taking.result(say.number(file.rows), say.number(file.taken))}
          </p>
        )}
        {trouble !== '' && (
          <p class="desk-trouble" role="alert">
            {trouble}
          </p>
        )}
        <dl class="sales-figures">
          {(['rows', 'taken', 'doubled', 'bad'] as const).map((figure) => (
            <div key={figure}>
              <dt>{taking.figures[figure]}</dt>
              <dd data-figure={figure}>{say.number(file[figure])}</dd>
            </div>
          ))}
        </dl>
        {span !== null && <p>{span}</p>}
        {file.doubled > 0 && <p class="desk-quiet">{taking.doubled(say.number(file.doubled))}</p>}
        {file.state === 'taken' && (
          <>
            {file.bad === 0 && <p class="desk-quiet">{taking.allGood}</p>}
            <a class="desk-button" href={addressOf('salesIn', withinOf({ kind: 'names' }))}>
              {taking.toNames}
            </a>
          </>
        )}
      </Panel>
      {file.bad > 0 && file.state !== 'taking' && <BadRowsPanel {...props} />}
    </>
  )
}
