import { useMemo } from 'preact/hooks'
import type { ChangeoverNow } from '../../../shared-core/day/changeover.ts'
import { changeoverNow } from '../../../shared-core/day/changeover.ts'
import { rulerNow } from '../../parts/ruler-of-day.ts'
import type { ChangeoverWords } from '../../words/desk-today.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import type { Slip } from './changeover-view.ts'
import { SLIP_MS, slips } from './changeover-view.ts'

/** From bagels to the second menu: when, shelf by shelf, and what moves when it slips. */
export function ChangeoverPanel(parts: DeskParts) {
  const { live, state, shop, words } = parts
  const { changeover: say } = words.desk.today
  const { shopClock, nowMs } = live
  const minute = nowMs - (nowMs % 60_000)
  // biome-ignore lint/correctness/useExhaustiveDependencies: filling the oven on paper is not done anew each second.
  const made = useMemo(() => {
    if (shopClock === null) return null
    const ruler = rulerNow(state, nowMs, shopClock)
    const now = changeoverNow(state, nowMs, ruler)
    return now === null ? null : { now, menu: ruler?.secondMenu ?? null, slips: slips(now) }
  }, [state, minute, shopClock])
  if (made === null) return null
  const { now, menu } = made
  return (
    <Panel part="changeover" title={say.title}>
      <p>
        {say.plan(now.fromMs, now.toMs, menu)} {now.slipMs !== 0 && say.slipped(now.slipMs / 60_000)}
      </p>
      <p class="desk-quiet">
        {now.isOver ? say.over : now.ovenEmptyAtMs === null ? say.nothingInside : say.emptyAt(now.ovenEmptyAtMs)}
      </p>
      {now.withoutShelf.length > 0 && <p class="desk-trouble">{say.withoutShelf(now.withoutShelf.length)}</p>}
      <Slips {...parts} now={now} slips={made.slips} />
      <Shelves {...parts} now={now} />
      <p>
        {now.left.length === 0
          ? say.nothingLeft
          : say.left(now.left.filter(({ varietyId }) => shop.varieties.has(varietyId)))}
      </p>
    </Panel>
  )
}

function Slips({
  store,
  words,
  now,
  slips: all,
}: DeskParts & { readonly now: ChangeoverNow; readonly slips: readonly Slip[] }) {
  const { changeover: say } = words.desk.today
  const slip = (slipMs: number) => store.send({ type: 'slipChangeover', slipMs })
  return (
    <ul class="desk-slips">
      {all.map(({ byMs, moved }) => (
        <li key={byMs}>
          <button type="button" onClick={() => slip(now.slipMs + byMs)}>
            {byMs > 0 ? say.later : say.earlier}
          </button>
          <span class="desk-quiet">{movedText(moved, say)}</span>
        </li>
      ))}
      {now.slipMs !== 0 && Math.abs(now.slipMs) !== SLIP_MS && (
        <li>
          <button type="button" onClick={() => slip(0)}>
            {say.asUsual}
          </button>
        </li>
      )}
    </ul>
  )
}

function Shelves({ store, words, now }: DeskParts & { readonly now: ChangeoverNow }) {
  const { changeover: say } = words.desk.today
  return (
    <table>
      <thead>
        <tr>
          <th>{say.columns.shelf}</th>
          <th>{say.columns.state}</th>
          <th>{say.columns.free}</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {now.shelves.map(({ shelfId, name, state, freeAtMs }) => {
          const to = state === 'over' ? 'bagels' : 'secondMenu'
          const label = to === 'bagels' ? say.bagelsAgain : say.overHere
          return (
            <tr key={shelfId}>
              <td>{name}</td>
              <td>{say.state[state]}</td>
              <td>{freeAtMs === null ? '' : words.times.clock(freeAtMs)}</td>
              <td>
                <button
                  type="button"
                  aria-label={`${name}: ${label}`}
                  onClick={() => store.send({ type: 'changeOverShelf', shelfId, to })}
                >
                  {label}
                </button>
              </td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

/** In one sentence after another; a slip that moves nothing says so. */
function movedText(moved: Slip['moved'], say: ChangeoverWords): string {
  const { plannedMore, loadsMoreThatFit, piecesMoreThatFit } = moved
  const texts = [
    say.wouldBe(moved),
    plannedMore === 0 ? '' : say.plannedMore(plannedMore),
    loadsMoreThatFit === 0 ? '' : say.loadsMore(loadsMoreThatFit, piecesMoreThatFit),
    plannedMore === 0 && loadsMoreThatFit === 0 ? say.nothingMoves : '',
  ]
  return texts.filter((text) => text !== '').join(' ')
}
