import { useState } from 'preact/hooks'
import type { Mix, MixTemp } from '../../../shared-core/dough/mix.ts'
import type { GridItem } from '../sheet.tsx'
import { GridKey, KeyGrid } from '../sheet.tsx'
import { splitRoom } from '../sheets/split.ts'
import { mixName } from './mix-name.ts'
import { nextStage } from './mix-steps.ts'
import { NumberPad } from './number-pad.tsx'
import type { RoomSheetProps } from './room-parts.ts'
import { RoomSheet } from './room-sheet.tsx'
import type { WeighLine, WeighView } from './weigh-view.ts'
import { tempViews, weighView } from './weigh-view.ts'

export interface MixPageProps extends RoomSheetProps {
  readonly mix: Mix
}

/** What the water is reckoned from, in the order in which they are read. */
const BEFORE_MIXING = ['flour', 'room', 'tap', 'preferment'] as const satisfies readonly MixTemp[]

/** The mix sheet: one line stands large, all lie beside it, and the water's temperature comes from what is read here. */
export function WeighPage(props: MixPageProps) {
  const { mix, words, room, shop } = props
  const [typing, setTyping] = useState<MixTemp | null>(null)
  const [chosenKey, setChosenKey] = useState<string | null>(null)
  const say = words.room.mix
  if (typing !== null) return <MixTempPad {...props} temp={typing} onEnd={() => setTyping(null)} />
  const view = weighView(mix, props)
  const shown = view.lines.find(({ key }) => key === chosenKey) ?? view.next
  const { rightPx, isNarrow } = splitRoom(room)
  const temps = tempViews(mix, props, BEFORE_MIXING).map(({ temp, name, text, isRead }) => ({
    id: `temp ${temp}`,
    label: name,
    details: [text],
    tone: isRead ? ('plain' as const) : ('strong' as const),
    onPress: () => setTyping(temp),
  }))
  const start = mix.startAtMs === null ? [] : [say.start(mix.startAtMs)]
  const columns = isNarrow ? 2 : Math.max(2, Math.min(3, Math.floor(rightPx / (1.7 * room.keyPx))))
  return (
    <RoomSheet {...props} title={mixName(mix, props)} detail={[say.forDate(mix.bakeDate), ...start].join(', ')}>
      <NowWeighed {...props} view={view} line={shown} onDone={() => setChosenKey(null)} />
      <div class="dough-lines" style={{ width: `${rightPx}px` }}>
        <KeyGrid
          words={words}
          sizes={props.sizes}
          room={room}
          columns={columns}
          rows={isNarrow ? view.lines.length : Math.max(2, room.rows - 1)}
          widthPx={rightPx}
          items={view.lines.map((line) => lineItem(line, shown, setChosenKey))}
        />
        {shop.doughRoom !== null && (
          <KeyGrid
            words={words}
            sizes={props.sizes}
            room={room}
            columns={isNarrow ? 2 : Math.max(3, temps.length)}
            rows={isNarrow ? 2 : 1}
            widthPx={rightPx}
            items={temps}
          />
        )}
      </div>
    </RoomSheet>
  )
}

function lineItem(line: WeighLine, shown: WeighLine | null, choose: (key: string) => void): GridItem {
  return {
    id: `line ${line.key}`,
    label: line.isDone ? `✓ ${line.weight}` : line.weight,
    details: [line.name, ...line.figures, ...line.details],
    tone: line.isDone ? 'plain' : 'strong',
    chosen: line.key === shown?.key,
    onPress: () => choose(line.key),
  }
}

interface NowWeighedProps extends MixPageProps {
  readonly view: WeighView
  readonly line: WeighLine | null
  readonly onDone: () => void
}

/** The line that stands large, and the two keys: it is weighed out; the mixer starts. */
function NowWeighed(props: NowWeighedProps) {
  const { mix, view, line, words, room, sizes, send, onDone } = props
  const say = words.room.mix
  const { leftPx } = splitRoom(room)
  const weigh: GridItem | null =
    line === null
      ? null
      : {
          id: 'weighed',
          label: line.isDone ? say.notWeighed : say.lineWeighed,
          tone: line.isDone ? 'plain' : 'act',
          onPress: () => {
            send({ type: 'weighLine', mixId: mix.id, line: line.key, done: !line.isDone })
            onDone()
          },
        }
  const to = nextStage(mix)
  const startMixer: GridItem = {
    id: 'start-mixer',
    label: say.startMixing,
    details: [view.toWeigh === 0 ? say.allWeighed : say.toWeigh(view.toWeigh)],
    tone: view.toWeigh === 0 ? 'act' : 'strong',
    onPress: () => to !== null && send({ type: 'moveMix', mixId: mix.id, from: 'planned', to }),
  }
  return (
    <div class="bench-column dough-now" style={{ width: `${leftPx}px` }}>
      <div class="dough-now-line" role="status">
        <span class="bench-label">{line === null ? say.allWeighed : line.name}</span>
        {(line === null ? [] : [line.weight, ...line.figures]).map((text) => (
          <strong key={text} class="dough-figure">
            {text}
          </strong>
        ))}
        {(line?.details ?? []).map((text) => (
          <span key={text} class={line?.isTrouble === true ? 'bench-trouble' : 'bench-label'}>
            {text}
          </span>
        ))}
        {view.water === null && <span class="bench-quiet">{words.room.temps.unknown}</span>}
      </div>
      {weigh !== null && <GridKey item={weigh} widthPx={leftPx} heightPx={room.rowPx} sizes={sizes} />}
      <GridKey item={startMixer} widthPx={leftPx} heightPx={room.keyPx} sizes={sizes} />
    </div>
  )
}

/** One temperature of a mix, typed. */
export function MixTempPad(props: MixPageProps & { readonly temp: MixTemp; readonly onEnd: () => void }) {
  const { mix, temp, shop, words, send, onEnd } = props
  const unit = shop.profile.temperature
  return (
    <NumberPad
      {...props}
      title={`${mixName(mix, props)}: ${words.room.temps.names[temp]}`}
      unit={`°${unit}`}
      canBeNegative
      onBack={onEnd}
      onSave={(thousandths) => {
        send({ type: 'readMix', mixId: mix.id, temp, read: { thousandths, unit } })
        onEnd()
      }}
    />
  )
}
