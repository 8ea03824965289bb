import { useState } from 'preact/hooks'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { ShelfId } from '../../../shared-core/ids.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { capitalised } from '../../words/joined.ts'
import type { GridItem, SheetParts } from '../sheet.tsx'
import { KeyGrid, Sheet } from '../sheet.tsx'
import type { OpenSheet } from './open-sheet.ts'

export interface HeatSheetProps extends SheetParts {
  readonly shop: Shop
  /** Null: the oven as a whole. */
  readonly shelfId: ShelfId | null
  readonly send: (act: Act) => void
  readonly open: (sheet: OpenSheet) => void
}

/** No oven of the trade is hotter in either unit. */
const DIGITS_MAX = 3
const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const

/** The oven's heat, typed with keys that wet hands can hit. */
export function HeatSheet(props: HeatSheetProps) {
  const { shop, shelfId, words, sizes, room, send, open } = props
  const [typed, setTyped] = useState('')
  const { change: say } = words.shift
  const unit = shop.profile.temperature
  const place = shelfId === null ? say.wholeOven : capitalised(words.line.shelf(shelfId))
  const digit = (text: string): GridItem => ({
    id: `digit ${text}`,
    label: text,
    onPress: () => setTyped((before) => `${before}${text}`.replace(/^0+/, '').slice(0, DIGITS_MAX)),
  })
  const items: readonly GridItem[] = [
    ...DIGITS.map(digit),
    { id: 'clear', label: say.wipeOut, onPress: () => setTyped('') },
    digit('0'),
    {
      id: 'save',
      label: say.save,
      tone: 'act',
      refusal: typed === '' ? say.typeFirst : undefined,
      onPress: () => {
        send({ type: 'readOven', shelfId, degrees: Number(typed), unit })
        open({ kind: 'changeover', part: 'heat' })
      },
    },
  ]
  return (
    <Sheet {...props} title={typed === '' ? say.typing(place, unit) : `${place}: ${typed} °${unit}`}>
      <KeyGrid
        words={words}
        sizes={sizes}
        room={room}
        columns={3}
        rows={Math.max(4, room.rows)}
        widthPx={room.widthPx}
        items={items}
      />
    </Sheet>
  )
}
