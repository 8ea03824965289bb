import { Key } from '../../parts/key.tsx'
import type { NextAct } from '../../parts/kitchen-calls.ts'
import { FittedWords } from '../act-key.tsx'
import type { KitchenLayout } from './kitchen-layout.ts'
import type { KitchenParts } from './kitchen-parts.ts'
import type { NextView } from './next-view.ts'
import { nextView } from './next-view.ts'

export interface KitchenHeadProps extends KitchenParts {
  /** Soonest first. */
  readonly acts: readonly NextAct[]
  readonly layout: KitchenLayout
  readonly onAct: (act: NextAct) => void
}

/** Acts that stand in the bar: a touch does them, and so does the pad of their station. */
export function actsInBar(acts: readonly NextAct[]): readonly NextAct[] {
  return acts.slice(0, BAR_ACTS)
}
const BAR_ACTS = 2
/** The title's width and the way back's, in least keys; the styles have the same. */
const TITLE_KEYS = 1.5
const BACK_KEYS = 1.15

/** What is next, verb first, as keys across the glass; the first has the most room. */
export function KitchenHead(props: KitchenHeadProps) {
  const { acts, words, room, calling, nowMs, layout, onAct, onClose } = props
  const shown = actsInBar(acts)
  const freePx = layout.isNarrow
    ? room.widthPx
    : room.widthPx - Math.round((TITLE_KEYS + BACK_KEYS) * room.keyPx) - 2 * room.gapPx
  const firstPx = layout.isNarrow || shown.length < 2 ? freePx : Math.round((freePx - room.gapPx) * FIRST_SHARE)
  return (
    <header class="kitchen-head">
      <div class="kitchen-title">
        <h1 class="bench-strong">{words.bench.more.kitchen}</h1>
        <div class="bench-quiet">{words.times.clock(nowMs)}</div>
        {calling !== null && (
          <div class="bench-calling kitchen-calling" data-block="act" role="status">
            {calling}
          </div>
        )}
      </div>
      {shown.length === 0 && <div class="kitchen-none bench-label">{words.kitchen.nothingNext}</div>}
      {shown.map((act, index) => (
        <NextKey
          key={act.key}
          {...props}
          view={nextView(act, props)}
          widthPx={index === 0 ? firstPx : layout.isNarrow ? freePx : freePx - firstPx - room.gapPx}
          onPress={() => onAct(act)}
        />
      ))}
      <div class="bench-sheet-back kitchen-back">
        <Key tone="strong" onPress={onClose}>
          <span class="bench-small bench-strong">{words.bench.sheet.back}</span>
        </Key>
      </div>
    </header>
  )
}

const FIRST_SHARE = 0.58

interface NextKeyProps extends KitchenHeadProps {
  readonly view: NextView
  readonly widthPx: number
  readonly onPress: () => void
}

/** Edges and inner space of the key, both sides together; the styles have the same. */
const PAD_MM = { across: 4.4, up: 2.4, stripes: 5 } as const

function NextKey({ view, widthPx, sizes, room, words, onPress }: NextKeyProps) {
  const { tone, whats, when, allergy, notes } = view
  const rowPx = allergy === '' ? 0 : Math.round(sizes.minPx * 1.25)
  const box = {
    widthPx: widthPx - (PAD_MM.across + (tone === 'late' ? PAD_MM.stripes : 0)) * sizes.mmPx,
    heightPx: room.keyPx - PAD_MM.up * sizes.mmPx - rowPx,
    actPx: sizes.actPx,
    minPx: sizes.minPx,
    moreText: words.bench.shelf.more,
    allText: '',
  }
  return (
    <div class="bench-act kitchen-next" style={{ width: `${widthPx}px` }} data-next={view.key}>
      <Key
        tone={tone}
        name={[allergy, whats[0] ?? '', when, ...notes].filter((text) => text !== '').join(', ')}
        onPress={onPress}
      >
        {allergy !== '' && <strong class="kitchen-allergy">{allergy}</strong>}
        <FittedWords view={{ what: whats[0] ?? '', when, contents: notes, notes: [] }} room={box} />
      </Key>
    </div>
  )
}
