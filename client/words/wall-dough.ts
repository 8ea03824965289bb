import type { MixStage } from '../../shared-core/dough/mix.ts'
import { enWallDough } from './en-wall-dough.ts'
import { esWallDough } from './es-wall-dough.ts'
import type { Words } from './words.ts'

/** What the wall says of the dough room. */
export interface WallDoughWords {
  readonly mixes: string
  readonly proofing: string
  readonly nothingProofing: string
  /** @example "cooler 62 of 120 trays" */
  cooler(trays: number, of: number | null): string
  /** @example "cooler 4 trays too many" */
  coolerOver(trays: number): string
  stage(stage: Exclude<MixStage, 'ended'>): string
  /** Mixing, with the mix-ins to come. */
  readonly toMixIns: string
  /** In bulk, with a fold to come. @example "fold 2 next" */
  toFold(n: number): string
  /** @example "213 Plain" */
  pieces(pieces: number, dough: string): string
  /** Of a mix on the bench. @example "96 of 259 shaped" */
  shaped(pieces: number, of: number): string
  /** @example "11 trays" */
  trays(trays: number): string
  /** What is to be done, inside a sentence; `name` says of what. */
  readonly acts: RoomActNames
}

export interface RoomActNames {
  prepare(name: string): string
  feed(name: string): string
  startMix(name: string): string
  mixIns(name: string): string
  mixerOff(name: string): string
  restOver(name: string): string
  /** The n-th. */
  fold(name: string, n: number): string
  bulkOver(name: string): string
  bulkChillOver(name: string): string
  chill(name: string): string
  use(name: string): string
}

export function wallDoughWords(words: Words): WallDoughWords {
  return words.language === 'en' ? enWallDough() : esWallDough()
}
