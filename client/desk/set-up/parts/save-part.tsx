import { useState } from 'preact/hooks'
import type { EpochMs } from '../../../../shared-core/units.ts'
import { momentOf } from '../../moment.ts'
import { PickField } from '../fields/pick-field.tsx'
import { Rule } from '../fields/text-field.tsx'
import { hashOf } from '../route.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { partOf } from '../set-up-parts.ts'
import { toldChanges } from '../told-changes.ts'
import { nextOpening, tomorrowText, typedMoment } from '../when.ts'
import { ChangeList } from './change-list.tsx'
import { misfitText } from './wrong.tsx'

/** What will change, in words; from when; and the one key that saves it. */
export function SavePart(props: SetUpProps) {
  const { running, draft, changes, misfits, words, say, saving } = props
  const told = toldChanges(running, changes, { words, say, shop: draft })
  const isDone = saving.status === 'saved' || saving.status === 'planned'
  return (
    <>
      {isDone && (
        <p class="setup-done" role="status">
          ✓ {saving.status === 'saved' ? say.save.saved : say.save.planned}
        </p>
      )}
      {saving.status === 'waiting' && <p role="status">{say.save.waiting}</p>}
      {changes.length === 0 ? (
        !isDone && <p class="setup-hint">{say.save.nothing}</p>
      ) : (
        <>
          <ChangeList told={told} />
          {misfits.length > 0 ? (
            <MisfitList {...props} />
          ) : (
            <SaveForm {...props} isWaiting={saving.status === 'waiting'} onSave={saving.save} />
          )}
          <ThrowAway {...props} />
        </>
      )}
    </>
  )
}

function MisfitList({ misfits, say }: SetUpProps) {
  return (
    <div class="setup-wrong" role="alert">
      <p>
        <strong>{say.save.misfits(misfits.length)}</strong>
      </p>
      <ul>
        {misfits.map((misfit) => (
          <li key={`${misfit.entity} ${misfit.id} ${misfit.field} ${misfit.wrong}`}>
            {misfitText(misfit, say)}{' '}
            <a href={hashOf({ kind: 'part', part: partOf(misfit.entity) })}>{say.save.putRight}</a>
          </li>
        ))}
      </ul>
    </div>
  )
}

type When = 'now' | 'opening' | 'at'

interface SaveFormProps extends SetUpProps {
  readonly isWaiting: boolean
  readonly onSave: (fromMs: EpochMs | null) => void
}

function SaveForm(props: SaveFormProps) {
  const { live, running, words, say, isWaiting, onSave } = props
  const { shopClock, nowMs } = live
  const [when, setWhen] = useState<When>('now')
  const [typed, setTyped] = useState<string | null>(null)
  const openingMs = shopClock === null ? null : nextOpening(running, shopClock, nowMs)
  const text = typed ?? (shopClock === null ? '' : tomorrowText(shopClock, nowMs))
  const typedMs = shopClock === null ? null : typedMoment(text, shopClock, nowMs)
  const fromMs = when === 'now' ? null : when === 'opening' ? openingMs : typedMs
  const moment = openingMs === null ? null : momentOf(openingMs, { shopClock, nowMs, shop: running, words })
  const isMissing = when !== 'now' && fromMs === null
  return (
    <form
      class="setup-save"
      onSubmit={(event) => {
        event.preventDefault()
        if (!isMissing) onSave(fromMs)
      }}
    >
      <PickField<When>
        label={say.save.when}
        options={[
          { value: 'now', label: say.save.now },
          ...(moment === null
            ? []
            : [{ value: 'opening' as const, label: say.save.opening(moment.day, moment.clock) }]),
          { value: 'at', label: say.save.at },
        ]}
        value={when}
        onChange={setWhen}
      />
      {when === 'at' && (
        <label class="setup-field">
          <span>{say.save.atField}</span>
          <input type="datetime-local" value={text} onInput={(event) => setTyped(event.currentTarget.value)} />
          {typedMs === null && <Rule text={say.save.notPast} />}
        </label>
      )}
      <p class="setup-hint">{say.save.running}</p>
      <button type="submit" class="desk-strong" disabled={isMissing || isWaiting}>
        {when === 'now' ? say.save.save : say.save.plan}
      </button>
    </form>
  )
}

function ThrowAway({ say, clear }: SetUpProps) {
  const [isSure, setSure] = useState(false)
  if (!isSure) {
    return (
      <button type="button" onClick={() => setSure(true)}>
        {say.save.throwAway}
      </button>
    )
  }
  return (
    <div class="setup-acts" role="alert">
      <span>{say.save.throwAwaySure}</span>
      <button type="button" onClick={clear}>
        {say.save.throwAway}
      </button>
      <button type="button" onClick={() => setSure(false)}>
        {say.save.keep}
      </button>
    </div>
  )
}
