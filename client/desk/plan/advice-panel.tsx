import { Panel } from '../panel.tsx'
import type { PlanParts } from './parts.ts'

/** Whether loads are advised, and what that means. */
export function AdvicePanel({ shop, store, say }: PlanParts) {
  const { advice } = shop.baking
  return (
    <Panel part="plan-advice" title={say.advice.title}>
      <p>{advice ? say.advice.on : say.advice.off}</p>
      <button
        type="button"
        onClick={() =>
          store.send({
            type: 'changeSetUp',
            changes: [{ entity: 'baking', value: { ...shop.baking, advice: !advice } }],
          })
        }
      >
        {advice ? say.advice.turnOff : say.advice.turnOn}
      </button>
    </Panel>
  )
}
