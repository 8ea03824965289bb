import type { BakingCostJson, CostJson } from '../../../shared-core/live/trust.ts'
import type { CostWay, TrustWords } from '../../words/desk-trust.ts'
import { money } from '../../words/money.ts'
import { Cell, Panel } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'
import type { TrustParts } from './parts.ts'

const WAYS: readonly CostWay[] = ['baked', 'advised', 'lastWeek', 'lastFour']

/** What too many and too few pieces cost, as it was baked, as it was advised and by the simple ways. */
export function CostPanel({ told, cost }: TrustParts & { readonly cost: BakingCostJson }) {
  const { columns } = told.cost
  return (
    <Panel part="cost" title={told.cost.title(cost.days)} isWide>
      {cost.days === 0 ? (
        <p>{told.cost.none}</p>
      ) : (
        <>
          <p class="trust-said">
            {told.cost.words(cost.baked === null ? null : sumOf(cost.baked), sumOf(cost.advised))}
          </p>
          {cost.baked === null && <p class="desk-quiet">{told.cost.unknownBaked}</p>}
          <Sideways name={told.cost.title(cost.days)}>
            <table class="desk-cards trust-cost">
              <thead>
                <tr>
                  <th>{columns.way}</th>
                  <th class="desk-number">{columns.left}</th>
                  <th class="desk-number">{columns.leftCost}</th>
                  <th class="desk-number">{columns.lost}</th>
                  <th class="desk-number">{columns.lostCost}</th>
                  <th class="desk-number">{columns.sum}</th>
                </tr>
              </thead>
              <tbody>
                {WAYS.map((way) => {
                  const one = cost[way]
                  return one === null ? null : <CostRow key={way} told={told} way={way} cost={one} />
                })}
              </tbody>
            </table>
          </Sideways>
          <p class="desk-quiet">{told.cost.hint}</p>
        </>
      )}
    </Panel>
  )
}

interface CostRowProps {
  readonly told: TrustWords
  readonly way: CostWay
  readonly cost: CostJson
}

function CostRow({ told, way, cost }: CostRowProps) {
  const { columns } = told.cost
  return (
    <tr>
      <th>{told.cost.way[way]}</th>
      <Cell label={columns.left} value={Math.round(cost.leftPieces)} />
      <Cell label={columns.leftCost} value={signedMoney(cost.leftCents)} />
      <Cell label={columns.lost} value={Math.round(cost.lostPieces)} />
      <Cell label={columns.lostCost} value={signedMoney(cost.lostCents)} />
      <Cell label={columns.sum} value={sumOf(cost)} strong />
    </tr>
  )
}

function sumOf({ leftCents, lostCents }: CostJson): string {
  return signedMoney(leftCents + lostCents)
}

function signedMoney(cents: number): string {
  return cents < 0 ? `−${money(-cents)}` : money(cents)
}
