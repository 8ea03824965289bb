import { formulaFigures } from '../../../../shared-core/dough/formula-figures.ts'
import { newFormula } from '../../../../shared-core/shop/default-dough-room.ts'
import type { Formula } from '../../../../shared-core/shop/formula.ts'
import { useGot } from '../../use-got.ts'
import { FormulaFields } from '../formula/formula-fields.tsx'
import { OpenFormula } from '../formula/open-formula.tsx'
import { FORMULAS } from '../lists.ts'
import { hashOf } from '../route.ts'
import { percentSaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import type { Version } from '../versions.ts'
import { ListPart } from './list-part.tsx'
import { useCount } from './past-versions.tsx'
import '../formula/formula.css'

/** What is mixed, in baker's percent; each formula is a page in itself. */
export function FormulasPart(props: SetUpProps) {
  const { draft, running, say } = props
  const got = useGot<readonly Version[]>('/api/v1/set-up/versions', useCount(running))
  const versions = got.kind === 'got' ? got.value : []
  const line = (formula: Formula) => {
    const { hydration, total } = formulaFigures(draft, formula)
    return `${say.dough.figures.hydration} ${percentSaid(hydration)} · ${say.dough.figures.total} ${percentSaid(total)}`
  }
  return (
    <>
      {draft.ingredients.size === 0 && (
        <p>
          <a href={hashOf({ kind: 'part', part: 'ingredients' })}>{say.dough.noIngredients}</a>
        </p>
      )}
      <ListPart kind={FORMULAS} parts={props} like={newFormula(draft)} line={line}>
        {(formula, set) => <FormulaFields parts={props} formula={formula} versions={versions} set={set} />}
      </ListPart>
      <OpenFormula {...props} />
    </>
  )
}
