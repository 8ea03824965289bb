import { useState } from 'preact/hooks'
import type { PlannedLoad } from '../../shared-core/day/state.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { DeskParts } from './desk-screen.tsx'
import { readLoadLines } from './load-lines.ts'
import { momentOf } from './moment.ts'
import { OutcomeText } from './outcome.tsx'
import { usePosting } from './use-posting.ts'
import { useTakenLoads } from './use-taken-loads.ts'

const ADDRESS = '/api/v1/load-list'

/** The day's loads: typed or from a file, and what is planned now. */
export function LoadsPanel(parts: DeskParts) {
  const { store, live, shop, words } = parts
  // What is advised is not in this list: it goes away by itself.
  const state = live.asSet ?? parts.state
  const { loads, mistakes } = words.desk
  const [text, setText] = useState('')
  const posting = usePosting(store, live)
  const takeTyped = () => {
    const read = readLoadLines(text, shop, mistakes)
    if (!read.ok) posting.show({ kind: 'mistakes', problems: read.problems })
    else void posting.send({ address: ADDRESS, body: JSON.stringify(read.file), type: 'application/json' })
  }
  const takeFile = async (file: File | undefined) => {
    if (file === undefined) return
    const body = await file.text()
    const isJson = /^\s*[[{]/.test(body)
    if (isJson && !isValidJson(body)) {
      posting.show({ kind: 'mistakes', problems: [{ path: '', wrong: mistakes.notJson, right: loads.fileHint }] })
    } else void posting.send({ address: ADDRESS, body, type: isJson ? 'application/json' : 'text/csv' })
  }
  const planned = [...state.planned.values()]
  const takenLoads = useTakenLoads(posting.outcome, state)
  const isShown = posting.outcome !== null && (posting.outcome.kind !== 'taken' || takenLoads !== null)
  const place = (path: string) =>
    /^\d+$/.test(path) ? mistakes.line(Number(path)) : path === '' ? mistakes.wholeFile : path
  return (
    <>
      <div class="desk-columns">
        <label class="desk-field desk-grow">
          <strong>{loads.typed}</strong>
          <span class="desk-quiet">{loads.typedHint}</span>
          <textarea
            rows={7}
            spellcheck={false}
            placeholder={loads.example}
            value={text}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <div class="desk-file">
          <label class="desk-button">
            {loads.file}
            <input
              type="file"
              accept=".csv,.json,text/csv,application/json"
              onChange={(event) => {
                const input = event.currentTarget
                void takeFile(input.files?.[0]).then(() => {
                  input.value = ''
                })
              }}
            />
          </label>
          <p class="desk-quiet">{loads.fileHint}</p>
        </div>
      </div>
      <div class="desk-line">
        <button type="button" class="desk-strong" disabled={posting.isBusy} onClick={takeTyped}>
          {loads.take}
        </button>
        <span class="desk-quiet">{loads.replaces}</span>
      </div>
      {posting.outcome !== null && isShown && (
        <OutcomeText
          outcome={posting.outcome}
          words={words}
          taken={loads.taken(takenLoads ?? 0)}
          place={place}
          onConfirm={(codes) => void posting.confirm(codes)}
          onPutAway={posting.putAway}
        />
      )}
      <Planned {...parts} planned={planned} />
    </>
  )
}

function Planned({ store, live, shop, words, planned }: DeskParts & { readonly planned: readonly PlannedLoad[] }) {
  const { loads } = words.desk
  if (planned.length === 0) return <p class="desk-quiet">{loads.none}</p>
  const sorted = [...planned].sort(byTurn)
  const inAt = (atMs: EpochMs) => {
    const { clock, day } = momentOf(atMs, { shopClock: live.shopClock, nowMs: live.nowMs, shop, words })
    return day === '' ? clock : loads.inOn(clock, day)
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached from the keyboard (WCAG 2.1.1).
    <div class="desk-scroll" role="group" tabIndex={0} aria-label={loads.planned}>
      <table>
        <caption>{loads.planned}</caption>
        <thead>
          <tr>
            <th>{loads.columns.in}</th>
            <th>{loads.columns.shelf}</th>
            <th>{loads.columns.contents}</th>
            <th>{loads.columns.state}</th>
          </tr>
        </thead>
        <tbody>
          {sorted.map((load) => (
            <tr key={load.id} class={load.done ? 'desk-gone' : undefined}>
              <td>{load.inAtMs === null ? loads.whenFree : inAt(load.inAtMs)}</td>
              <td>{load.shelfId === null ? loads.anyShelf : words.names.shelf(load.shelfId)}</td>
              <td>{words.line.contents(load.lines)}</td>
              <td>
                {load.done ? (
                  loads.done
                ) : (
                  <button type="button" onClick={() => store.send({ type: 'skipPlanned', plannedId: load.id })}>
                    {loads.leaveOut}
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** What is to come first, and each in the list's order. */
function byTurn(one: PlannedLoad, other: PlannedLoad): number {
  return Number(one.done) - Number(other.done) || one.order - other.order || (one.id < other.id ? -1 : 1)
}

export function isValidJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}
