import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { planCommand } from '../../server/plan/command.ts'
import type { PlanJson } from '../../server/plan/plan-instance.ts'
import type { BakeOff } from '../../shared-core/plan/bake-off/bake-off.ts'
import { violationsOf } from '../reference/bake-off/feasible.ts'
import { loadReadyAt, madeShop, madeVariety, orderOf } from '../reference/bake-off/made-shop.ts'
import { tempFolder } from './support/temp-folder.ts'

/** Runs the command in this process on what stands in a file. */
async function run(content: string | null, ...more: string[]) {
  const file = join(tempFolder(), 'problem.json')
  if (content !== null) writeFileSync(file, content)
  const said: string[] = []
  let data = ''
  const status = await planCommand([...(content === null ? [] : [file]), ...more], {
    data: (text) => {
      data += text
    },
    say: (sentence) => said.push(sentence.replace(file, 'FILE')),
    input: async () => JSON.stringify(SHOP),
    warmUps: 0,
  })
  return { status, said, data }
}

const SHOP: BakeOff = madeShop({
  varieties: [madeVariety({ mean: 60 }), { ...madeVariety({ mean: 30 }), name: 'Sesame' }],
  orders: [orderOf(495, 24)],
})

const AGAIN: BakeOff = {
  ...SHOP,
  now: 420,
  running: [loadReadyAt(452, 24)],
  doughs: { plain: { pieces: 90 } },
}

describe('npm run plan', () => {
  it.each([
    ['a day', SHOP],
    ['what is left of one', AGAIN],
  ])(
    '[I53] given %s, when planned twice, then both times the same loads, feasible, and how long it took',
    async (_, given) => {
      const [first, second] = [await run(JSON.stringify(given)), await run(JSON.stringify(given))]
      expect([first.status, first.said]).toEqual([0, []])
      const plan: PlanJson = JSON.parse(first.data)
      expect(plan.loads.length).toBeGreaterThan(0)
      expect(violationsOf(given, plan)).toEqual([])
      expect(plan.planMs).toBeGreaterThan(0)
      expect(JSON.parse(second.data).loads).toEqual(plan.loads)
      if (given.now !== undefined)
        expect(Math.min(...plan.loads.map(({ kettleStart }) => kettleStart))).toBeGreaterThanOrEqual(420)
    },
  )

  it('[I53] given a dash in place of a file, when planned, then it is read from standard input', async () => {
    const { status, data } = await run(null, '-')
    expect([status, violationsOf(SHOP, JSON.parse(data))]).toEqual([0, []])
  })

  it('[I53] given a key that nobody knows, when planned, then it is planned and the key is named', async () => {
    const { status, said, data } = await run(JSON.stringify({ ...AGAIN, note: 'a Tuesday' }))
    expect([status, said, JSON.parse(data).loads.length > 0]).toEqual([
      0,
      ['FILE /note: nobody knows this key; it was passed over.'],
      true,
    ])
  })

  it.each([
    ['a mistake', '{"unit":0}', [], 'FILE /unit: "unit" is 0. Right would be: A whole number from 1 to 100000.'],
    ['no JSON', '{', [], expect.stringMatching(/^FILE is no JSON: /)],
    ['no file', null, ['nowhere.json'], 'nowhere.json: there is no such file.'],
    ['a folder', null, ['.'], '.: this is a folder; name a file.'],
    ['nothing', null, [], 'Name one file: npm run -s plan -- INSTANCE.json. 0 were named.'],
    ['two files', '{}', ['other.json'], 'Name one file: npm run -s plan -- INSTANCE.json. 2 were named.'],
  ])('[I54] given %s, when planned, then status 2, a sentence, and no plan', async (_, content, more, sentence) => {
    const { status, said, data } = await run(content, ...more)
    expect([status, said[0], data]).toEqual([2, sentence, ''])
  })
})
