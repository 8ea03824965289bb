import type { RunId, VarietyId } from '../../../shared-core/ids.ts'
import type { OrderLine, OrderWay } from '../../../shared-core/orders/order.ts'
import type { AskedLine, OrderDetails } from '../../../shared-core/orders/order-commands.ts'

/** What is typed of an order and of a standing one alike, while it is typed: numbers may be missing, lines empty. */
export interface AskedDraft {
  readonly mark: string
  readonly way: OrderWay
  readonly runId: RunId | null
  /** Null: none is typed. */
  readonly stop: number | null
  /** Local time as an input has it, "06:30"; "" while none is typed. */
  readonly time: string
  readonly lines: readonly LineDraft[]
  readonly isPaid: boolean
}

export interface LineDraft {
  /** Null: mixed. */
  readonly varietyId: VarietyId | null
  readonly without: readonly VarietyId[]
  readonly dozens: number | null
  /** Besides the dozens. */
  readonly pieces: number | null
  readonly sliced: boolean
  readonly bagged: boolean
}

export const NO_DETAILS: OrderDetails = { name: '', phone: '', note: '' }
const NEW_LINE: LineDraft = { varietyId: null, without: [], dozens: null, pieces: null, sliced: false, bagged: false }
export const NEW_ASKED: AskedDraft = {
  mark: '',
  way: 'pickUp',
  runId: null,
  stop: null,
  time: '',
  lines: [NEW_LINE],
  isPaid: false,
}

/** @param varietyId null: mixed */
export function newLine(varietyId: VarietyId | null = null): LineDraft {
  return { ...NEW_LINE, varietyId }
}

/** Pieces that a line comes to by the shop's dozen. */
export function piecesOfLine({ dozens, pieces }: Pick<LineDraft, 'dozens' | 'pieces'>, dozenPieces: number): number {
  return (dozens ?? 0) * dozenPieces + (pieces ?? 0)
}

export function piecesAsked(lines: readonly LineDraft[], dozenPieces: number): number {
  return lines.reduce((sum, line) => sum + piecesOfLine(line, dozenPieces), 0)
}

/** Lines that ask for something, as the command has them. A line of one variety leaves nothing out. */
export function askedLines(lines: readonly LineDraft[]): readonly AskedLine[] {
  return lines
    .filter(({ dozens, pieces }) => (dozens ?? 0) + (pieces ?? 0) > 0)
    .map(({ varietyId, without, dozens, pieces, sliced, bagged }) => ({
      varietyId,
      without: varietyId === null ? without : [],
      dozens: dozens ?? 0,
      pieces: pieces ?? 0,
      sliced,
      bagged,
    }))
}

/** As they were asked for: the dozens that were said, and the pieces besides. */
export function linesTyped(lines: readonly OrderLine[], dozenPieces: number): readonly LineDraft[] {
  return lines.map(({ dozens, pieces, ...line }) => ({
    ...line,
    dozens: dozens === 0 ? null : dozens,
    pieces: pieces === dozens * dozenPieces ? null : Math.max(0, pieces - dozens * dozenPieces),
  }))
}

/**
 * What is written of who it is for, without spaces around.
 * @param typed null: nobody has typed anything  @param known as it stands; the same again is not written anew
 */
export function detailsToSend(
  typed: OrderDetails | null,
  known: OrderDetails | null,
): { readonly details?: OrderDetails } {
  if (typed === null) return {}
  const details = { name: typed.name.trim(), phone: typed.phone.trim(), note: typed.note.trim() }
  const before = known ?? NO_DETAILS
  const isSame = details.name === before.name && details.phone === before.phone && details.note === before.note
  return isSame ? {} : { details }
}

/** Minutes after local midnight; null: no time. @example minuteOf('06:30') // 390 */
export function minuteOf(time: string): number | null {
  const [, hours, minutes] = /^(\d\d):(\d\d)/.exec(time) ?? []
  return hours === undefined || minutes === undefined ? null : Number(hours) * 60 + Number(minutes)
}

/** As an input of times has it. @example timeText(390) // '06:30' */
export function timeText(minute: number): string {
  const two = (value: number) => String(value).padStart(2, '0')
  return `${two(Math.floor(minute / 60) % 24)}:${two(minute % 60)}`
}
