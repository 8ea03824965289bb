import type { EpochMs } from '../../shared-core/units.ts'
import type { LiveState, Notice } from '../live/shop-store.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import { shortened } from './text-lines.ts'

/** One line across the wall for what is wrong. */
export interface StatusView {
  readonly text: string
  readonly isTrouble: boolean
}

export interface StatusInput extends Pick<LiveState, 'connection' | 'notices' | 'shown'> {
  readonly nowMs: EpochMs
  readonly words: Words
  readonly wall: WallWords
  readonly widthPx: number
  readonly sizes: TextSizes
}

/** A refusal on the wall is read at once or not at all; nobody comes to put it away. */
export const NOTICE_SHOWN_MS = 20_000

/** The link first: without it all else may be out of date. Null while all is well, or nothing is shown yet anyway. */
export function statusView(input: StatusInput): StatusView | null {
  const { connection, shown, nowMs, words, widthPx, sizes } = input
  const room = { roomPx: widthPx - 2 * sizes.minPx, fontPx: sizes.minPx, weight: 'strong' } as const
  if (shown === null && connection.phase === 'connecting') return null
  const link = isPassing(connection, nowMs) ? '' : words.live.connection(connection)
  if (link !== '') return { text: shortened(link, room), isTrouble: connection.phase !== 'catching-up' }
  const notice = noticeText(input)
  return notice === null ? null : { text: shortened(notice, room), isTrouble: true }
}

/** A screen that is linked again within a breath need not move everything for it. */
const BREATH_MS = 2_000

function isPassing({ phase, sinceMs }: StatusInput['connection'], nowMs: EpochMs): boolean {
  return (phase === 'away' || phase === 'catching-up') && nowMs - sinceMs < BREATH_MS
}

function noticeText({ notices, nowMs, words, wall }: StatusInput): string | null {
  const questions = notices.filter((notice) => notice.kind === 'ask').length
  if (questions > 0) return wall.questions(questions)
  const standing = notices.find((notice) => notice.kind === 'queue-full' || notice.kind === 'not-saved')
  if (standing !== undefined) return words.live.notice(standing).title
  const fresh = notices.filter((notice) => isFresh(notice, nowMs))
  const last = fresh[fresh.length - 1]
  if (last === undefined) return null
  return last.kind === 'refused' ? words.answers.refusal(last.refusal) : words.live.notice(last).title
}

function isFresh({ atMs }: Notice, nowMs: EpochMs): boolean {
  return nowMs - atMs < NOTICE_SHOWN_MS
}
