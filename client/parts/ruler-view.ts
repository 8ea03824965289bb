import type { LabelLayout, LabelRoom, Lean, PlacedLabel, WantedLabel } from './ruler-layout.ts'
import { layOutLabels } from './ruler-layout.ts'
import { textWidthPx } from './text-width.ts'

export interface RulerDay {
  readonly fromMs: number
  readonly toMs: number
  readonly nowMs: number
  readonly lastLoad?: { readonly atMs: number; readonly text: string } | undefined
  /** The latest first dip: minutes before the last load, so that it is named only where there is room. */
  readonly lastDip?: { readonly atMs: number; readonly text: string } | undefined
  readonly changeover?: { readonly fromMs: number; readonly toMs: number; readonly text: string } | undefined
  readonly secondMenu?: { readonly fromMs: number; readonly toMs: number; readonly text?: string } | undefined
  readonly orders: readonly RulerOrder[]
}

export interface RulerOrder {
  readonly key: string
  readonly atMs: number
  readonly text: string
  /** It will be short or late. */
  readonly trouble?: boolean | undefined
}

export type LabelTone = 'plain' | 'trouble' | 'coming' | 'past'
export interface RulerLabel extends PlacedLabel {
  readonly tone: LabelTone
}

export interface RulerView {
  readonly labels: readonly RulerLabel[]
  /** Orders without a label, told as a count at the right end of the top line; "" when all have one. */
  readonly more: string
}

interface Room {
  readonly widthPx: number
  readonly fontPx: number
  readonly lines: 1 | 2
}

/**
 * Chooses the labels and their places. Orders in trouble come first, then changeover and last load, then the next
 * orders, then the last dip; an order that is past and not in trouble needs no label. What belongs to the day as a whole moves up to the
 * top line where that lets more orders be named.
 * @param moreText the words for so many orders without a label, e.g. "+3"
 */
export function rulerView(day: RulerDay, room: Room, moreText: (count: number) => string): RulerView {
  const { wanted, unnamed } = wantedLabels(day, scale(day, room.widthPx))
  const first = best(wanted, room)
  if (hiddenOrders(first) + unnamed === 0) return { labels: toned(first.placed, wanted), more: '' }
  // The count needs room too, which may hide one more label: its widest text is reserved for.
  const reservedPx = textWidthPx(moreText(day.orders.length), room.fontPx) + room.fontPx
  const second = best(wanted, { ...room, reservedPx })
  const count = hiddenOrders(second) + unnamed
  return { labels: toned(second.placed, wanted), more: count === 0 ? '' : moreText(count) }
}

/** Of the ways of placing them, the one that loses least; of equals the plainest, which is tried first. */
function best(wanted: readonly TonedLabel[], room: LabelRoom): LabelLayout {
  const dayFirst = [...wanted.filter(isOfTheDay), ...wanted.filter((label) => !isOfTheDay(label))]
  const raised = (labels: readonly TonedLabel[]) => labels.map((label) => ({ ...label, prefersTop: isOfTheDay(label) }))
  const orders = room.lines === 1 ? [wanted] : [wanted, raised(wanted), raised(dayFirst)]
  const ways = LEANS.flatMap((lean) => orders.map((labels) => () => layOutLabels(labels, { ...room, lean })))
  let least = layOutLabels(wanted, room)
  for (const way of ways) {
    if (loss(least) === 0) break
    const next = way()
    if (loss(next) < loss(least)) least = next
  }
  return least
}

const LEANS: readonly Lean[] = ['middle', 'left', 'right']

function loss({ hidden }: LabelLayout): number {
  return hidden.reduce((sum, { weight }) => sum + weight, 0)
}

function toned(placed: readonly PlacedLabel[], wanted: readonly TonedLabel[]): readonly RulerLabel[] {
  const tones = new Map(wanted.map(({ key, tone }) => [key, tone]))
  return placed.map((label) => ({ ...label, tone: tones.get(label.key) ?? 'plain' }))
}

/** Pixels from the ruler's left end at an instant, kept within the ruler; in halves, so that it rarely repaints. */
export function scale({ fromMs, toMs }: { fromMs: number; toMs: number }, widthPx: number): (ms: number) => number {
  return (ms) => Math.round(Math.min(1, Math.max(0, (ms - fromMs) / (toMs - fromMs))) * widthPx * 2) / 2
}

type TonedLabel = WantedLabel & { readonly tone: LabelTone }

/** One order in trouble outweighs all else, and what belongs to the day any number of orders that fit. */
const WEIGHT = { trouble: 10_000, day: 100, order: 1, lastDip: 0.1 } as const

function isOfTheDay({ weight }: WantedLabel): boolean {
  return weight === WEIGHT.day
}

/** No ruler names more: ways of placing hundreds of labels would be tried at every paint. Those in trouble go first. */
const NAMED_ORDERS_MAX = 16

/** Most important first; `unnamed`: orders that are only counted. */
function wantedLabels(day: RulerDay, xOf: (ms: number) => number) {
  const all = orders(day, xOf)
  const inTrouble = all.filter(({ tone }) => tone === 'trouble')
  const named = [...inTrouble, ...all.filter(({ tone }) => tone !== 'trouble')].slice(0, NAMED_ORDERS_MAX)
  const [troubled, others] = [named.slice(0, inTrouble.length), named.slice(inTrouble.length)]
  const wanted: readonly TonedLabel[] = [...troubled, ...spans(day, xOf), ...others, ...lastDips(day, xOf)]
  return { wanted, unnamed: all.length - named.length }
}

function spans({ nowMs, lastLoad, changeover, secondMenu }: RulerDay, xOf: (ms: number) => number): TonedLabel[] {
  const labels: TonedLabel[] = []
  const add = (key: string, text: string, markX: number, tone: LabelTone) =>
    labels.push({ key, text, markX, tone, weight: WEIGHT.day })
  const middle = (span: { fromMs: number; toMs: number }) => (xOf(span.fromMs) + xOf(span.toMs)) / 2
  if (changeover !== undefined) {
    add('changeover', changeover.text, middle(changeover), nowMs < changeover.toMs ? 'trouble' : 'past')
  }
  if (lastLoad !== undefined) {
    add('last load', lastLoad.text, xOf(lastLoad.atMs), nowMs <= lastLoad.atMs ? 'plain' : 'past')
  }
  if (secondMenu?.text !== undefined) add('second menu', secondMenu.text, middle(secondMenu), 'coming')
  return labels
}

function orders({ nowMs, orders: all }: RulerDay, xOf: (ms: number) => number): TonedLabel[] {
  return all
    .filter(({ atMs, trouble }) => trouble === true || atMs >= nowMs)
    .sort((a, b) => a.atMs - b.atMs || (a.key < b.key ? -1 : 1))
    .map(({ key, text, atMs, trouble }) => {
      const tone = trouble === true ? 'trouble' : 'plain'
      const weight = trouble === true ? WEIGHT.trouble : WEIGHT.order
      return { key: `order ${key}`, text, markX: xOf(atMs), tone, weight }
    })
}

function lastDips({ lastDip, nowMs }: RulerDay, xOf: (ms: number) => number): TonedLabel[] {
  if (lastDip === undefined || nowMs > lastDip.atMs) return []
  return [{ key: 'last dip', text: lastDip.text, markX: xOf(lastDip.atMs), tone: 'plain', weight: WEIGHT.lastDip }]
}

function hiddenOrders({ hidden }: LabelLayout): number {
  return hidden.filter(({ weight }) => weight === WEIGHT.trouble || weight === WEIGHT.order).length
}
