import { outlookNow } from '../../parts/outlook-now.ts'
import { Rod } from '../../parts/rod.tsx'
import { rulerNow } from '../../parts/ruler-of-day.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { DeskParts } from '../desk-screen.tsx'
import { Panel } from '../panel.tsx'
import type { BriefRod } from './rods-view.ts'
import { briefRods } from './rods-view.ts'

const ROD_PX = 96
const RINGS = 8

/** What is left, rod by rod, with how it is known. */
export function RodsPanel({ live, state, words }: DeskParts) {
  const { rods: say } = words.desk.today
  const { shopClock, nowMs } = live
  const closeMs = shopClock === null ? null : (rulerNow(state, nowMs, shopClock)?.toMs ?? null)
  const all = briefRods(state, nowMs, { closeMs, outlook: outlookNow(live, state) })
  return (
    <Panel part="rods" title={say.title} isWide>
      {all.length === 0 ? (
        <p class="desk-quiet">{say.none}</p>
      ) : (
        <ul class="desk-rods">
          {all.map((rod) => (
            <li key={rod.varietyId}>
              <OneRod rod={rod} words={words} />
            </li>
          ))}
        </ul>
      )}
    </Panel>
  )
}

function OneRod({ rod, words }: { readonly rod: BriefRod; readonly words: DeskWords }) {
  const { rods: say } = words.desk.today
  const { name, pieces, isAbout, onTheWay, kept, cooling, dayOld, next, known, goneSinceMs, ahead } = rod
  const texts = [
    known === null ? '' : `${say.known[known.how]} ${words.times.clock(known.atMs)}`,
    goneSinceMs === null ? '' : say.gone(goneSinceMs),
    cooling === 0 ? '' : say.cooling(cooling),
    kept === 0 ? '' : say.kept(kept),
    dayOld === 0 ? '' : say.dayOld(dayOld),
    next === null ? '' : say.coming(next.pieces, next.atMs),
    pieces === 0 ? '' : say.ahead(ahead, next?.atMs ?? null),
  ]
  return (
    <>
      <Rod pieces={pieces} onTheWay={onTheWay} kept={kept} maxRings={RINGS} height={ROD_PX} width={ROD_PX * 0.5} />
      <span class="desk-rod-text">
        <strong class="desk-rod-number" title={say.spoken(name, pieces)}>
          {isAbout ? `≈ ${pieces}` : pieces}
        </strong>
        <span class="desk-rod-name">{name}</span>
        <span class="desk-quiet desk-small">{texts.filter((text) => text !== '').join(' · ')}</span>
      </span>
    </>
  )
}
