import { Key } from '../parts/key.tsx'
import { KEY_MM_MIN } from '../parts/legibility.ts'
import type { RingState } from '../parts/ring.tsx'
import { Ring } from '../parts/ring.tsx'
import type { BenchSizes } from './glass.ts'
import type { KeyRoom, KeyRow, KeyWords } from './key-text.ts'
import { keyText } from './key-text.ts'

export interface ActKeyProps {
  readonly view: KeyWords & { readonly tone: 'plain' | 'act' | 'late' }
  readonly ring: { readonly fraction: number; readonly state: RingState; readonly label?: string | undefined } | null
  /** The ring's size where it stands above the words; left of them when left out. */
  readonly ringAbovePx?: number | undefined
  readonly widthPx: number
  readonly heightPx: number
  readonly sizes: BenchSizes
  /** Smaller acts, where three columns of keys must stand side by side. */
  readonly isDense?: boolean | undefined
  readonly isUnconfirmed?: boolean | undefined
  /** It stands at the door of a rotating oven. */
  readonly isAtDoor?: boolean | undefined
  /** Advised, and set by nobody: its left edge is dotted. */
  readonly isAdvised?: boolean | undefined
  readonly name: string
  readonly moreText: (count: number) => string
  readonly allText: string
  readonly onPress: () => void
}

/** A key that does an act of the line: its countdown as a ring, the act, and of what, as far as it fits. */
export function ActKey(props: ActKeyProps) {
  const {
    view,
    ring,
    ringAbovePx,
    widthPx,
    heightPx,
    sizes,
    isDense = false,
    isUnconfirmed = false,
    isAtDoor = false,
    isAdvised = false,
    name,
  } = props
  const box = keyBox(props)
  const room = { ...box, actPx: isDense ? sizes.labelPx : sizes.actPx, minPx: sizes.minPx }
  const kinds = [
    'bench-act',
    ...(isUnconfirmed ? ['bench-act-unconfirmed'] : []),
    ...(isAtDoor ? ['bench-act-door'] : []),
    ...(isAdvised ? ['bench-act-advised'] : []),
    ...(ringAbovePx === undefined ? [] : ['bench-act-above']),
  ]
  return (
    <div class={kinds.join(' ')} style={{ width: `${widthPx}px`, height: `${heightPx}px` }}>
      <Key
        onPress={props.onPress}
        tone={view.tone}
        shape={ring === null || ringAbovePx !== undefined ? 'box' : 'ring'}
        name={name}
      >
        {ring !== null && <Ring {...ring} size={box.ringPx} />}
        <FittedWords view={view} room={{ ...room, moreText: props.moreText, allText: props.allText }} />
      </Key>
    </div>
  )
}

/** As many of the words as there is room for. */
export function FittedWords({ view, room }: { readonly view: KeyWords; readonly room: KeyRoom }) {
  const { rows, actPx, rowEm } = keyText(view, room)
  return (
    <span class="bench-act-words" style={{ lineHeight: rowEm }}>
      {rows.map((row, index) => (
        // Rows have no identity of their own: the first is the first.
        <Row key={index} row={row} actPx={actPx} />
      ))}
    </span>
  )
}

function Row({ row, actPx }: { row: KeyRow; actPx: number }) {
  if (row.kind !== 'act') return <span class={`bench-row bench-row-${row.kind}`}>{row.text}</span>
  return (
    <span class="bench-row bench-row-act" style={{ fontSize: `${actPx}px` }}>
      <strong>{row.strong}</strong>
      {row.rest !== '' && ` ${row.rest}`}
    </span>
  )
}

/** In millimetres: the edge, the space inside it, and the stripes of a late key; the styles of `bench.css` are the same. */
const EDGE_MM = 0.45
const PAD_MM = { ringLeft: 1.2, left: 2.4, right: 2, up: 0.8, gap: 1.8, stripes: 5 } as const

/** Keys narrower than this many least keys hold a smaller ring. */
const NARROW_KEYS = 2.6

/** Room for words inside a key, beside or under its ring. */
function keyBox({ view, ring, ringAbovePx, widthPx, heightPx, sizes }: ActKeyProps) {
  const mm = (value: number) => value * sizes.mmPx
  const right = view.tone === 'late' ? PAD_MM.right + PAD_MM.stripes : PAD_MM.right
  const innerPx = heightPx - 2 * mm(EDGE_MM + PAD_MM.up)
  if (ringAbovePx !== undefined) {
    const width = Math.floor(widthPx - 2 * mm(EDGE_MM) - mm(PAD_MM.left + right))
    return { ringPx: ringAbovePx, widthPx: width, heightPx: innerPx - ringAbovePx }
  }
  // A ring of a key's whole height would leave no room for words in a narrow key.
  const ringPx =
    ring === null
      ? 0
      : Math.round(
          Math.min(innerPx - mm(1.5), widthPx * (widthPx < NARROW_KEYS * KEY_MM_MIN * sizes.mmPx ? 0.21 : 0.27)),
        )
  const left = ring === null ? PAD_MM.left : PAD_MM.ringLeft + PAD_MM.gap
  return { ringPx, widthPx: Math.floor(widthPx - 2 * mm(EDGE_MM) - mm(left + right) - ringPx), heightPx: innerPx }
}
