import { describe, expect, it } from 'vitest'
import { formulaId, ingredientId } from '../../shared-core/ids.ts'
import type { FormulaFile } from '../../shared-core/shop/formula-file.ts'
import { toFormulaFile } from '../../shared-core/shop/formula-file.ts'
import { doughRoomFile } from '../core/shop/formula-file.ts'
import { fullFile, shopOf as readShop } from '../core/shop/set-up-file-maker.ts'
import type { TestServer } from './support/start-server.ts'
import { ask, startServer } from './support/start-server.ts'

const post = (server: TestServer, body: unknown, query = '') => ask(server, `/api/v1/formulas${query}`, { body })
const formulaOf = async (server: TestServer, id = 'plain') =>
  (await ask(server, `/api/v1/formulas/${id}`)).json as FormulaFile
const shopOf = (server: TestServer) => server.room.read(({ shop }) => shop)

/** As the server gives it out. */
const PLAIN = withoutNull(toFormulaFile(readShop(doughRoomFile()), formulaId('plain')))

async function serverWith(file: unknown): Promise<TestServer> {
  const server = await startServer()
  const answer = await ask(server, '/api/v1/set-up?confirm=retires-in-use', { body: file })
  expect(answer.json).toMatchObject({ answer: { kind: 'taken' } })
  return server
}

describe('a formula as a file of its own', () => {
  it('[D13] given a formula, then it goes out with what it is made of, and back in it changes nothing; of no other id', async () => {
    const server = await serverWith(doughRoomFile())
    const file = await formulaOf(server)
    expect(file.format).toBe('boilboard formula 1')
    expect(file.formula).toMatchObject({ id: 'plain', lossPercent: 1.5, mix: { minutes: 12 } })
    expect(file.ingredients.map(({ id }) => id)).toEqual(['high-gluten', 'rye', 'water', 'salt', 'yeast', 'seeds'])
    expect(file.preparations?.map(({ id }) => id)).toEqual(['culture', 'soaked-seeds'])
    const { seq } = await server.room.read((state) => ({ seq: state.seq }))
    expect((await post(server, file)).json).toEqual({ commandId: null, answer: { kind: 'taken', seq } })
    const other = await ask(server, '/api/v1/formulas/sour')
    expect(other.status).toBe(404)
    expect(other.json).toMatchObject({ detail: 'There is no formula of that id. The shop has: plain.' })
  })

  it('[D13] given a dry run, then what would change is told and nothing is taken', async () => {
    const server = await serverWith(fullFile())
    const dry = await post(server, PLAIN, '?dryRun=1')
    expect(dry.json).toMatchObject({ dryRun: true, answer: { kind: 'taken' } })
    expect((dry.json as { changes: { entity: string }[] }).changes.map(({ entity }) => entity)).toEqual([
      ...Array(6).fill('ingredient'),
      ...Array(2).fill('preparation'),
      'formula',
    ])
    expect((await shopOf(server))?.formulas.size).toBe(0)
  })

  it('[D14] given a shop that has an ingredient by another id, then the file means that one; price, bag and allergens stay', async () => {
    const flour = { id: 'sacks', name: 'high-gluten FLOUR', kind: 'flour', contains: ['soy'], price: PRICE }
    const server = await serverWith({ ...fullFile(), ingredients: [flour] })
    const unpriced = PLAIN.ingredients.map((one) => ({ ...one, price: null, bag: null }))
    expect((await post(server, { ...PLAIN, ingredients: unpriced })).json).toMatchObject({ answer: { kind: 'taken' } })
    const shop = await shopOf(server)
    expect(shop?.ingredients.get(ingredientId('sacks'))).toMatchObject({
      contains: ['wheat', 'soy'],
      price: { cents: 2_000, per: { thousandths: 50_000, unit: 'lb' } },
    })
    expect(shop?.ingredients.has(ingredientId('high-gluten'))).toBe(false)
    expect(shop?.formulas.get(formulaId('plain'))?.lines[0]).toMatchObject({ ingredientId: 'sacks', percent: 97_500 })
    const culture = [...(shop?.preparations.values() ?? [])].find(({ name }) => name === 'Culture')
    expect(culture?.lines[0]?.ingredientId).toBe('sacks')
  })

  it('[D14] given a file with a mistake, then 422 says what and where, and nothing is taken', async () => {
    const server = await serverWith(fullFile())
    for (const [spoil, problem] of MISTAKES) {
      const asked = await post(server, spoil(PLAIN))
      expect(asked.status).toBe(422)
      expect((asked.json as { errors: unknown[] }).errors).toContainEqual(problem)
    }
    expect((await shopOf(server))?.formulas.size).toBe(0)
  })
})

const MISTAKES: readonly (readonly [(file: FormulaFile) => object, unknown])[] = [
  [
    (file: FormulaFile) => ({
      ...file,
      formula: {
        ...file.formula,
        lines: file.formula.lines.map((one, at) => (at === 0 ? { ...one, percent: 90 } : one)),
      },
    }),
    { path: '/formula/lines', wrong: 'The flours sum to 92.5 %: 7.5 % is missing.', right: '100 % in all.' },
  ],
  [
    (file: FormulaFile) => ({ ...file, ingredients: file.ingredients.filter(({ id }) => id !== 'yeast') }),
    expect.objectContaining({ path: '/formula/lines/4/ingredient', wrong: 'There is no ingredient "yeast".' }),
  ],
  [
    (file: FormulaFile) => ({ ...file, format: 'boilboard formula 2' }),
    { path: '/format', wrong: '"format" is the text "boilboard formula 2".', right: '"boilboard formula 1".' },
  ],
]

const PRICE = { cents: 2_000, per: { amount: 50, unit: 'lb' } }

function withoutNull(file: FormulaFile | null): FormulaFile {
  if (file === null) throw new Error('no formula')
  return file
}
