import type { Standing } from '../../shared-core/line/quiet.ts'
import { stuffOf } from '../words/names.ts'
import type { WallWords } from '../words/wall.ts'
import type { KettleInput } from './kettle-view.ts'
import { fits, shortened, widthOf } from './text-lines.ts'
import { whenText } from './when-text.ts'

/** A line below the kettle, across its whole width. */
export interface BelowLine {
  readonly lead: string
  readonly strong: string
  readonly rest: string
  readonly isTrouble: boolean
}

/** What else is next for the kettle, what the rack says, and where there is room, why the next load is called for. */
export function belowLines(input: KettleInput): readonly BelowLine[] {
  const { now, rack, nowMs, words, wall, box, sizes, reason = [] } = input
  const lines: BelowLine[] = []
  if (now.in.length > 0 && now.next !== null) {
    const count = String(now.next.pieces)
    const leadPx = widthOf(`${wall.next}  `, sizes.minPx)
    const roomPx = box.width - leadPx - widthOf(` ${count}`, sizes.minPx, 'strong')
    const name = shortened(stuffOf(now.next, words.names), { roomPx, fontPx: sizes.minPx, weight: 'strong' })
    const rest = whenText(now.next.atMs, nowMs, words)
    const isWide = widthOf(name, sizes.minPx, 'strong') + widthOf(`  ${rest}`, sizes.minPx) > roomPx
    lines.push({ lead: wall.next, strong: `${name} ${count}`, rest: isWide ? '' : rest, isTrouble: false })
  }
  const onRack = rackText(rack, wall)
  if (onRack !== null && fits(onRack.text, { roomPx: box.width, fontPx: sizes.minPx })) {
    lines.push({ lead: onRack.text, strong: '', rest: '', isTrouble: onRack.isTrouble })
  }
  const why =
    lines.length < LINES_MAX ? reason.find((text) => fits(text, { roomPx: box.width, fontPx: sizes.minPx })) : undefined
  return why === undefined ? lines : [...lines, { lead: why, strong: '', rest: '', isTrouble: false }]
}

const LINES_MAX = 2

/** What of the rack changes the next dip: dough that has stood too long, else dough that is not ready. */
function rackText(rack: readonly Standing[], wall: WallWords): { text: string; isTrouble: boolean } | null {
  for (const { doughName, status, closesAtMs } of rack) {
    if (status === 'over' && closesAtMs !== null)
      return { text: wall.standsTooLong(doughName, closesAtMs), isTrouble: true }
  }
  for (const { doughName, status, opensAtMs } of rack) {
    if (status === 'waiting' && opensAtMs !== null)
      return { text: wall.notReady(doughName, opensAtMs), isTrouble: false }
  }
  return null
}
