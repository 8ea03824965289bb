import { z } from 'zod'
import type { FormulaId } from '../ids.ts'
import type { Formula, Ingredient, Preparation } from './formula.ts'
import { formulaFile, ingredientFile, preparationFile } from './formula-export.ts'
import * as from from './formula-from-file.ts'
import * as schema from './formula-schema.ts'
import { inOrder } from './in-order.ts'
import type { Misfit } from './misfit.ts'
import type { Problem } from './problem.ts'
import { PROBLEMS_MAX, problemsOf } from './problems.ts'
import { applySetUp } from './set-up-apply.ts'
import { fileField } from './set-up-draft.ts'
import { list, oneOf, record } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'
import { shopMisfits } from './set-up-rules.ts'
import type { Allergen, Shop } from './shop.ts'
import { ALLERGENS } from './stages.ts'

/** One formula as a file of its own, with all that it is made of: for a copy, or for another shop. */
export const FORMULA_FORMAT = 'boilboard formula 1'

const fileSchema = record({
  format: oneOf([FORMULA_FORMAT]),
  formula: schema.formulaFile,
  ingredients: list(schema.ingredientFile, 'ingredients', 1, limits.IN_USE_MAX.ingredient),
  preparations: list(schema.preparationFile, 'preparations', 0, limits.PREPARATIONS_OF_MAX).default([]),
}).meta({ title: 'A formula', description: 'One formula with its ingredients and preparations.' })

export type FormulaFile = z.input<typeof fileSchema>
type FullFormulaFile = z.output<typeof fileSchema>

/** The file's form as a JSON Schema (draft 2020-12). */
export function formulaJsonSchema(): object {
  return z.toJSONSchema(fileSchema, { io: 'input', target: 'draft-2020-12' })
}

/** @returns null when the shop has no such formula */
export function toFormulaFile(shop: Shop, id: FormulaId): FormulaFile | null {
  const formula = shop.formulas.get(id)
  if (formula === undefined) return null
  const preparations = inOrder(shop.preparations).filter((one) =>
    formula.preparations.some(({ preparationId }) => preparationId === one.id),
  )
  const named = new Set(
    [formula, ...preparations].flatMap(({ lines }) => lines.map(({ ingredientId }) => ingredientId)),
  )
  return {
    format: FORMULA_FORMAT,
    formula: formulaFile(formula),
    ingredients: inOrder(shop.ingredients)
      .filter((one) => named.has(one.id))
      .map(ingredientFile),
    preparations: preparations.map(preparationFile),
  }
}

export type FormulaParsed =
  | { readonly ok: true; readonly shop: Shop }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * The shop with the formula of a file in it.
 *
 * An ingredient or preparation is the shop's own where the id is the same, or else the name and kind, as in a file from
 * another shop. Of an ingredient, price and bag stay the shop's where the file says none, and an allergen that either
 * names is in it: a file takes none away.
 * @param raw the file's JSON, parsed
 * @returns the shop as it would be, or every mistake that can be told at once. Never throws.
 */
export function parseFormulaFile(raw: unknown, shop: Shop): FormulaParsed {
  const read = fileSchema.safeParse(raw)
  if (!read.success) return { ok: false, problems: problemsOf(read.error.issues, raw).slice(0, PROBLEMS_MAX) }
  const known = withKnownIds(read.data, shop)
  const then = applySetUp(shop, [
    ...known.ingredients.map((file) => ({ entity: 'ingredient', value: ingredientOf(file, shop) }) as const),
    ...known.preparations.map((file) => ({ entity: 'preparation', value: preparationOf(file, shop) }) as const),
    { entity: 'formula', value: formulaOf(known.formula, shop) },
  ])
  const before = new Set(shopMisfits(shop).map(misfitKey))
  const problems = shopMisfits(then)
    .filter((misfit) => !before.has(misfitKey(misfit)))
    .map((misfit) => ({ path: placeIn(known, misfit), wrong: misfit.wrong, right: misfit.right }))
  return problems.length === 0 ? { ok: true, shop: then } : { ok: false, problems: problems.slice(0, PROBLEMS_MAX) }
}

