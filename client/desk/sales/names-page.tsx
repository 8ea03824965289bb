import { useState } from 'preact/hooks'
import type { NamedMeaning, TillName, TillNames } from '../../../shared-core/live/sales-import.ts'
import { Panel } from '../panel.tsx'
import { useGot } from '../use-got.ts'
import { NameRow } from './name-row.tsx'
import { openShare, shownNames, suggestedFor } from './names-view.ts'
import { NAMES, sayNames } from './sales-api.ts'
import type { SalesParts } from './sales-place.tsx'
import { troubleOf } from './trouble.ts'

const ROWS_AT_ONCE = 60

/** What the till's names mean: suggestions to say yes to, and all others to be said. */
export function NamesPage(parts: SalesParts) {
  const { say } = parts
  const [changes, setChanges] = useState(0)
  const [trouble, setTrouble] = useState('')
  const got = useGot<TillNames>(NAMES, changes)
  const names = got.kind === 'got' ? got.value.names : null
  const save = async (some: readonly NamedMeaning[]) => {
    const done = await sayNames(some)
    setTrouble(troubleOf(done, say))
    setChanges((count) => count + 1)
    return done.kind === 'done'
  }
  return (
    <Panel part="names" title={say.names.title}>
      <p>{say.names.hint}</p>
      {trouble !== '' && (
        <p class="desk-trouble" role="alert">
          {trouble}
        </p>
      )}
      {names === null ? (
        <p class="desk-quiet" role="status">
          {got.kind === 'no-contact' ? say.noContact : say.waiting}
        </p>
      ) : names.length === 0 ? (
        <p class="desk-quiet">{say.names.none}</p>
      ) : (
        <NamesList {...parts} names={names} onSay={save} />
      )}
    </Panel>
  )
}

interface NamesListProps extends SalesParts {
  readonly names: readonly TillName[]
  /** @returns whether it was taken */
  readonly onSay: (names: readonly NamedMeaning[]) => Promise<boolean>
}

function NamesList({ names, onSay, ...parts }: NamesListProps) {
  const { say } = parts
  const open = names.filter(({ meaning }) => meaning === null)
  const [isAll, setAll] = useState(open.length === 0)
  const [text, setText] = useState('')
  const [most, setMost] = useState(ROWS_AT_ONCE)
  const shown = shownNames(names, { isAll, text })
  const suggested = suggestedFor(shown)
  return (
    <>
      <p class={open.length === 0 ? 'desk-even' : ''} role="status">
        {open.length === 0
          ? say.names.allSaid
          : say.names.open(open.length, `${Math.round(openShare(names) * 1_000) / 10} %`)}
      </p>
      <div class="desk-line">
        {([false, true] as const).map((all) => (
          <button key={String(all)} type="button" aria-pressed={isAll === all} onClick={() => setAll(all)}>
            {all ? say.names.show.all : say.names.show.open}
          </button>
        ))}
        <input
          type="search"
          aria-label={say.names.search}
          placeholder={say.names.search}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        {suggested.length > 0 && (
          <button type="button" class="desk-strong" onClick={() => void onSay(suggested)}>
            {say.names.acceptAll(suggested.length)}
          </button>
        )}
      </div>
      <ul class="sales-names">
        {shown.slice(0, most).map((name) => (
          <NameRow key={name.name} {...parts} name={name} onSay={onSay} />
        ))}
      </ul>
      {shown.length > most && (
        <button type="button" onClick={() => setMost(most + ROWS_AT_ONCE)}>
          {say.names.more(Math.min(ROWS_AT_ONCE, shown.length - most))}
        </button>
      )}
    </>
  )
}
