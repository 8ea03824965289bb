import type { ComponentChildren, TargetedEvent, TargetedKeyboardEvent, TargetedPointerEvent } from 'preact'
import { useContext, useState } from 'preact/hooks'
import type { Press } from './press-guard.ts'
import { isOwnTouch, SAME_TOUCH_MS } from './press-guard.ts'
import { GlassContext } from './screen-size.tsx'

/** `act` is inverted: do it now. `late` is inverted and striped. `strong` has a dark edge: it undoes or ends something. */
export type KeyTone = 'plain' | 'strong' | 'act' | 'late'

export interface KeyProps {
  readonly onPress: () => void
  readonly label?: string | undefined
  /** A second, smaller line. */
  readonly detail?: string | undefined
  /** Instead of label and detail. */
  readonly children?: ComponentChildren
  readonly tone?: KeyTone | undefined
  /** `ring`: its left end is round, to hold a ring. */
  readonly shape?: 'box' | 'ring' | undefined
  /** Why it cannot be pressed now, in words, in place of the detail. With it the key does nothing. */
  readonly refusal?: string | undefined
  /** For a key that stays down: whether it is. */
  readonly chosen?: boolean | undefined
  /** For those who listen, where the visible words do not suffice. */
  readonly name?: string | undefined
  /** A second touch at the same place within this time is the same touch. 250 when left out. */
  readonly sameTouchMs?: number | undefined
}

/**
 * A touch key of at least 20 mm both ways, inside `ScreenSize`. It acts when touched, not when let go: a knuckle slides,
 * and a browser drops the click of a touch that slid. Held keys of a keyboard act once.
 */
export function Key(props: KeyProps) {
  const { tone = 'plain', shape = 'box', refusal, chosen, name } = props
  const [isDown, setIsDown] = useState(false)
  const press = usePress(props)
  const letGo = () => setIsDown(false)
  return (
    <button
      type="button"
      class={`key key-${tone} key-${shape}`}
      data-block={tone === 'act' || tone === 'late' ? tone : undefined}
      data-down={isDown}
      aria-disabled={refusal !== undefined}
      aria-pressed={chosen}
      aria-label={name}
      onPointerDown={(event: TargetedPointerEvent<HTMLButtonElement>) => {
        if (event.button !== 0) return
        setIsDown(true)
        press({ atMs: event.timeStamp, place: { x: event.clientX, y: event.clientY } })
      }}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onPointerLeave={letGo}
      onClick={(event) => {
        // Of a pointer the press has been taken already; a keyboard and a screen reader click without one.
        if (event.detail === 0) press({ atMs: event.timeStamp, place: null })
      }}
      onKeyDown={ignoreRepeat}
      onContextMenu={stop}
    >
      <KeyFace {...props} />
    </button>
  )
}

function usePress({ onPress, refusal, sameTouchMs = SAME_TOUCH_MS }: KeyProps): (press: Press) => void {
  const glass = useContext(GlassContext)
  return (press) => {
    if (refusal !== undefined || !isOwnTouch(glass.last, press, { withinMs: sameTouchMs, mmPx: glass.mmPx })) return
    glass.last = press
    onPress()
  }
}

function KeyFace({ label, detail, children, refusal }: KeyProps) {
  const small = refusal ?? detail
  return (
    <>
      {children}
      {label !== undefined && <span class="key-label">{label}</span>}
      {small !== undefined && <span class={refusal === undefined ? 'key-detail' : 'key-refusal'}>{small}</span>}
    </>
  )
}

function ignoreRepeat(event: TargetedKeyboardEvent<HTMLButtonElement>) {
  if (event.repeat) event.preventDefault()
}

/** A long touch would open the browser's menu. */
function stop(event: TargetedEvent<HTMLButtonElement>) {
  event.preventDefault()
}
