import { Key } from '../parts/key.tsx'
import { KEY_MM_MIN } from '../parts/legibility.ts'
import { useMeasuredWidth } from '../parts/measured-width.ts'
import type { BenchWords } from '../words/bench.ts'
import type { NoticeText } from '../words/words.ts'
import { FittedWords } from './act-key.tsx'
import type { DoneView } from './done-view.ts'
import type { BenchSizes } from './glass.ts'
import { firstFitting } from './key-text.ts'
import type { ShiftKeyView } from './shift-key.ts'

export interface BottomBarProps {
  readonly words: BenchWords
  readonly sizes: BenchSizes
  readonly lastDone: DoneView | null
  /** What has just been taken back, for a moment, in place of what was done last. */
  readonly undone: string | null
  /** Said for a moment, in place of what was done last. */
  readonly flash: string | null
  /** The newest answer to a tap of this screen, until it is put away; null when there is none. */
  readonly notice: NoticeText | null
  /** Things that wait for dry hands. */
  readonly dry: number
  /** What is sounding, in words: a touch says that somebody is coming. Null: nothing is. */
  readonly sounding: string | null
  /** Null where each shelf has its own "differs". */
  readonly differs: { readonly isOn: boolean; readonly onPress: () => void } | null
  /** The kettle's care, or the list of the shift; null while there is nothing of it to say. */
  readonly shift: ShiftKeyView | null
  readonly onShift: (key: ShiftKeyView) => void
  /** Takes back the act that is named beside the key. */
  readonly onTakeBack: (done: DoneView) => void
  /** Shows all that was done, where something else is said beside the key. */
  readonly onDone: () => void
  readonly onDry: () => void
  readonly onMore: () => void
  readonly onComing: () => void
}

/** What hands need that is not an act of the line: taking back, confirming, all the rest. */
export function BottomBar(props: BottomBarProps) {
  const { words, sizes, lastDone, undone, flash, notice, dry, sounding, differs } = props
  const { done, shelf, more, top } = words.bench
  const last = lastDone === null ? [done.nothingHere] : [lastDone.text, lastDone.short]
  const said = notice === null ? last : [notice.text, notice.title]
  const forNow = undone ?? (differs?.isOn === true ? shelf.touchWhatDiffers : flash)
  const texts = forNow === null ? said : [forNow]
  const isFull = sounding !== null && props.shift !== null && differs !== null
  return (
    <footer class={isFull ? 'bench-bottom bench-bottom-full' : 'bench-bottom'}>
      <div class="bench-bottom-key">
        <TakeBackKey {...props} isNamed={texts === last} />
      </div>
      <Told
        texts={texts}
        isTrouble={notice !== null && texts === said}
        isStriped={lastDone?.isOutOfWindow === true && texts === last}
        sizes={sizes}
      />
      {sounding !== null && (
        <div class="bench-bottom-key">
          <Key onPress={props.onComing}>
            <span class="bench-label">{top.coming}</span>
            <span class="bench-small">{sounding}</span>
          </Key>
        </div>
      )}
      {props.shift !== null && <ShiftKey {...props} view={props.shift} />}
      {differs !== null && (
        <div class="bench-bottom-key">
          <Key chosen={differs.isOn} onPress={differs.onPress}>
            <span class="bench-label">{shelf.differs}</span>
          </Key>
        </div>
      )}
      <div class="bench-bottom-key">
        <Key tone={dry > 0 ? 'strong' : 'plain'} onPress={props.onDry}>
          <span class="bench-label">{done.dryHands}</span>
          <span class="bench-small">{dry === 0 ? done.nothingToConfirm : done.toConfirm(dry)}</span>
        </Key>
      </div>
      <div class="bench-bottom-key">
        <Key onPress={props.onMore}>
          <span class="bench-label">{more.title}</span>
        </Key>
      </div>
    </footer>
  )
}

/** In least keys: a step's name in two rows. */
const SHIFT_KEYS = 1.9
/** Edges and inner space of the key, both sides together; `keys.css` has the same. */
const SHIFT_PAD_MM = { across: 5.4, up: 2.4 } as const

function ShiftKey({ view, sizes, words, onShift }: BottomBarProps & { readonly view: ShiftKeyView }) {
  const { what, details, tone } = view
  const widthPx = Math.round(SHIFT_KEYS * KEY_MM_MIN * sizes.mmPx)
  const stripesPx = tone === 'late' ? STRIPES_MM * sizes.mmPx : 0
  const room = {
    widthPx: widthPx - SHIFT_PAD_MM.across * sizes.mmPx - stripesPx,
    heightPx: (KEY_MM_MIN - SHIFT_PAD_MM.up) * sizes.mmPx,
    actPx: sizes.labelPx,
    minPx: sizes.minPx,
  }
  return (
    <div class="bench-bottom-key bench-shift-key" style={{ width: `${widthPx}px` }}>
      <Key tone={tone} name={[what, ...details].join(', ')} onPress={() => onShift(view)}>
        <FittedWords
          view={{ what, when: '', contents: details, notes: [] }}
          room={{ ...room, moreText: words.bench.shelf.more, allText: '' }}
        />
      </Key>
    </div>
  )
}

/**
 * One touch takes back the act that is named beside the key, and no other: while something else is said there it shows
 * the list, and for a moment after a taking back it rests, so that a second touch does not undo one more.
 */
function TakeBackKey(props: BottomBarProps & { readonly isNamed: boolean }) {
  const { words, lastDone, undone, isNamed, onTakeBack, onDone } = props
  const { told } = words
  const { done } = words.bench
  const why = lastDone === null ? done.nothingYet : isNamed && lastDone.refusal !== null ? done.notThis : ''
  const isOut = undone !== null || why !== ''
  return (
    <Key
      tone={isOut ? 'plain' : 'strong'}
      refusal={isOut ? why : undefined}
      name={isNamed && lastDone !== null ? `${told.takeBack}: ${lastDone.refusal ?? lastDone.text}` : undefined}
      onPress={() => (isNamed && lastDone !== null ? onTakeBack(lastDone) : onDone())}
    >
      <span class="bench-label">{told.takeBack}</span>
    </Key>
  )
}

/** Stripes before the words, and the space after them; `bench.css` has the same. */
const STRIPES_MM = 5

interface ToldProps {
  readonly texts: readonly string[]
  readonly isTrouble: boolean
  /** It was too early or too late. */
  readonly isStriped: boolean
  readonly sizes: BenchSizes
}

/** What was done last, or what a person should know, as far as it fits beside the keys. */
function Told({ texts, isTrouble, isStriped, sizes }: ToldProps) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const roomPx = isStriped ? widthPx - STRIPES_MM * sizes.mmPx : widthPx
  const rows = firstFitting(texts, { widthPx: roomPx, heightPx: KEY_MM_MIN * sizes.mmPx, minPx: sizes.minPx })
  const kinds = ['bench-told', ...(isTrouble ? ['bench-trouble'] : []), ...(isStriped ? ['bench-told-striped'] : [])]
  return (
    <div ref={ref} class={kinds.join(' ')} role="status" aria-label={texts[0]}>
      {rows.map((row) => (
        <span key={row} class="bench-row">
          {row}
        </span>
      ))}
    </div>
  )
}
