import type { CounterRules } from '../../shared-core/shop/rules.ts'
import type { SetUpChange } from '../../shared-core/shop/set-up-change.ts'
import type { ListName } from '../../shared-core/shop/set-up-parts.ts'
import type {
  Allergen,
  BatchStage,
  Cooler,
  KettleCare,
  Language,
  Mixer,
  OvenKind,
  Step,
  Variety,
  WindowStage,
} from '../../shared-core/shop/shop.ts'
import { enSetUp } from './en-set-up.ts'
import { esSetUp } from './es-set-up.ts'
import type { BakingSetUpWords } from './set-up-baking.ts'
import type { DemandSetUpWords } from './set-up-demand.ts'
import type { DoughSetUpWords } from './set-up-dough.ts'
import type { SetUpFields } from './set-up-fields.ts'
import type { KitchenSetUpWords } from './set-up-kitchen.ts'
import type { Words } from './words.ts'

/** What the desk says where a shop is set up. */
export interface SetUpSentences {
  readonly title: string
  /** Beside the set-up in the list of the desk's parts. */
  readonly intro: string
  readonly lead: string
  readonly newShop: string
  readonly back: string
  readonly overview: string
  readonly groups: { readonly [group in SetUpGroup]: string }
  readonly parts: { readonly [part in SetUpPart]: string }
  /** One sentence of what a part decides. */
  readonly about: { readonly [part in SetUpPart]: string }
  readonly fields: SetUpFields
  readonly options: OptionWords
  readonly dough: DoughSetUpWords
  readonly demand: DemandSetUpWords
  readonly baking: BakingSetUpWords
  readonly kitchen: KitchenSetUpWords
  readonly list: ListWords
  readonly form: FormWords
  readonly guide: GuideWords
  readonly save: SaveWords
  readonly versions: VersionWords
  readonly file: FileWords
  readonly sums: SumWords
  readonly cautions: SetUpCautions
  /** What would be right where something does not fit, by entity and field; null for one that has no sentence here. */
  misfit(entity: SetUpChange['entity'], field: string): string | null
  /** "Sesame: a price…" @example "Variety Sesame" */
  entity(entity: SetUpChange['entity'], name: string | null): string
}

export type SetUpGroup = 'shop' | 'equipment' | 'made' | 'mixed' | 'howMany' | 'ordered' | 'work' | 'changes'
export type SetUpPart =
  | 'shop'
  | 'hours'
  | 'people'
  | 'counter'
  | 'oven'
  | 'kettle'
  | 'boards'
  | 'room'
  | 'doughs'
  | 'toppings'
  | 'varieties'
  | 'doughRoom'
  | 'formulas'
  | 'preparations'
  | 'ingredients'
  | 'worth'
  | 'baking'
  | 'usual'
  | 'specialDays'
  | 'orders'
  | 'runs'
  | 'kitchen'
  | 'menu'
  | 'windows'
  | 'steps'
  | 'stations'
  | 'screens'
  | 'save'
  | 'versions'
  | 'file'

export interface OptionWords {
  readonly ovenKind: { readonly [kind in OvenKind]: { readonly name: string; readonly hint: string } }
  readonly temperature: { readonly C: string; readonly F: string }
  readonly weight: { readonly g: string; readonly 'lb-oz': string }
  readonly weightUnit: { readonly g: string; readonly kg: string; readonly oz: string; readonly lb: string }
  readonly clock: { readonly 12: string; readonly 24: string }
  readonly size: { readonly [size in Variety['size']]: string }
  readonly topping: { readonly [when in Variety['topping']]: string }
  readonly decidedAt: { readonly [where in Variety['decidedAt']]: string }
  readonly bakedOn: { readonly [on in Variety['bakedOn']]: string }
  readonly salesFrom: { readonly [from in CounterRules['salesFrom']]: string }
  readonly list: { readonly [list in Step['list']]: string }
  readonly stepKind: { readonly [kind in Step['kind']]: string }
  readonly stage: { readonly [stage in BatchStage]: string }
  readonly window: { readonly [stage in WindowStage]: string }
  readonly allergen: { readonly [allergen in Allergen]: string }
  readonly care: { readonly [care in KettleCare]: string }
  /** Monday first. */
  readonly weekday: readonly [string, string, string, string, string, string, string]
  readonly yes: string
  readonly no: string
}

export interface ListWords {
  /** The field for a new one, by what is added. */
  readonly newName: {
    readonly [list in ListName]: string
  }
  readonly add: string
  readonly up: string
  readonly down: string
  readonly retire: string
  readonly bringBack: string
  /** @example "Retired (3)" */
  retired(count: number): string
  readonly retiredHint: string
  readonly none: string
  readonly full: string
  readonly name: string
}

