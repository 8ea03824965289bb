import { changeoverList } from '../../../shared-core/day/changeover-list.ts'
import { openingList } from '../../../shared-core/day/opening-list.ts'
import type { StepLine, StepList } from '../../../shared-core/day/step-list.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import { rulerNow } from '../../parts/ruler-of-day.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import { FloatKeys } from './float-keys.tsx'

/** The opening and the changeover as lists, each line with its time and with who does it. */
export function StepsPanels(parts: DeskParts) {
  const { live, state, words } = parts
  const { steps } = words.desk.today
  if (live.shopClock === null) return null
  const ruler = rulerNow(state, live.nowMs, live.shopClock)
  const opening = openingList(state, live.nowMs, ruler)
  const changeover = changeoverList(state, live.nowMs, ruler)
  return (
    <>
      {opening !== null && (
        <Panel part="opening" title={steps.opening}>
          <p class="desk-quiet">{steps.openingHead(opening.zeroAtMs, opening.doneCount, opening.lines.length)}</p>
          <Steps {...parts} list={opening} />
        </Panel>
      )}
      {changeover !== null && (
        <Panel part="changeover-list" title={steps.changeover}>
          <p class="desk-quiet">
            {steps.changeoverHead(changeover.zeroAtMs, changeover.doneCount, changeover.lines.length)}
          </p>
          <Steps {...parts} list={changeover} />
        </Panel>
      )}
    </>
  )
}

function Steps({ list, ...parts }: DeskParts & { readonly list: StepList }) {
  return (
    <ol class="desk-steps">
      {list.lines.map((line) => (
        <Step key={`${line.stepId} ${line.doughId}`} {...parts} line={line} />
      ))}
    </ol>
  )
}

function Step({ line, ...parts }: DeskParts & { readonly line: StepLine }) {
  const { steps } = parts.words.desk.today
  const { names } = parts.words
  const name = line.doughId === null ? line.name : steps.floatTest(names.dough(line.doughId))
  const isOver = line.status === 'done'
  const mark = line.status === 'late' || line.status === 'due' ? steps.status[line.status] : ''
  return (
    <li class={`desk-step desk-step-${line.status}`}>
      <span class="desk-step-when">{steps.due(line.dueAtMs)}</span>
      <span class="desk-step-name">
        {name}
        {mark !== '' && <strong>{mark}</strong>}
        <Found {...parts} line={line} />
      </span>
      {isOver ? (
        <span class="desk-quiet">
          {line.doneAtMs === null
            ? '✓'
            : `✓ ${steps.done(line.doneAtMs, line.personId === null ? '' : names.person(line.personId))}`}
        </span>
      ) : (
        <span class="desk-step-keys">
          <Who {...parts} line={line} name={name} />
          {line.kind === 'float-test' && line.doughId !== null ? (
            <FloatKeys
              store={parts.store}
              words={parts.words}
              doughId={line.doughId}
              name={name}
              personId={line.personId}
            />
          ) : (
            <button
              type="button"
              aria-label={`${steps.doIt}: ${name}`}
              onClick={() => {
                const { stepId, doughId, personId } = line
                parts.store.send({
                  type: 'doStep',
                  stepId,
                  doughId,
                  personId: personId ?? parts.live.settings.personId,
                })
              }}
            >
              {steps.doIt}
            </button>
          )}
        </span>
      )}
    </li>
  )
}

/** What the last float test found. */
function Found({ line, words }: DeskParts & { readonly line: StepLine }) {
  const { steps } = words.desk.today
  if (line.float === null) return null
  const { passed, lookAgainAtMs, dippedAnyway } = line.float
  const text = dippedAnyway
    ? steps.dippedAnyway
    : passed
      ? steps.foundReady
      : lookAgainAtMs === null
        ? ''
        : steps.foundNotReady(lookAgainAtMs)
  return text === '' ? null : <span class="desk-quiet">{text}</span>
}

function Who({ store, shop, words, line, name }: DeskParts & { readonly line: StepLine; readonly name: string }) {
  const { steps } = words.desk.today
  const people = inUse(shop.people)
  if (people.length === 0) return null
  return (
    <select
      aria-label={steps.who(name)}
      value={line.personId ?? ''}
      onChange={(event) => {
        const { stepId, doughId } = line
        const personId = people.find(({ id }) => id === event.currentTarget.value)?.id ?? null
        store.send({ type: 'giveStep', stepId, doughId, personId })
      }}
    >
      <option value="">{steps.nobody}</option>
      {people.map((person) => (
        <option key={person.id} value={person.id}>
          {person.name}
        </option>
      ))}
    </select>
  )
}
