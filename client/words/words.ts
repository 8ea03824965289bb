import type { Ask, OverLimit, Refusal } from '../../shared-core/day/answers.ts'
import type { ActType } from '../../shared-core/day/commands.ts'
import type { Line, LoadPhase, Unsure } from '../../shared-core/day/state.ts'
import type { Told } from '../../shared-core/day/trace.ts'
import type { DoughId, ShelfId, VarietyId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { BatchStage, Language, LineAct, Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { en } from './en.ts'
import { es } from './es.ts'
import type { Names } from './names.ts'
import { namesOf } from './names.ts'

/**
 * Every sentence that a person reads, in English and Spanish. This is the part that all screens share: times, acts,
 * answers, notices, stages, what was done. A screen's own sentences stand in files of its own, so that no screen loads
 * another one's: `bench.ts` (its type and `benchWords(words)`) with `en-bench.ts` and `es-bench.ts`; so for counter and
 * desk; `wall.ts` and `settings.ts` show the pattern. Both languages hold the same keys, or it does not compile.
 *
 * Durations and clock times are never written alike: a duration ends in its unit ("8 min"), a clock time has a colon.
 */
export interface Words extends Vocabulary {
  readonly language: Language
  readonly names: Names
}

export interface Vocabulary {
  readonly times: TimeWords
  readonly line: LineWords
  readonly acts: ActWords
  readonly answers: AnswerWords
  readonly told: ToldWords
  readonly live: LiveWords
  readonly cautions: CautionWords
}

/** What the sentences of a language are made with: names from the set-up, and the shop's clock. */
export interface Speech {
  readonly names: Names
  /** "6:47"; "" where the shop's clock is not known yet. */
  readonly localTime: (atMs: EpochMs) => string
}

export interface TimeWords {
  /** Time to go, for a countdown. Rounded up to the second; from 100 s on to the nearest minute. @example "22 s", "8 min" */
  left(ms: number): string
  /** How long something took or has stood, rounded down. @example "40 s", "12 min", "1 h 5 min", "14 h" */
  span(ms: number): string
  /** @example "in 22 s" */
  within(ms: number): string
  /** @example "3 min late" */
  late(ms: number): string
  /** When to act: "in 22 s" while it is to come, "now" while it is due, "3 min late" afterwards (from its time on). */
  when(due: SaidDue, nowMs: EpochMs): string
  /** @example "at 8:20" */
  at(atMs: EpochMs): string
  /** @example "since 6:41" */
  since(atMs: EpochMs): string
  /** The latest time for something. @example "by 10:34" */
  by(atMs: EpochMs): string
  /** How far something reaches. @example "to 9:00" */
  upTo(atMs: EpochMs): string
  /** The local clock time alone. @example "6:47" */
  clock(atMs: EpochMs): string
  /** A business day's label. @param label YYYY-MM-DD @example "Tue, Nov 24" */
  date(label: string): string
  /** A span entered in the set-up, as entered. @example "3.5 min" */
  readonly units: { readonly s: string; readonly min: string; readonly h: string }
}

export interface LineWords {
  /** Where pieces stand. @example "on the rack" */
  stage(stage: BatchStage): string
  /** The same as the heading of a list. @example "On the rack" */
  stageTitle(stage: BatchStage): string
  phase(phase: LoadPhase): string
  /** @example "Onion 24, Garlic 24" */
  contents(lines: readonly Line[]): string
  /** @example "24 Sesame and 12 Poppy" */
  becomes(lines: readonly Line[]): string
  /** @example "36 pieces" */
  pieces(pieces: number): string
  /** @example "3 trays" */
  trays(trays: number): string
  /** @example "16 boards" */
  boards(boards: number): string
  /** @example "shelf 2" */
  shelf(shelfId: ShelfId): string
  /** A list in a sentence. @example "a, b and c" */
  list(items: readonly string[]): string
  readonly cooling: string
  readonly forSale: string
  readonly kept: string
  readonly onTheWay: string
}

/** An act of the line as it is called out; a `LineActDue` of the core fits. What is left out is not said. */
export interface SaidAct {
  readonly act: LineAct
  readonly shelfId?: ShelfId | null
  readonly doughId?: DoughId | null
  /** Where the mixer decided it: then it is called by this name and not by its dough's. */
  readonly varietyId?: VarietyId | null
  readonly trays?: number | null
  readonly pieces?: number | null
}

/** When an act should be done, and whether that is still to come; a `LineActDue` of the core fits. */
export interface SaidDue {
  readonly atMs: EpochMs
  readonly status: 'coming' | 'due' | 'late'
}

export interface ActWords {
  /** Verb first. @example "Flip 2", "Out of 1", "Pull 3 trays Plain" */
  name(act: SaidAct): string
  /** The same within a sentence. @example "flip 2" */
  inSentence(act: SaidAct): string
  /** With its time. @example "Flip 2 in 40 s", "Flip 2 now", "Flip 2, 3 min late" */
  timed(act: SaidAct & SaidDue, nowMs: EpochMs): string
  /** One that follows the act on show. @example "then flip 2" */
  following(act: SaidAct): string
  /** The bare verb, for set-up and stations. @example "flip" */
  verb(act: LineAct): string
}

/** A question to a person: nothing is done until it is answered. */
export interface Question {
  readonly question: string
  readonly yes: string
  readonly no: string
}

export interface AnswerWords {
  refusal(refusal: Refusal): string
  ask(ask: Ask): Question
  /** A limit that was exceeded and is shown, not blocked. */
  over(limit: OverLimit): string
}

export interface ToldWords {
  /** What a command did. @example "loaded 3: Onion 24, Garlic 24" */
  did(told: Told): string
  /** With its time. @example "6:46 loaded 3: Onion 24, Garlic 24" */
  at(told: Told, atMs: EpochMs): string
  readonly takeBack: string
}

export interface LiveWords {
  /** What a person must know of the link; "" while all is well. @example "No contact since 6:41 – counting on" */
  connection(connection: SaidConnection): string
  /** Own taps that the server has not answered. @example "2 taps waiting" */
  pending(taps: number): string
  notice(notice: SaidNotice): NoticeText
  unsure(unsure: Unsure): NoticeText
  /** Marks a demo on every screen; "" in a real shop. */
  demo(demo: { readonly handsOff: boolean } | null): string
  /** How far this screen's seconds may be off. @example "seconds ±0.4 s" */
  clockError(errorMs: number): string
}

/** A screen's link to the shop, as the store of a screen has it. */
export interface SaidConnection {
  readonly phase: 'connecting' | 'live' | 'catching-up' | 'away' | 'stale' | 'outside'
  readonly sinceMs: EpochMs
}

/** What a person should know or answer, as the store of a screen has it. */
export type SaidNotice =
  | { readonly kind: 'refused'; readonly command: { readonly type: ActType }; readonly refusal: Refusal }
  | { readonly kind: 'ask'; readonly command: { readonly type: ActType }; readonly asks: readonly Ask[] }
  | { readonly kind: 'queue-full'; readonly most: number }
  | { readonly kind: 'not-saved' }
  | { readonly kind: 'kept-aside'; readonly commands: number }
  | { readonly kind: 'left-behind'; readonly role: Role; readonly commands: number }
  | { readonly kind: 'fetched-anew' }

export interface NoticeText {
  readonly title: string
  readonly text: string
}

export interface CautionWords {
  /** Where timers are shown and set up. */
  readonly aid: string
  readonly aidShort: string
}

/**
 * The words of a language, with a shop's names and clock where they are known.
 * @param localTime the shop's clock time of an instant, from the store
 * @example wordsFor('en', shop, store.localTime).acts.name({ act: 'flip', shelfId }) // "Flip 2"
 */
export function wordsFor(
  language: Language,
  shop: Shop | null = null,
  localTime: (atMs: EpochMs) => string = () => '',
): Words {
  const vocabulary = VOCABULARIES[language]
  const names = namesOf(shop, UNNAMED[language])
  return { language, names, ...vocabulary({ names, localTime }) }
}

/** The language of a device: its own choice, else the shop's, else English. */
export function languageOf(chosen: Language | null, shop: Shop | null): Language {
  return chosen ?? shop?.profile.language ?? 'en'
}

const VOCABULARIES = { en, es } as const satisfies { [language in Language]: (speech: Speech) => Vocabulary }

const UNNAMED = {
  en: {
    dough: 'unknown dough',
    variety: 'unknown variety',
    shelf: '?',
    station: 'unknown station',
    topping: 'unknown topping',
    person: 'somebody',
    formula: 'a dough',
    preparation: 'a preparation',
    ingredient: 'an ingredient',
    step: 'unknown step',
    kitchenStation: 'unknown station',
    menuItem: 'something',
    portion: 'unknown portion',
    run: 'unknown run',
  },
  es: {
    dough: 'masa desconocida',
    variety: 'variedad desconocida',
    shelf: '?',
    station: 'puesto desconocido',
    topping: 'cobertura desconocida',
    person: 'alguien',
    formula: 'una masa',
    preparation: 'una preparación',
    ingredient: 'un ingrediente',
    step: 'paso desconocido',
    kitchenStation: 'puesto desconocido',
    menuItem: 'algo',
    portion: 'porción desconocida',
    run: 'reparto desconocido',
  },
} as const
