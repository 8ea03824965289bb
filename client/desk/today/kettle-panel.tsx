import { useState } from 'preact/hooks'
import type { CareKind } from '../../../shared-core/day/said.ts'
import { CARE_KINDS } from '../../../shared-core/day/said.ts'
import { boardsNow } from '../../../shared-core/line/boards.ts'
import type { Contact } from '../../../shared-core/line/contacts.ts'
import { CARE_OF, CONTACT_PLACES, contacts } from '../../../shared-core/line/contacts.ts'
import { kettleCare } from '../../../shared-core/line/kettle-care.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'

/** Those of the kettle stand together, as it asks for them; a wash stands beside what it ends. */
const WASHES: ReadonlySet<CareKind> = new Set(CONTACT_PLACES.map((place) => CARE_OF[place]))
const OF_KETTLE = CARE_KINDS.filter((care) => care === CARE_OF.kettle || !WASHES.has(care))

/** The kettle's water, the boards, and what has touched them, seed trays, peel and stone. */
export function KettlePanel(parts: DeskParts) {
  const { live, state, words } = parts
  const { kettle: say } = words.desk.today
  const { reminders, boilsAgainAtMs } = kettleCare(state, live.nowMs)
  const touched = contacts(state)
  return (
    <Panel part="kettle" title={say.title}>
      {boilsAgainAtMs !== null && <p>{say.boilsAgain(boilsAgainAtMs)}</p>}
      <Cares {...parts} cares={OF_KETTLE} reminders={reminders} />
      <Boards {...parts} />
      {CONTACT_PLACES.map((place) => (
        <Touched
          key={place}
          {...parts}
          title={say.touched[place]}
          contacts={touched[place]}
          nothing={say.nothing[place]}
          cares={place === 'kettle' ? [] : [CARE_OF[place]]}
        />
      ))}
      <p class="desk-quiet">{say.contactHint}</p>
    </Panel>
  )
}

type Reminders = ReturnType<typeof kettleCare>['reminders']

interface CaresProps extends DeskParts {
  readonly cares: readonly CareKind[]
  readonly reminders: Reminders
}

function Cares({ store, state, words, cares, reminders }: CaresProps) {
  const { kettle: say } = words.desk.today
  return (
    <ul class="desk-cares">
      {cares.map((care) => {
        const reminder = reminders.find((one) => one.care === care)
        const last = state.cares.get(care)
        return (
          <li key={care}>
            <button type="button" onClick={() => store.send({ type: 'care', care })}>
              {say.care[care]}
            </button>
            <span class="desk-quiet">
              {reminder?.isDue === true && <strong class="desk-due">{say.due}: </strong>}
              {[
                reminder === undefined ? '' : say.since(reminder.boiled, reminder.every),
                last === undefined ? '' : say.lastAt(last.atMs),
              ]
                .filter((text) => text !== '')
                .join(', ')}
            </span>
          </li>
        )
      })}
    </ul>
  )
}

function Boards({ store, live, state, shop, words }: DeskParts) {
  const { kettle: say } = words.desk.today
  const { count } = shop.boards
  const now = boardsNow(state, live.nowMs)
  const [text, setText] = useState('')
  const usable = /^\d{1,3}$/.test(text) ? Number(text) : null
  return (
    <form
      class="desk-line"
      onSubmit={(event) => {
        event.preventDefault()
        if (usable !== null && store.send({ type: 'setBoards', usable }) !== null) setText('')
      }}
    >
      <label class="desk-line">
        {say.boards}
        <input
          class="desk-short"
          inputMode="numeric"
          value={text}
          placeholder={String(now.count)}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <span class="desk-quiet">{say.boardsOf(count)}</span>
      <button type="submit" disabled={usable === null}>
        {say.usable}
      </button>
    </form>
  )
}

interface TouchedProps extends DeskParts {
  readonly title: string
  readonly contacts: readonly Contact[]
  readonly nothing: string
  readonly cares: readonly CareKind[]
}

function Touched({ title, contacts: all, nothing, cares, ...parts }: TouchedProps) {
  const { kettle: say } = parts.words.desk.today
  return (
    <>
      <h3>{title}</h3>
      <p class={all.length === 0 ? 'desk-quiet' : undefined}>
        {all.length === 0
          ? nothing
          : all
              .map(({ name, pieces, contains }) =>
                say.contact(
                  name,
                  pieces,
                  contains.map((one) => say.allergen[one]),
                ),
              )
              .join(' · ')}
      </p>
      {cares.length > 0 && <Cares {...parts} cares={cares} reminders={[]} />}
    </>
  )
}
