import type { FormulaFile } from '../../../shared-core/shop/formula-file.ts'

/** The least that a formula file says. */
export const FORMULA_EXAMPLE: FormulaFile = {
  format: 'boilboard formula 1',
  formula: {
    id: 'plain',
    name: 'Plain',
    lines: [
      { ingredient: 'flour', percent: 100 },
      { ingredient: 'water', percent: 55 },
      { ingredient: 'salt', percent: 2 },
      { ingredient: 'yeast', percent: 0.5 },
    ],
    doughAt: { degrees: 76, unit: 'F' },
    friction: { degrees: 24, unit: 'F' },
    mix: { minutes: 12 },
  },
  ingredients: [
    { id: 'flour', name: 'High-gluten flour', kind: 'flour', contains: ['wheat'] },
    { id: 'water', name: 'Water', kind: 'water' },
    { id: 'salt', name: 'Salt', kind: 'salt' },
    { id: 'yeast', name: 'Instant yeast', kind: 'yeast' },
  ],
}
