import type { FormulaWarning } from '../../shared-core/dough/formula-figures.ts'
import type { DoughRoom, FormulaLine, IngredientKind, Preparation } from '../../shared-core/shop/formula.ts'
import type { Dough } from '../../shared-core/shop/shop.ts'

/** What the set-up says of what doughs are made of. */
export interface DoughSetUpWords {
  readonly kind: { readonly [kind in IngredientKind]: string }
  readonly preparation: { readonly [kind in Preparation['kind']]: { readonly name: string; readonly hint: string } }
  readonly at: { readonly [at in FormulaLine['at']]: string }
  readonly shapedBy: { readonly [by in Dough['shapedBy']]: string }
  readonly flourIn: { readonly [unit in DoughRoom['flourIn']]: string }
  /** @example "24.50 for 50 lb" */
  price(amount: string, weight: string): string
  readonly priceField: string
  readonly per: string
  readonly noIngredients: string
  readonly noFormulas: string
  readonly noPreparations: string
  /** Heads of a baker's table. */
  readonly table: {
    readonly ingredient: string
    readonly percent: string
    readonly weight: string
    readonly inTheBowl: string
    readonly when: string
    readonly sum: string
    readonly add: string
    remove(what: string): string
  }
  /** @example "1.5 % is missing" */
  missing(percent: string): string
  tooMuch(percent: string): string
  readonly flours: string
  readonly soakerBase: string
  readonly adds: string
  readonly figures: FigureWords
  warning(warning: FormulaWarning): string
  readonly trial: string
  readonly trialHint: string
  readonly madeInto: string
  /** @example "Plain: 120 pieces of 4.25 oz" */
  pieces(dough: string, count: number, weight: string): string
  readonly nobodyShapes: string
  readonly addBulk: string
  readonly noBulk: string
  readonly bulkChill: string
  readonly folds: string
  readonly addFold: string
  readonly fold: (n: number) => string
  readonly takeOff: string
  /** Sections of a formula's page. */
  readonly sections: {
    readonly formula: string
    readonly preparations: string
    readonly warmth: string
    readonly times: string
    readonly losses: string
    readonly file: string
  }
  readonly card: CardWords
  readonly file: FormulaFileWords
  /** @example "Changed last Tue, Nov 24, 6:41 am, at Office" */
  changed(when: string, device: string | null): string
  readonly versions: string
  readonly hints: {
    readonly seed: string
    readonly fedWith: string
    readonly friction: string
    readonly strength: string
    readonly daysAhead: string
    readonly decideBy: string
    readonly provesAt: string
    readonly coolsIn: string
    readonly surplusTo: string
    readonly contains: string
  }
  readonly begin: string
}

export interface FigureWords {
  readonly hydration: string
  readonly salt: string
  readonly yeast: string
  readonly malt: string
  readonly total: string
  readonly prefermentedFlour: string
  readonly costs: string
  readonly allergens: string
  readonly unpriced: string
}

export interface CardWords {
  readonly open: string
  readonly print: string
  readonly back: string
  readonly flour: string
  readonly dough: string
  readonly doughAt: string
  readonly mixing: string
  mixIns(time: string): string
  readonly rest: string
  readonly bulk: string
  readonly folds: string
  readonly bulkChill: string
  readonly pieces: string
  readonly contains: string
  readonly nothingEntered: string
  readonly caution: string
  /** A preparation on the card. @example "Culture: from 8 h, best 12 h, until 16 h" */
  readonly madeAhead: string
  readonly unknown: string
}

export interface FormulaFileWords {
  readonly hint: string
  readonly save: string
  readonly open: string
  readonly read: string
  readonly same: string
}
