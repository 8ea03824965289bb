import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import '../fixed-seed.ts'
import type { Target } from './fuzz.ts'
import { assertProblems, assertTold, Find, fuzz } from './fuzz.ts'
import { fuzzAll } from './in-process.ts'
import { mutated } from './mutate.ts'
import { assertAnswer } from './network/over-network.ts'
import { assertJson, ShopAtWork } from './shop-at-work.ts'

const SEED = 20_261_126
const HANGS_MS = 100
describe('bad input', () => {
  it('[H13] given some thousands of broken messages, files and texts, when read and decided, then nothing throws, hangs, or stays', () => {
    const outcomes = fuzzAll({ cases: 2_000, seed: SEED })
    expect(outcomes.filter(({ find }) => find !== null)).toEqual([])
    // Cases that are all refused at the first look would prove little.
    const inShop = outcomes.find(({ target }) => target === 'command, in a shop at work')
    expect(inShop?.counts.get('taken')).toBeGreaterThan(20)
    expect(inShop?.counts.get('unreadable')).toBeGreaterThan(20)
  })

  it('[H13] given a slip of half a minute back, when taken, then its entry is what JSON holds', () => {
    const shop = new ShopAtWork()
    expect(shop.submit([shop.command({ type: 'slipChangeover', slipMs: -1 })])).toBe('taken')
  })
})

describe('a planted fault is seen: ', () => {
  const base = { weight: 1, inputs: mutated([{ pieces: 6, name: 'Sesame' }]) }
  const plain = (value: unknown) => value as { pieces?: unknown; name?: unknown } | null
  const planted: readonly (Target & { readonly shows: string; readonly cpuMsMax?: number })[] = [
    {
      ...base,
      name: 'a reader that throws',
      check: (raw) => String((plain(raw) as { name: string }).name.length),
      shows: 'TypeError',
    },
    {
      ...base,
      name: 'one that refuses without a sentence',
      check: (raw) => {
        if (typeof plain(raw)?.pieces !== 'number') assertProblems([{ path: '/pieces', wrong: 'bad', right: '' }], raw)
        return 'read'
      },
      shows: 'no sentence',
    },
    {
      ...base,
      name: 'one that tells a stack',
      check: (raw) => {
        const error = new TypeError('no name')
        if (plain(raw)?.name === undefined) assertTold(String(error.stack))
        return 'read'
      },
      shows: 'is told in',
    },
    {
      ...base,
      name: 'one that hangs',
      inputs: fc.constant(null),
      check: () => burn(),
      // Found without a long wait; the others may be slow on a busy machine.
      cpuMsMax: HANGS_MS,
      shows: 'of the processor',
    },
  ]

  it.each(planted)('[H14] $name', (target) => {
    const { cpuMsMax = 10_000 } = target
    const { find } = fuzz(target, { cases: 2_000, seed: SEED, cpuMsMax })
    expect(find).toContain(target.shows)
  })

  it.each([Number.NaN, -0, Number.POSITIVE_INFINITY, undefined])('[H14] one that lets %s through', (pieces) => {
    const inputs = mutated([{ pieces: 6 }])
    // A reader that takes whatever it is given for a number.
    const check = () => {
      assertJson({ events: [{ pieces }] })
      return 'read'
    }
    expect(fuzz({ name: 'planted', weight: 1, inputs, check }, { cases: 5, seed: SEED }).find).toContain(
      'no JSON holds',
    )
    expect(() => assertJson({ events: [{ pieces: 6 }] })).not.toThrow()
  })

  it('[H14] an answer with a stack, a bare 400, a 500', () => {
    const request = { method: 'GET', path: '/', headers: [], body: '', coding: 'plain' } as const
    const type = 'application/problem+json'
    const good = { type: 'about:blank', title: 'Bad request', status: 400, detail: 'The body is no valid JSON.' }
    const answered =
      (status: number, body: object, of = type) =>
      () =>
        assertAnswer({ status, type: of, body: JSON.stringify(body) }, request)
    expect(answered(400, good)).not.toThrow()
    expect(answered(500, { ...good, status: 500 })).toThrow(Find)
    expect(answered(400, { ...good, detail: '' })).toThrow(Find)
    expect(answered(400, good, 'text/html')).toThrow(Find)
    expect(answered(400, { ...good, detail: 'Failed in /srv/board/server/http/api.ts:12.' })).toThrow(Find)
  })
})

/** Takes three times what a case may in this test. */
function burn(): string {
  const before = process.cpuUsage()
  while (process.cpuUsage(before).user < 3_000 * HANGS_MS);
  return 'read'
}
