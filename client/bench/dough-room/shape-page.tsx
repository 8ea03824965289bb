import { useState } from 'preact/hooks'
import type { GridItem } from '../sheet.tsx'
import { GridKey, KeyGrid } from '../sheet.tsx'
import { PiecesStepper } from '../sheets/pieces-stepper.tsx'
import { splitRoom } from '../sheets/split.ts'
import { mixName } from './mix-name.ts'
import { doughTexts } from './mixer-page.tsx'
import { PlacePad } from './place-pad.tsx'
import { RoomSheet } from './room-sheet.tsx'
import type { ShapeChoice } from './shape-view.ts'
import { endsWith, leftText, shapeChoices } from './shape-view.ts'
import type { MixPageProps } from './weigh-page.tsx'
import { MixTempPad } from './weigh-page.tsx'
import { tempViews } from './weigh-view.ts'

const PIECES_MAX = 5_000

/** Doughs take a narrower column than what is counted of them. */
const DOUGHS_SHARE = 0.62

/** Dough at the bench: pieces onto trays, a touch for what the plan says, and what becomes of the rest. */
export function ShapePage(props: MixPageProps) {
  const { mix, words, sizes, room } = props
  const [chosenKey, setChosenKey] = useState<string | null>(null)
  const [place, setPlace] = useState<string | null>(null)
  const [typing, setTyping] = useState<'place' | 'dough' | null>(null)
  const choices = shapeChoices(mix, props)
  const chosen = choices.find(({ key }) => key === chosenKey) ?? choices[0] ?? null
  if (typing === 'place') return <PlacePad {...props} now={place} onEnd={() => setTyping(null)} onPlace={setPlace} />
  if (typing === 'dough') return <MixTempPad {...props} temp="dough" onEnd={() => setTyping(null)} />
  const { leftPx, isNarrow } = splitRoom(room)
  const doughsPx = isNarrow ? leftPx : Math.round(leftPx * DOUGHS_SHARE)
  const doughs = choices.map(
    (one): GridItem => ({
      id: `dough ${one.key}`,
      label: one.name,
      details: one.details,
      chosen: one === chosen,
      onPress: () => setChosenKey(one.key),
    }),
  )
  const left = [leftText(mix, chosen, props), ...doughTexts(mix, props).slice(0, 1)]
  return (
    <RoomSheet {...props} title={mixName(mix, props)} detail={left.join(', ')}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={isNarrow ? 2 : 1}
        rows={room.rows}
        widthPx={doughsPx}
        items={doughs}
        nothing={words.room.shape.noDough}
      />
      <Counted
        // What is still to go changes with each tray: then it is counted anew.
        key={`${chosen?.key} ${chosen?.toGo}`}
        {...props}
        all={choices}
        chosen={chosen}
        place={place}
        widthPx={isNarrow ? leftPx : room.widthPx - room.gapPx - doughsPx}
        onType={setTyping}
        onPut={() => setPlace(null)}
      />
    </RoomSheet>
  )
}

interface CountedProps extends MixPageProps {
  readonly all: readonly ShapeChoice[]
  readonly chosen: ShapeChoice | null
  readonly place: string | null
  readonly widthPx: number
  readonly onType: (what: 'place' | 'dough') => void
  readonly onPut: () => void
}

/** How many go onto trays, the keys that do it, and what becomes of the rest. */
function Counted(props: CountedProps) {
  const { chosen, words, sizes, room, widthPx } = props
  const [pieces, setPieces] = useState(() => firstPieces(chosen))
  const { isNarrow } = splitRoom(room)
  return (
    <div class="bench-column" style={{ width: `${widthPx}px` }}>
      {chosen !== null && (
        <>
          <PiecesStepper
            isNarrow={isNarrow}
            words={words}
            value={pieces}
            min={1}
            max={PIECES_MAX}
            steps={[...new Set(isNarrow ? [chosen.trayPieces] : [1, chosen.trayPieces])]}
            detail={pieces % chosen.trayPieces === 0 ? words.line.trays(pieces / chosen.trayPieces) : undefined}
            onChange={setPieces}
          />
          <PutKeys {...props} chosen={chosen} pieces={pieces} />
        </>
      )}
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={isNarrow ? 2 : 5}
        rows={isNarrow ? 3 : 1}
        widthPx={widthPx}
        items={otherKeys(props)}
      />
    </div>
  )
}

/** What the plan says is still to come, else a tray. */
function firstPieces(chosen: ShapeChoice | null): number {
  if (chosen === null) return 1
  return chosen.toGo > 0 ? chosen.toGo : chosen.trayPieces
}

function PutKeys(props: CountedProps & { readonly chosen: ShapeChoice; readonly pieces: number }) {
  const { mix, chosen, pieces, place, words, room, sizes, send, onPut, open, widthPx } = props
  const say = words.room.shape
  const put = (isLast: boolean) => {
    const { doughId, varietyId, stage } = chosen
    const where = place === null ? {} : { place }
    send({ type: 'shape', mixId: mix.id, doughId, varietyId, pieces, stage, ...where, ...(isLast ? { isLast } : {}) })
    if (isLast) open(null)
    else onPut()
  }
  const label = say.put(pieces, chosen.name)
  return (
    <>
      <GridKey
        item={{ id: 'put', label, tone: 'act', onPress: () => put(false) }}
        widthPx={widthPx}
        heightPx={room.keyPx}
        sizes={sizes}
      />
      <GridKey
        item={{
          id: 'put-last',
          label: say.thatIsAll,
          details: endDetails(props, pieces),
          tone: 'strong',
          onPress: () => put(true),
        }}
        widthPx={widthPx}
        heightPx={room.keyPx}
        sizes={sizes}
      />
    </>
  )
}

function endDetails(props: CountedProps, shaped: number): readonly string[] {
  const say = props.words.room.shape
  const { lost, toCome } = endsWith(props.mix, { all: props.all, chosen: props.chosen, shaped }, props)
  // Where a key has room for one of them, it is what would be lost.
  return [say.restLost(lost), ...(toCome.length === 0 ? [] : [`! ${say.stillToCome(toCome)}`])]
}

function otherKeys(props: CountedProps): readonly GridItem[] {
  const { mix, words, send, open, chosen, place, onType } = props
  const [warm] = tempViews(mix, props, ['dough'])
  const say = words.room.shape
  const end = (left: 'lost' | 'spoilt') => {
    send({ type: 'endMix', mixId: mix.id, left })
    open(null)
  }
  const doughId = chosen?.doughId ?? null
  return [
    { id: 'place', label: say.place, details: [place ?? say.noPlace], onPress: () => onType('place') },
    { id: 'temp dough', label: warm?.name ?? '', details: [warm?.text ?? ''], onPress: () => onType('dough') },
    { id: 'check', label: say.check, onPress: () => open({ kind: 'divider', doughId, mixId: mix.id }) },
    { id: 'end', label: say.nothingMore, details: endDetails(props, 0), onPress: () => end('lost') },
    { id: 'spoilt', label: say.spoilt, tone: 'strong', onPress: () => end('spoilt') },
  ]
}
