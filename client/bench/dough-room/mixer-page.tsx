import { useState } from 'preact/hooks'
import type { Mix, MixTemp } from '../../../shared-core/dough/mix.ts'
import { frictionKey } from '../../../shared-core/dough/mix-water.ts'
import { milliCelsiusOf } from '../../../shared-core/shop/temperature.ts'
import { Ring } from '../../parts/ring.tsx'
import { shownDegrees, shownDifference } from '../../parts/shop-degrees.ts'
import type { GridItem } from '../sheet.tsx'
import { KeyGrid } from '../sheet.tsx'
import { splitRoom } from '../sheets/split.ts'
import { stageClock } from './clock-ring.ts'
import { mixName } from './mix-name.ts'
import { nextStage, stageBefore } from './mix-steps.ts'
import type { RoomParts } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'
import { callOf, foldsOf, onText } from './room-view.ts'
import type { MixPageProps } from './weigh-page.tsx'
import { MixTempPad } from './weigh-page.tsx'
import { tempViews, weighView } from './weigh-view.ts'

/** What is read of a mixed dough. */
const AFTER_MIXING = ['dough', 'water'] as const satisfies readonly MixTemp[]
/** Of the large ring, in keys. */
const RING_KEYS = 2.4

/** A mix that turns, rests or ferments in bulk: its countdown, the call at the mix-in minute, folds, and the way on. */
export function MixerPage(props: MixPageProps) {
  const { mix, words, room, sizes, nowMs } = props
  const [typing, setTyping] = useState<MixTemp | null>(null)
  if (typing !== null) return <MixTempPad {...props} temp={typing} onEnd={() => setTyping(null)} />
  const { leftPx, rightPx, isNarrow } = splitRoom(room)
  const { ring } = stageClock(mix.sinceMs, mix.until, nowMs, words.times)
  const say = words.room.mix
  const called = callText(props)
  const items = [
    ...callItems(props),
    onItem(props),
    ...tempViews(mix, props, AFTER_MIXING).map(
      ({ temp, name, text }): GridItem => ({
        id: `temp ${temp}`,
        label: name,
        details: [text],
        onPress: () => setTyping(temp),
      }),
    ),
    ...backItem(props),
  ].filter((item) => item !== null)
  return (
    <RoomSheet {...props} title={mixName(mix, props)} detail={say.forDate(mix.bakeDate)}>
      <div class="bench-column dough-now" style={{ width: `${leftPx}px` }}>
        <Ring {...ring} size={Math.round(RING_KEYS * room.keyPx)} />
        <span class="bench-label">{say.stage(mix.stage)}</span>
        {called !== null && <span class="bench-label">{called}</span>}
        {doughTexts(mix, props).map((text) => (
          <span key={text}>{text}</span>
        ))}
        {mix.stage === 'mixing' && <span class="bench-quiet">{say.caution}</span>}
      </div>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={isNarrow ? 1 : 2}
        rows={isNarrow ? items.length : room.rows}
        widthPx={rightPx}
        items={items}
      />
    </RoomSheet>
  )
}

/** The mix-in lines that are not weighed in, or the next fold. */
function callItems(props: MixPageProps): readonly GridItem[] {
  const { mix, words, send, nowMs } = props
  const say = words.room.mix
  const call = callOf(mix, nowMs)
  if (call === null) return []
  const tone = nowMs >= call.atMs ? 'act' : 'strong'
  if (call.kind === 'fold') {
    const { fold = 0, atMs } = call
    const onPress = () => send({ type: 'foldMix', mixId: mix.id, fold })
    return [{ id: 'fold', label: say.fold(fold, foldsOf(mix)), details: [words.times.at(atMs)], tone, onPress }]
  }
  return weighView(mix, props)
    .lines.filter(({ isMixIn, isDone }) => isMixIn && !isDone)
    .map((line) => ({
      id: `line ${line.key}`,
      label: line.name,
      details: [line.weight, nowMs >= call.atMs ? say.mixInsNow : say.mixInsAt(call.atMs)],
      tone,
      onPress: () => send({ type: 'weighLine', mixId: mix.id, line: line.key, done: true }),
    }))
}

/** Mix-ins that stand weighed out already are called for in words. */
function callText({ mix, words, nowMs }: MixPageProps): string | null {
  const call = callOf(mix, nowMs)
  if (call === null || call.kind === 'fold') return null
  const say = words.room.mix
  return nowMs >= call.atMs ? say.mixInsNow : say.mixInsAt(call.atMs)
}

function onItem(props: MixPageProps): GridItem | null {
  const { mix, send, nowMs, words } = props
  const to = nextStage(mix)
  if (to === null) return null
  const { tone } = stageClock(mix.sinceMs, mix.until, nowMs, words.times)
  return {
    id: 'on',
    label: onText(mix, props),
    details: mix.until === null ? [] : [words.times.at(mix.until.targetAtMs)],
    tone: tone === 'plain' ? 'strong' : tone,
    onPress: () => send({ type: 'moveMix', mixId: mix.id, from: mix.stage, to }),
  }
}

function backItem({ mix, words, send }: MixPageProps): readonly GridItem[] {
  const to = stageBefore(mix)
  if (to === null) return []
  const say = words.room.mix
  const onPress = () => send({ type: 'moveMix', mixId: mix.id, from: mix.stage, to })
  return [{ id: 'step-back', label: say.backTo, details: [say.stage(to)], onPress }]
}

/** How warm the dough is against what was wished, and what the mixer has been learnt to warm it by. */
export function doughTexts(mix: Mix, { state, shop, words }: RoomParts): readonly string[] {
  const { mix: say } = words.room
  const unit = shop.profile.temperature
  const read = mix.temps.dough
  const wished = shownDegrees(milliCelsiusOf(mix.formula.doughAt), unit)
  const friction = state.frictions.get(frictionKey(shop, mix))
  const isTaught = friction?.readings.some(({ mixId }) => mixId === mix.id) === true
  return [
    ...(read === null ? [] : [say.doughRead(shownDegrees(milliCelsiusOf(read), unit), wished)]),
    ...(friction === undefined
      ? []
      : [say.friction(shownDifference(friction.milliCelsius, unit), friction.readings.length)]),
    ...(read === null || isTaught ? [] : [say.notTaught]),
  ]
}
