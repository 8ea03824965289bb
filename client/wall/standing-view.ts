import type { QuietStage, Standing } from '../../shared-core/line/quiet.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { StandingWords, WallWords } from '../words/wall.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'
import { fits, shortened, widthOf } from './text-lines.ts'

/** What proofs, is chilled, stands on the rack and cools, side by side: the wall while the line is quiet. */
export interface StandingView {
  readonly columns: readonly StandingColumn[]
  readonly columnPx: number
  readonly namePx: number
  readonly detailPx: number
}

export interface StandingColumn {
  readonly stage: QuietStage
  readonly title: string
  readonly items: readonly StandingItem[]
  /** "3 more"; "" when all are shown. */
  readonly rest: string
}

export interface StandingItem {
  readonly key: string
  readonly name: string
  readonly count: string
  readonly detail: string
  readonly isTrouble: boolean
  /** Drawn one by one: trays, of which so many are ready. Null where nothing stands on trays. */
  readonly trays: { readonly all: number; readonly ready: number } | null
}

export interface StandingInput {
  readonly standing: readonly Standing[]
  readonly wall: WallWords
  readonly box: Box
  readonly sizes: TextSizes
}

const STAGES: readonly QuietStage[] = ['proof', 'chill', 'rack', 'cool']
const LINE = 1.2
/** The strip of trays, and the space to the next dough, in parts of the small size. */
export const TRAY = 0.5
const ITEM_GAP = 0.55

/** Only stages that hold something, in the largest text in which all fit. */
export function standingView(input: StandingInput): StandingView {
  const { standing, wall, box, sizes } = input
  const { minPx, labelPx, actPx } = sizes
  const stages = STAGES.filter((stage) => standing.some((one) => one.stage === stage))
  const gapPx = minPx
  const columnPx = Math.floor((box.width - (stages.length - 1) * gapPx) / Math.max(1, stages.length))
  const heightPx = box.height - headingHeight(minPx)
  const itemPx = (namePx: number, detailPx: number) => (namePx + detailPx) * LINE + (TRAY + ITEM_GAP) * minPx
  const most = Math.max(...stages.map((stage) => standing.filter((one) => one.stage === stage).length))
  const nameFits = (namePx: number) =>
    standing.every(({ doughName, pieces }) => widthOf(`${doughName} ${pieces}`, namePx, 'strong') <= columnPx)
  const ways = [
    { namePx: actPx, detailPx: labelPx },
    { namePx: actPx, detailPx: minPx },
    { namePx: labelPx, detailPx: minPx },
  ]
  const large = ways.find((way) => nameFits(way.namePx) && most * itemPx(way.namePx, way.detailPx) <= heightPx)
  const way = large ?? { namePx: minPx, detailPx: minPx }
  const room = Math.floor((heightPx + ITEM_GAP * minPx) / itemPx(way.namePx, way.detailPx))
  const columns = stages.map((stage): StandingColumn => {
    const all = standing.filter((one) => one.stage === stage).sort(byUrgency)
    const shown = all.length > room ? all.slice(0, Math.max(0, room - 1)) : all
    const items = shown.map((one) => itemOf(one, wall.standing, { columnPx, ...way }))
    return {
      stage,
      title: wall.standing.titles[stage],
      items,
      rest: shown.length < all.length ? wall.more(all.length - shown.length) : '',
    }
  })
  return { columns, columnPx, ...way }
}

interface ItemRoom {
  readonly columnPx: number
  readonly namePx: number
  readonly detailPx: number
}

function itemOf(one: Standing, words: StandingWords, { columnPx, namePx, detailPx }: ItemRoom): StandingItem {
  const count = String(one.pieces)
  const room = { roomPx: columnPx - widthOf(` ${count}`, namePx, 'strong'), fontPx: namePx, weight: 'strong' } as const
  const details = detailsOf(one, words)
  return {
    key: `${one.stage} ${one.doughId}`,
    name: shortened(one.doughName, room),
    count,
    detail: details.find((text) => fits(text, { roomPx: columnPx, fontPx: detailPx })) ?? '',
    isTrouble: one.status === 'over',
    trays:
      one.trays === null ? null : { all: one.trays, ready: Math.floor((one.readyPieces / one.pieces) * one.trays) },
  }
}

/** The richest first; what is too wide for its column gives way to the next. */
function detailsOf({ stage, status, pieces, readyPieces, opensAtMs, closesAtMs }: Standing, words: StandingWords) {
  if (status === 'over' && closesAtMs !== null) return [words.over(closesAtMs)]
  if (status === 'waiting') return opensAtMs === null ? [] : [words.readyAt(opensAtMs)]
  const state = readyPieces < pieces ? words.readyPart(readyPieces) : words.ready
  if (closesAtMs === null || stage === 'chill') return [state]
  return [`${state}, ${words.goodTo(closesAtMs)}`, words.goodTo(closesAtMs), state]
}

/** Over first, then ready, then waiting: what somebody could act on. */
function byUrgency(one: Standing, other: Standing): number {
  const rank = { over: 0, ready: 1, waiting: 2 }
  return rank[one.status] - rank[other.status]
}
