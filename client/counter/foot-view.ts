import type { State } from '../../shared-core/day/state.ts'
import { changedSince, NEVER_TAKEN_BACK } from '../../shared-core/day/take-back.ts'
import type { Trace } from '../../shared-core/day/trace.ts'
import type { CommandId, DeviceId } from '../../shared-core/ids.ts'
import type { Notice } from '../live/shop-store.ts'
import { fitList } from '../parts/fit.ts'
import type { Weight } from '../parts/text-width.ts'
import { textWidthPx } from '../parts/text-width.ts'
import type { CounterWords } from '../words/counter.ts'
import type { CounterRod } from './counter-rods.ts'
import type { Hand } from './hand.ts'
import { piecesInHand, spreadTo } from './hand.ts'
import type { RodTime } from './rod-text.ts'
import { rodFacts } from './rod-text.ts'

/** A key that sells with one touch. */
export interface SellKey {
  readonly pieces: number
  /** What it sells; null when more than that is in hand. */
  readonly lines: Hand | null
  /** Of a mixed sale, how many of each, or how many kinds. @example "7 + 6" */
  readonly detail: string
  readonly spoken: string
  /** Why it cannot be touched; "" when it can. */
  readonly refusal: string
}

/** Half a dozen, a dozen, and a dozen with the baker's one. */
export const SOLD_TOGETHER = [6, 12, 13] as const

/** What is in hand as it is, and the numbers in which bagels are sold. */
export function sellKeys(hand: Hand, words: CounterWords): readonly SellKey[] {
  return [piecesInHand(hand), ...SOLD_TOGETHER].map((pieces) => {
    const lines = spreadTo(hand, pieces)
    return {
      pieces,
      lines,
      detail: lines === null || lines.length === 1 ? '' : mixText(lines, words),
      spoken: words.counter.hand.sold(lines ?? []),
      refusal: lines === null ? words.counter.hand.tooSmall(piecesInHand(hand)) : '',
    }
  })
}

/** More numbers have no room on a key. */
const MIX_TOLD_MOST = 3

function mixText(lines: Hand, { counter }: CounterWords): string {
  if (lines.length > MIX_TOLD_MOST) return counter.hand.kinds(lines.length)
  return lines.map((line) => line.pieces).join(' + ')
}

/** One line about what is in hand: of one rod all that is known and has room; of several, how many of each. */
export function handText(
  hand: Hand,
  parts: { readonly rods: readonly CounterRod[]; readonly time: RodTime; readonly words: CounterWords },
  room: { readonly roomPx: number; readonly fontPx: number },
): string {
  const { rods, time, words } = parts
  const [first] = hand
  if (first === undefined) return ''
  const rod = rods.find((one) => one.varietyId === first.varietyId)
  if (hand.length > 1 || rod === undefined) {
    return fitList(
      hand.map((line) => words.line.contents([line])),
      room,
      words.counter.day.others,
    )
  }
  const [left = '', ...others] = rodFacts(rod, time, words)
  return firstThatFit([`${rod.name}: ${left}`, ...others], room)
}

/** As many facts as fit, most important first. A first one that is too long is left to the line to shorten. */
function firstThatFit(facts: readonly string[], room: { readonly roomPx: number; readonly fontPx: number }): string {
  let text = facts[0] ?? ''
  for (const fact of facts.slice(1)) {
    const longer = `${text}, ${fact}`
    if (textWidthPx(longer, room.fontPx) > room.roomPx) break
    text = longer
  }
  return text
}

export interface LastDone {
  readonly commandId: CommandId
  /** "8:51 sold Sesame 6" */
  readonly text: string
  /** Why it cannot be taken back; "" when it can. */
  readonly refusal: string
}

/** The last act of this screen that is not itself a taking back; null when there is none. */
export function lastDoneHere(state: State, deviceId: DeviceId, words: CounterWords, room: TextRoom): LastDone | null {
  const mine = state.traces.filter((one) => one.deviceId === deviceId && one.told.type !== 'takeBack')
  const trace = mine[mine.length - 1]
  if (trace === undefined) return null
  return {
    commandId: trace.commandId,
    text: didText(trace, words, room),
    refusal: refusal(state, trace, words),
  }
}

/** A mixed sale names its first two varieties where there is room for them. */
const DID_LINES_MOST = 2

function didText({ told, atMs }: Trace, words: CounterWords, room: TextRoom): string {
  const { lines = [] } = told
  const withLines = (most: number) => {
    const text = words.told.at({ ...told, lines: lines.slice(0, most) }, atMs)
    return lines.length > most ? `${text} ${words.counter.day.others(lines.length - most)}` : text
  }
  return firstInRoom([withLines(DID_LINES_MOST), withLines(1), withLines(0)], room)
}

/** Room for a text on a key: so many lines of its inner width. */
export interface TextRoom {
  readonly widthPx: number
  readonly lines: number
  readonly fontPx: number
  readonly weight?: Weight | undefined
}

/** The first of some texts that fits, broken between words; the last one, shortest, when none does. */
export function firstInRoom(texts: readonly string[], room: TextRoom): string {
  return texts.find((text) => isInRoom(text, room)) ?? texts[texts.length - 1] ?? ''
}

/** Whether a text fits, filled word by word as a browser does; a word that is too wide does not. */
export function isInRoom(text: string, { widthPx, lines: most, fontPx, weight }: TextRoom): boolean {
  let lines = 1
  let line = ''
  for (const word of text.split(' ')) {
    if (textWidthPx(word, fontPx, weight) > widthPx) return false
    const longer = line === '' ? word : `${line} ${word}`
    if (textWidthPx(longer, fontPx, weight) <= widthPx) line = longer
    else {
      lines += 1
      line = word
    }
  }
  return lines <= most
}

function refusal(state: State, trace: Trace, { answers }: CounterWords): string {
  if (NEVER_TAKEN_BACK.has(trace.told.type)) {
    return answers.refusal({ code: 'take-back-never', params: { type: trace.told.type } })
  }
  const after = changedSince(state, trace)
  if (after === null) return ''
  const params = { type: after.told.type, atMs: after.atMs, commandId: after.commandId }
  return answers.refusal({ code: 'take-back-changed-since', params })
}

/** Something to answer or to know, in place of the keys. */
export interface NoticeView {
  readonly id: string
  readonly title: string
  readonly text: string
  /** Null: it is only to be known. */
  readonly answer: { readonly yes: string; readonly no: string } | null
}

/** The oldest notice first: it was asked first. */
export function noticeView(notices: readonly Notice[], words: CounterWords): NoticeView | null {
  const notice = notices.find((one) => one.kind === 'ask') ?? notices[0]
  if (notice === undefined) return null
  const { title, text } = words.live.notice(notice)
  const [ask] = notice.kind === 'ask' ? notice.asks : []
  if (ask === undefined) return { id: notice.id, title, text, answer: null }
  const { question, yes, no } = words.answers.ask(ask)
  return { id: notice.id, title: question, text: '', answer: { yes, no } }
}
