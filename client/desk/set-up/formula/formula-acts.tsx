import type { Formula } from '../../../../shared-core/shop/formula.ts'
import { momentOf } from '../../moment.ts'
import { hashOf } from '../route.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import type { Version } from '../versions.ts'

export interface FormulaActsProps {
  readonly parts: SetUpProps
  readonly formula: Formula
  readonly versions: readonly Version[]
}

/** The card to print, the formula as a file, and who changed it last. */
export function FormulaActs({ parts, formula, versions }: FormulaActsProps) {
  const { live, running, words, say } = parts
  const last = lastChange(versions, formula)
  const moment = last === null ? null : momentOf(last.atMs, { ...live, shop: running, words })
  return (
    <>
      <div class="setup-acts">
        <a class="desk-button" href={hashOf({ kind: 'card', formula: formula.id })}>
          {say.dough.card.open}
        </a>
        {running.formulas.has(formula.id) && (
          <a class="desk-button" href={`/api/v1/formulas/${formula.id}`} download={`formula-${formula.id}.json`}>
            {say.dough.file.save}
          </a>
        )}
      </div>
      {last !== null && moment !== null && (
        <>
          <p class="setup-hint">
            {say.dough.changed(
              [moment.day === '' ? words.desk.trays.today : moment.day, moment.clock].join(', '),
              last.device,
            )}
          </p>
          <p>
            <a href={hashOf({ kind: 'part', part: 'versions' })}>{say.dough.versions}</a>
          </p>
        </>
      )}
    </>
  )
}

/** Among the versions that came: the newest hundred. A change of its place in the list is none of the formula. */
export function lastChange(versions: readonly Version[], { id }: Formula): Version | null {
  const isOf = ({ told }: Version) =>
    told.some((one) => one.entity === 'formula' && one.id === id && one.what !== 'moved')
  return versions.find(isOf) ?? null
}
