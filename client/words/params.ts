import type { Ask, Params, Refusal, RefusalCode } from '../../shared-core/day/answers.ts'
import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { LineWords, Speech, TimeWords, ToldWords } from './words.ts'

/** The parameters of a refusal or question as words; null for what it does not say. */
export interface Said {
  readonly shelf: string | null
  readonly dough: string | null
  readonly variety: string | null
  readonly stage: string | null
  /** What was done, in words. */
  readonly did: string | null
  readonly name: string | null
  readonly atMs: EpochMs | null
  readonly tappedAtMs: EpochMs | null
  readonly label: string | null
  /** What an order is called. */
  readonly mark: string | null
  pieces(name?: string): string
  number(name: string): number
}

export type Sentences<Code extends string, Sentence> = { readonly [code in Code]: (said: Said) => Sentence }
export type RefusalSentences = Sentences<RefusalCode, string>
/** What is refused in the dough room only. */
export type DoughRoomRefusal =
  | 'unknown-formula'
  | 'unknown-mix'
  | 'unknown-ingredient'
  | 'unknown-preparation'
  | 'unknown-build'
  | 'other-formula'
  | 'unknown-line'
  | 'mix-begun'
  | 'mix-not-begun'
  | 'mix-ended'
  | 'not-of-formula'
  | 'date-over'
  | 'date-too-far'
  | 'no-piece-weight'

/** What is refused of orders only. */
export type OrderRefusal =
  | 'unknown-order'
  | 'unknown-standing'
  | 'unknown-run'
  | 'unknown-menu-item'
  | 'unknown-portion'
  | 'order-empty'
  | 'order-nothing-left'
  | 'order-when'
  | 'order-known'
  | 'which-bagel'
  | 'details-not-written'

export interface AnswerParts {
  readonly times: TimeWords
  readonly line: LineWords
  readonly told: ToldWords
}

/** Reads the parameters of an answer; ids become names, instants stay instants. */
export function saidIn({ params }: Refusal | Ask, { names }: Speech, { line, told }: AnswerParts): Said {
  const text = (name: string) => textIn(params, name)
  const shelf = text('shelfId')
  const dough = text('doughId')
  const variety = text('varietyId')
  const stage = text('stage')
  const type = text('type')
  return {
    shelf: shelf === null ? null : line.shelf(shelfId(shelf)),
    dough: dough === null ? null : names.dough(doughId(dough)),
    variety: variety === null ? null : names.variety(varietyId(variety)),
    stage: stage !== null && isStage(stage) ? line.stage(stage) : null,
    did: type === null ? null : told.did({ type }),
    name: text('name'),
    atMs: instantIn(params, 'atMs'),
    tappedAtMs: instantIn(params, 'tappedAtMs'),
    label: text('label'),
    mark: text('mark'),
    pieces: (name = 'pieces') => line.pieces(numberIn(params, name)),
    number: (name) => numberIn(params, name),
  }
}

const STAGES = { proof: true, chill: true, rack: true, kettle: true, boards: true, oven: true } as const satisfies {
  [stage in BatchStage]: true
}

function isStage(text: string): text is BatchStage {
  return Object.keys(STAGES).includes(text)
}

function textIn(params: Params, name: string): string | null {
  const value = params[name]
  return typeof value === 'string' ? value : null
}

function numberIn(params: Params, name: string): number {
  const value = params[name]
  return typeof value === 'number' ? value : 0
}

function instantIn(params: Params, name: string): EpochMs | null {
  const value = params[name]
  return typeof value === 'number' ? epochMs(value) : null
}