interface Listed {
  readonly id: string
  readonly name: string
  readonly kind: string
}

/** The file with the shop's ids for what the shop has by another id, everywhere that they are named. */
function withKnownIds(file: FullFormulaFile, shop: Shop): FullFormulaFile {
  const ingredients = knownIds(file.ingredients, shop.ingredients)
  const preparations = knownIds(file.preparations, shop.preparations)
  const line = <Line extends { ingredient: string }>(one: Line): Line => ({
    ...one,
    ingredient: ingredients.get(one.ingredient) ?? one.ingredient,
  })
  return {
    ...file,
    ingredients: file.ingredients.map((one) => ({ ...one, id: ingredients.get(one.id) ?? one.id })),
    preparations: file.preparations.map((one) => ({
      ...one,
      id: preparations.get(one.id) ?? one.id,
      lines: one.lines.map(line),
    })),
    formula: {
      ...file.formula,
      lines: file.formula.lines.map(line),
      preparations: file.formula.preparations.map((one) => ({
        ...one,
        preparation: preparations.get(one.preparation) ?? one.preparation,
      })),
    },
  }
}

function knownIds(list: readonly Listed[], known: ReadonlyMap<string, Listed & { readonly retired: boolean }>) {
  const alike = (one: Listed) =>
    [...known.values()].find(
      ({ name, kind, retired }) => !retired && kind === one.kind && name.toLowerCase() === one.name.toLowerCase(),
    )
  return new Map(list.map((one) => [one.id, known.has(one.id) ? one.id : (alike(one)?.id ?? one.id)]))
}

function ingredientOf(file: FullFormulaFile['ingredients'][number], shop: Shop): Ingredient {
  const read = from.ingredientFrom(file, 0)
  const own = shop.ingredients.get(read.id)
  const order = own?.order ?? nextOrder(shop.ingredients)
  if (own === undefined) return { ...read, order, retired: false }
  const contains = ALLERGENS.filter((one: Allergen) => own.contains.includes(one) || read.contains.includes(one))
  return { ...read, order, contains, price: read.price ?? own.price, bag: read.bag ?? own.bag, retired: false }
}

function preparationOf(file: FullFormulaFile['preparations'][number], shop: Shop): Preparation {
  const read = from.preparationFrom(file, 0)
  return { ...read, order: shop.preparations.get(read.id)?.order ?? nextOrder(shop.preparations), retired: false }
}

function formulaOf(file: FullFormulaFile['formula'], shop: Shop): Formula {
  const read = from.formulaFrom(file, 0)
  return { ...read, order: shop.formulas.get(read.id)?.order ?? nextOrder(shop.formulas), retired: false }
}

/** After all that the shop has; several new ones stand in the order of their ids (`inOrder` breaks ties so). */
function nextOrder(known: ReadonlyMap<string, { readonly order: number }>): number {
  return [...known.values()].reduce((most, { order }) => Math.max(most, order + 1), 0)
}

function misfitKey({ entity, id, field, wrong }: Misfit): string {
  return JSON.stringify([entity, id, field, wrong])
}

/** Where in the file something is that does not fit; what it breaks elsewhere in the shop is said of the whole file. */
function placeIn(file: FullFormulaFile, { entity, id, field }: Misfit): string {
  const inside = fileField(field)
  if (entity === 'formula' && id === file.formula.id) return `/formula${inside}`
  if (entity !== 'ingredient' && entity !== 'preparation') return ''
  const key = entity === 'ingredient' ? 'ingredients' : 'preparations'
  const at = file[key].findIndex((one) => one.id === id)
  return at < 0 ? '' : `/${key}/${at}${inside}`
}
