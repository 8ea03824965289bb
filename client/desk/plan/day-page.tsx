import { useState } from 'preact/hooks'
import type { Plan } from '../../../shared-core/live/plan.ts'
import { hoursOn } from '../../../shared-core/shop/hours.ts'
import { localDate } from '../../live/clock-text.ts'
import { addressOf } from '../place.ts'
import { AdvicePanel } from './advice-panel.tsx'
import { ChosenPanel } from './chosen-panel.tsx'
import { useDayPlan } from './day-plan.ts'
import { HeadPanel } from './head-panel.tsx'
import { LastPanel } from './last-panel.tsx'
import { LoadsTable } from './loads-table.tsx'
import type { DayParts, PlanParts } from './parts.ts'
import { PicturePanel } from './picture-panel.tsx'
import { runningLoads } from './running.ts'
import { SupplyPanel } from './supply-panel.tsx'
import { TriedBar } from './tried-bar.tsx'
import { useTried } from './use-tried.ts'
import type { Wishes } from './wishes.ts'
import { actsOf, isSameWishes, rebased, shownLoads, wishesOf } from './wishes.ts'
import { WishesPanel } from './wishes-panel.tsx'

/** One day's plan: in figures, drawn, and in words. */
export function DayPage(parts: PlanParts) {
  const { say, shop, words, date, state } = parts
  const got = useDayPlan(parts)
  if (hoursOn(shop, date) === null || state.lastDay?.closedOn === date)
    return <p>{say.closed(words.times.date(date))}</p>
  if (!shop.baking.advice) return <AdvicePanel {...parts} />
  if (got.kind !== 'got') {
    return (
      <p class="desk-quiet" role="status">
        {got.kind === 'waiting' ? say.waiting : got.kind === 'no-contact' ? say.noContact : say.notYet}
      </p>
    )
  }
  if (got.value.plan === null) return <NothingKnown {...parts} />
  return <Day {...parts} stands={got.value.plan} />
}

function NothingKnown(parts: PlanParts) {
  const { say, words } = parts
  return (
    <>
      <p class="desk-notice">
        <span>{say.nothingKnown}</span> <a href={addressOf('setUp', 'usual')}>{say.toUsual}</a>{' '}
        <a href={addressOf('salesIn')}>{words.desk.places.salesIn}</a>
      </p>
      <AdvicePanel {...parts} />
    </>
  )
}

/** @param stands the plan without what is only tried */
function Day({ stands, ...parts }: PlanParts & { readonly stands: Plan }) {
  const { say, state, date, room } = parts
  const [chosen, setChosen] = useState<string | null>(null)
  const wishing = useWishing(parts, stands)
  const { plan, wishes, tried, isTrying } = wishing
  const running = date === room.today ? runningLoads(state, parts.shop) : []
  const of: DayParts = {
    ...parts,
    plan,
    wishes,
    running,
    shown: shownLoads(plan, wishes),
    onWishes: wishing.onWishes,
    chosen,
    onChoose: setChosen,
  }
  return (
    <>
      <DoughNote {...of} />
      <div class="desk-parts">
        <HeadPanel {...of} />
        {of.shown.length + running.length === 0 ? <p>{say.nothingMore}</p> : <PicturePanel {...of} />}
        <ChosenPanel {...of} />
        <SupplyPanel {...of} />
        {of.shown.length > 0 && <LoadsTable {...of} />}
        <WishesPanel {...of} />
        <div class="desk-stack">
          <LastPanel {...of} />
          <AdvicePanel {...of} />
        </div>
      </div>
      {isTrying && (
        <TriedBar
          say={say}
          tried={tried}
          before={stands.figures}
          isSet={wishing.isSet}
          onKeep={wishing.onKeep}
          onLeave={wishing.onLeave}
        />
      )}
    </>
  )
}

interface Draft {
  /** What stood when the change began. */
  readonly base: Wishes
  readonly wishes: Wishes
}

/** What is changed here, tried on the server, and kept or left. */
function useWishing({ live, state, store, date, room }: PlanParts, stands: Plan) {
  const asSet = live.asSet ?? state
  const [draft, setDraft] = useState<Draft | null>(null)
  // What was just kept is shown as it was tried until the server has planned with it.
  const [kept, setKept] = useState<{ readonly plan: Plan; readonly over: Plan } | null>(null)
  const own = wishesOf(asSet, date, room.today, (atMs) => localDate(room.clock, atMs))
  const changed = draft === null ? null : rebased(draft.base, own, draft.wishes)
  const tried = useTried(date, changed)
  const keptOf = kept?.over === stands ? kept.plan : null
  const triedOf = tried.kind === 'tried' ? tried.plan : tried.kind === 'waiting' ? tried.last : null
  const shown = (changed === null ? keptOf : triedOf) ?? stands
  return {
    plan: shown,
    tried,
    isTrying: changed !== null,
    isSet: own.pins.length + own.forbids.length > 0,
    wishes: changed ?? own,
    onWishes: (wishes: Wishes) => setDraft(isSameWishes(wishes, own) ? null : { base: own, wishes }),
    onKeep: () => {
      if (changed === null) return
      for (const act of actsOf(asSet, own, changed)) store.send(act)
      setKept(tried.kind === 'tried' ? { plan: tried.plan, over: stands } : null)
      setDraft(null)
    },
    onLeave: () => setDraft(null),
  }
}

/** Of a day that is not open yet: which dough the plan counts on. */
function DoughNote({ say, state, date, words }: DayParts) {
  if (state.day?.label === date) return null
  const wanted = (state.wanted.get(date)?.lines ?? []).reduce((sum, { pieces, ordered }) => sum + pieces + ordered, 0)
  return (
    <p class="desk-notice">
      <span>{wanted === 0 ? say.openDough : say.wantedDough(wanted)}</span>{' '}
      <a href={addressOf('coming', date)}>{words.desk.places.coming}</a>
    </p>
  )
}
