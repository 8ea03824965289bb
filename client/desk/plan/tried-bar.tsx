import type { PlanFigures } from '../../../shared-core/live/plan.ts'
import type { Cost } from '../../words/desk-plan.ts'
import type { PlanParts } from './parts.ts'
import type { Tried } from './use-tried.ts'

interface BarProps extends Pick<PlanParts, 'say'> {
  readonly tried: Tried
  /** Of the plan as it stands without the change. */
  readonly before: PlanFigures
  /** Something is set already: what all of it costs is another number than what the change does. */
  readonly isSet: boolean
  readonly onKeep: () => void
  readonly onLeave: () => void
}

/** What a change costs, said before it is kept. */
export function TriedBar({ say, tried, before, isSet, onKeep, onLeave }: BarProps) {
  return (
    <div class="desk-notice plan-tried" data-part="plan-tried">
      <p role="status">
        <strong>{say.tried.title}.</strong>{' '}
        {tried.kind === 'waiting'
          ? say.tried.waiting
          : tried.kind === 'failed'
            ? say.tried.failed
            : say.tried.costs(costOf(before, tried.plan.figures))}
      </p>
      {isSet && tried.kind === 'tried' && (
        <p class="desk-quiet">{say.tried.all(say.tried.costs(costOf(tried.free, tried.plan.figures)))}</p>
      )}
      <div class="desk-line">
        <button type="button" class="desk-strong" onClick={onKeep}>
          {say.tried.keep}
        </button>
        <button type="button" onClick={onLeave}>
          {say.tried.leave}
        </button>
      </div>
    </div>
  )
}

/** What another plan does to the day. */
export function costOf(before: PlanFigures, after: PlanFigures): Cost {
  return {
    profitCents: after.profitCents - before.profitCents,
    lost: after.lost - before.lost,
    missing: after.missing - before.missing,
    left: after.left - before.left,
  }
}