export interface FormWords {
  readonly less: string
  readonly more: string
  readonly notSaid: string
  readonly say: string
  readonly leaveUnsaid: string
  readonly unit: string
  readonly ends: { readonly earliestMs: string; readonly targetMs: string; readonly latestMs: string }
  readonly before: string
  readonly after: string
  /** @example "From 1 to 300." */
  range(from: string, to: string): string
  /** @example "A name of up to 24 characters." */
  nameRule(most: number): string
  readonly asShop: string
  readonly own: string
  /** Where a time is left to a wider one. @example "as usual: 15 – 18 – 25 min" */
  asOther(text: string): string
  readonly changeover: string
  readonly secondMenu: string
  readonly weekdays: string
  /** @example "Usually 6:00 am – 3:00 pm." */
  usually(hours: string): string
  readonly asUsual: string
  readonly ownHours: string
  readonly shelves: string
  readonly eachShelf: string
  readonly oneByOne: string
  readonly pickOne: string
  /** @example "top up: every … pieces" */
  careEvery(care: string): string
  readonly byStation: string
  /** What a list counts from. */
  readonly zero: { readonly [list in Step['list']]: string }
  readonly noTopping: string
  readonly doughFixed: string
  readonly noneFound: string
  readonly moreFound: string
}

export interface GuideWords {
  readonly title: string
  readonly steps: { readonly [step in GuideStep]: string }
  readonly questions: { readonly [step in GuideStep]: string }
  readonly leave: string
  readonly next: string
  readonly back: string
  readonly leaveGuide: string
  readonly saveAndOpen: string
  /** @example "Step 2 of 7" */
  place(step: number, of: number): string
  readonly deviceZone: string
  readonly ownVarieties: string
  readonly prices: string
  readonly tapsTitle: string
  readonly taps: { readonly [preset in TapPreset]: { readonly name: string; readonly hint: string } }
  readonly opened: string
  readonly openHere: string
  readonly sizeHint: string
  readonly nextUp: string
  readonly first: readonly [string, string, string]
}
export type GuideStep = 'shop' | 'oven' | 'kettle' | 'hours' | 'doughs' | 'stations' | 'open'
export type TapPreset = 'oven' | 'kettle' | 'all' | 'own'

export interface SaveWords {
  /** @example "3 changes, not saved yet" */
  unsaved(count: number): string
  readonly look: string
  readonly nothing: string
  readonly when: string
  readonly now: string
  /** @example "From tomorrow’s opening: Fri, Nov 27, 3:30 am" */
  opening(day: string, clock: string): string
  readonly at: string
  readonly atField: string
  readonly notPast: string
  readonly running: string
  readonly save: string
  readonly plan: string
  readonly throwAway: string
  readonly throwAwaySure: string
  readonly keep: string
  readonly saved: string
  readonly planned: string
  readonly waiting: string
  /** @example "2 things do not fit yet" */
  misfits(count: number): string
  readonly putRight: string
  added(what: string): string
  retired(what: string): string
  back(what: string): string
  moved: string
  /** @example "price 1.50 → 1.75" */
  became(field: string, before: string, after: string): string
  readonly changedMark: string
  readonly wrongMark: string
}

export interface VersionWords {
  readonly plannedTitle: string
  readonly plannedNone: string
  readonly drop: string
  readonly pastTitle: string
  readonly pastHint: string
  readonly none: string
  readonly noContact: string
  readonly goBack: string
  /** @example "Go back to the set-up of Tue, Nov 24, 6:41 am? …" */
  sure(when: string): string
  readonly yes: string
  readonly no: string
  readonly wentBack: string
  readonly current: string
  readonly first: string
  /** @example "and 12 more" */
  more(count: number): string
  lost(count: number): string
  from(day: string, clock: string): string
}

export interface FileWords {
  readonly hint: string
  readonly download: string
  readonly upload: string
  readonly schema: string
  readonly fileName: string
  readonly same: string
  /** What would change is in the draft now. */
  readonly read: string
}

/** One line under a part's name in the overview. */
export interface SumWords {
  /** @example "0.50 for who is sent away, 50 % take another" */
  worth(amount: string, percent: number): string
  /** @example "900 pieces" */
  usual(pieces: number): string
  shelves(count: number, pieces: string): string
  floor(boards: number): string
  kettle(pieces: number, cycle: string): string
  boards(count: number, pieces: number): string
  count(count: number): string
  readonly steps: (opening: number, changeover: number) => string
  readonly nothing: string
  readonly closed: string
  changeover(from: string, to: string): string
  /** @example "2 to come" */
  toCome(count: number): string
  room(mixer: Mixer | null, cooler: Cooler | null): string
}

export interface SetUpCautions {
  readonly timers: string
  readonly oven: string
  readonly kettle: string
  readonly allergens: string
}

export function setUpWords(words: Words): SetUpSentences {
  return OF_LANGUAGE[words.language](words)
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => SetUpSentences } = { en: enSetUp, es: esSetUp }
