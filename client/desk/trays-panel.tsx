import { useState } from 'preact/hooks'
import type { EpochMs } from '../../shared-core/units.ts'
import type { DeskWords } from '../words/desk.ts'
import type { DeskParts } from './desk-screen.tsx'
import { momentOf } from './moment.ts'
import { Cell } from './panel.tsx'
import type { TrayForm, TrayStage, TrayStuff } from './trays-view.ts'
import { readTrays, standingTrays, trayStuff } from './trays-view.ts'

const EMPTY: TrayForm = {
  how: 'carriedIn',
  stage: 'chill',
  number: 0,
  unit: 'trays',
  daysAgo: 1,
  clock: '18:00',
}

/** Trays by hand: found in the cooler, or shaped just now. */
export function TraysPanel(parts: DeskParts) {
  const { store, live, shop, words } = parts
  const { trays } = words.desk
  const [form, setForm] = useState<TrayForm>(EMPTY)
  const [key, setKey] = useState('')
  const all = trayStuff(shop)
  const stuff = all.find((one) => one.key === key) ?? all[0]
  if (stuff === undefined) return null
  const stage = stuff.stages.includes(form.stage) ? form.stage : (stuff.stages[0] ?? 'chill')
  const read = readTrays({ ...form, stage }, stuff, { clock: live.shopClock, nowMs: live.nowMs })
  const change = (part: Partial<TrayForm>) => setForm({ ...form, ...part })
  const submit = (event: Event) => {
    event.preventDefault()
    if (!read.ok || store.send(read.act) === null) return
    change({ number: 0 })
  }
  return (
    <>
      <form class="desk-form" onSubmit={submit}>
        <How form={form} words={words} change={change} />
        <label class="desk-field">
          <span>{trays.dough}</span>
          <select value={stuff.key} onChange={(event) => setKey(event.currentTarget.value)}>
            {all.map((one) => (
              <option key={one.key} value={one.key}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
        <HowMany form={form} stuff={stuff} words={words} change={change} />
        <Where form={{ ...form, stage }} stuff={stuff} words={words} change={change} />
        {form.how === 'carriedIn' && <Since form={form} words={words} change={change} />}
        <button type="submit" class="desk-strong" disabled={!read.ok}>
          {form.how === 'shaped'
            ? trays.shape(read.ok ? read.pieces : 0, stuff.name)
            : trays.carryIn(read.ok ? read.pieces : 0, stuff.name)}
        </button>
      </form>
      <p class="desk-quiet" role="status">
        {read.ok ? '' : read.why === 'number' ? trays.chooseNumber : trays.notLater}
      </p>
      <Standing {...parts} />
    </>
  )
}

interface FieldProps {
  readonly form: TrayForm
  readonly words: DeskWords
  readonly change: (part: Partial<TrayForm>) => void
}

function How({ form, words, change }: FieldProps) {
  const { trays } = words.desk
  return (
    <label class="desk-field">
      <span>{trays.how}</span>
      <select
        value={form.how}
        title={form.how === 'shaped' ? trays.shapedHint : trays.carriedInHint}
        onChange={(event) => change({ how: event.currentTarget.value === 'shaped' ? 'shaped' : 'carriedIn' })}
      >
        <option value="carriedIn">{trays.carriedIn}</option>
        <option value="shaped">{trays.shaped}</option>
      </select>
    </label>
  )
}

function HowMany({ form, stuff, words, change }: FieldProps & { readonly stuff: TrayStuff }) {
  const { trays } = words.desk
  return (
    <fieldset class="desk-field">
      <legend>{trays.number}</legend>
      <input
        type="number"
        min="1"
        step="1"
        aria-label={trays.number}
        value={form.number === 0 ? '' : form.number}
        onInput={(event) => change({ number: event.currentTarget.valueAsNumber || 0 })}
      />
      <select
        aria-label={trays.unit}
        value={form.unit}
        onChange={(event) => change({ unit: event.currentTarget.value === 'pieces' ? 'pieces' : 'trays' })}
      >
        <option value="trays">{trays.traysOf(stuff.trayPieces)}</option>
        <option value="pieces">{trays.pieces}</option>
      </select>
    </fieldset>
  )
}

function Where({ form, stuff, words, change }: FieldProps & { readonly stuff: TrayStuff }) {
  const { trays } = words.desk
  const chosen = (text: string): TrayStage => stuff.stages.find((stage) => stage === text) ?? form.stage
  return (
    <label class="desk-field">
      <span>{trays.where}</span>
      <select value={form.stage} onChange={(event) => change({ stage: chosen(event.currentTarget.value) })}>
        {stuff.stages.map((stage) => (
          <option key={stage} value={stage}>
            {trays.stage(stage)}
          </option>
        ))}
      </select>
    </label>
  )
}

function Since({ form, words, change }: FieldProps) {
  const { trays } = words.desk
  const days = [trays.today, trays.yesterday, trays.dayBefore]
  return (
    <fieldset class="desk-field">
      <legend>{trays.since}</legend>
      <select
        aria-label={trays.since}
        value={form.daysAgo ?? ''}
        onChange={(event) => {
          const { value } = event.currentTarget
          change({ daysAgo: value === '' ? null : Number(value) })
        }}
      >
        {days.map((day, daysAgo) => (
          <option key={day} value={String(daysAgo)}>
            {day}
          </option>
        ))}
        <option value="">{trays.notKnown}</option>
      </select>
      {form.daysAgo !== null && (
        <input
          type="time"
          aria-label={trays.clock}
          value={form.clock}
          onInput={(event) => change({ clock: event.currentTarget.value })}
        />
      )}
    </fieldset>
  )
}

function Standing({ state, live, shop, words }: DeskParts) {
  const { trays } = words.desk
  const batches = standingTrays(state)
  const goodTo = (atMs: EpochMs) => {
    const { clock, day } = momentOf(atMs, { shopClock: live.shopClock, nowMs: live.nowMs, shop, words })
    return day === '' ? clock : trays.untilOn(clock, day)
  }
  if (batches.length === 0) return <p class="desk-quiet">{trays.nothing}</p>
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached from the keyboard (WCAG 2.1.1).
    <div class="desk-scroll" role="group" tabIndex={0} aria-label={trays.standing}>
      <table>
        <caption>{trays.standing}</caption>
        <thead>
          <tr>
            <th>{trays.columns.where}</th>
            <th>{trays.columns.what}</th>
            <th class="desk-number">{trays.columns.pieces}</th>
            <th class="desk-number">{trays.columns.since}</th>
            <th class="desk-number">{trays.columns.until}</th>
          </tr>
        </thead>
        <tbody>
          {batches.map(({ id, stage, doughId, varietyId, pieces, sinceMs, until }) => (
            <tr key={id}>
              <td>{trays.stage(stage)}</td>
              <td>{varietyId === null ? words.names.dough(doughId) : words.names.variety(varietyId)}</td>
              <Cell value={pieces} />
              <Cell value={words.times.span(live.nowMs - sinceMs)} />
              <Cell value={until === null ? '' : goodTo(until.latestAtMs)} />
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
