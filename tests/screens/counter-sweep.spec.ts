import { varietyId } from '../../shared-core/ids.ts'
import { DEFAULT_COUNTER } from '../../shared-core/shop/default-rules.ts'
import { ago, axeFindings, CounterGlass, left, shopAtHour, small, unreadable } from './support/counter-glass.ts'
import { lookMark } from './support/looks.ts'
import type { ShopServer } from './support/shop-server.ts'
import { expect, test } from './support/shop-server.ts'

const SIX = ['sesame', 'poppy', 'plain', 'focaccia', 'cheddar', 'rye']

/** Counted in half-dozens two hours ago; since then six dozen were sold of which nobody said the kinds. */
async function sixInDoubt(server: ShopServer): Promise<void> {
  await server.start(shopAtHour(9))
  const counts = SIX.map((name) => ({ varietyId: varietyId(name), pieces: 30, within: 3 }))
  await ago(server, 125, { type: 'sweep', counts })
  for (const minutes of [100, 80, 60, 40, 20, 5]) await ago(server, minutes, { type: 'sellUnnamed', pieces: 12 })
}

for (const [n, language] of (['en', 'es'] as const).entries()) {
  test(`given six rods in doubt, when they are swept in ${language}, then it takes at most eight touches and one command${lookMark(n)}`, async ({
    browser,
    server,
  }) => {
    await sixInDoubt(server)
    const glass = await CounterGlass.open(browser, server, { language })
    const { page } = glass
    await expect(glass.foot('sweep')).toHaveAttribute('data-block', 'act')
    const asked = Number(/\d+/.exec((await glass.foot('sweep').textContent()) ?? '')?.[0])
    expect(asked).toBeGreaterThanOrEqual(4)
    expect(await unreadable(page)).toEqual([])
    const before = (await server.state()).seq

    await glass.touch(glass.foot('sweep'))
    await expect(page.locator('.counter-swept button')).toHaveCount(asked)
    expect(await unreadable(page)).toEqual([])
    expect(await small(page.locator('.counter button'))).toEqual([])
    expect(await axeFindings(page)).toEqual([])
    for (let rod = 0; rod < asked; rod++)
      await glass.touch(page.locator('.counter-halves button').nth(rod === 0 ? 0 : 1))
    await glass.touch(page.locator('.counter-sweep .key-act'))
    await expect(page.locator('.counter-question')).toBeVisible()
    expect(glass.touches).toBe(asked + 2)
    expect(glass.touches).toBeLessThanOrEqual(8)
    test.info().annotations.push({ type: 'touches', description: `sweep of ${asked} rods: ${glass.touches}` })
    expect(await unreadable(page)).toEqual([])

    await expect.poll(async () => (await server.state()).seq).toBe(before + 1)
    const counted = [...(await server.state()).stock.values()].filter((one) => one.counted?.within !== undefined)
    expect(counted.filter((one) => one.counted?.pieces === 0 && one.counted.within === 0)).toHaveLength(1)
    expect(counted.filter((one) => one.counted?.pieces === 6 && one.counted.within === 3)).toHaveLength(asked - 1)
  })
}

test('given a count that finds fewer, then they are told as unexplained, and can be taken back', async ({
  browser,
  server,
}) => {
  await server.start(shopAtHour(9))
  await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 20 })
  const glass = await CounterGlass.open(browser, server)
  await glass.touch(glass.rod('sesame'))
  await glass.touch(glass.named('Count'))
  await glass.touch(glass.named('12: 2 half-dozens'))
  await glass.touch(glass.named('and 5 singles'))
  await glass.touch(glass.named('Counted 17'))
  await expect(glass.page.getByText('Sesame: 3 fewer than known, kept as unexplained')).toBeVisible()
  await expect(glass.number('sesame')).toHaveText('17')
  await expect(glass.page.locator('[data-variety="sesame"]')).toContainText('counted now')
  const account = async () => (await server.state()).account.get('plain' as never)?.unexplained
  await expect.poll(account).toBe(-17)
  await glass.touch(glass.named('Take back'))
  await expect(glass.number('sesame')).toHaveText('20')
  await expect.poll(account).toBe(-20)
})

test('given a low rod, when its last piece goes, then one touch under the rack says so, and a sale on none still goes through', async ({
  browser,
  server,
}) => {
  await server.start(shopAtHour(9))
  await server.act({ type: 'count', varietyId: varietyId('poppy'), pieces: 2 })
  await server.act({ type: 'count', varietyId: varietyId('plain'), pieces: 24 })
  const glass = await CounterGlass.open(browser, server)
  await glass.touch(glass.named('Last Poppy gone'))
  expect(glass.touches).toBe(1)
  await expect(glass.page.getByText('Poppy: 2 fewer than known, kept as unexplained')).toBeVisible()
  await expect(glass.page.locator('[data-variety="poppy"]')).toContainText('sold out')
  await expect(glass.number('poppy')).toHaveText('0')
  await glass.touch(glass.named('Good'))

  // From its own rod, too, however many it is thought to hold.
  await glass.touch(glass.rod('plain'))
  await expect(glass.line).toContainText('Plain: 24, counted')
  await glass.touch(glass.named('Last one gone'))
  await expect(glass.number('plain')).toHaveText('0')
  await glass.touch(glass.named('Take back'))
  await expect(glass.number('plain')).toHaveText('24')

  await glass.touch(glass.rod('poppy'))
  await expect(glass.line).toContainText('sold out since')
  await glass.touch(glass.named('sold Poppy 6'))
  await expect(glass.page.getByText('sold Poppy 6')).toBeVisible()
  await expect.poll(async () => (await server.state()).stock.get(varietyId('poppy'))?.soldToday).toBe(6)
  expect(await left(server, 'poppy')).toBe(0)
})

for (const [salesFrom, language, says] of [
  ['till', 'en', 'The till tells what is sold'],
  ['sweeps', 'es', 'Aquí nadie marca ventas'],
] as const) {
  test(`given sales from ${salesFrom}, then the counter says so in words, counts first and has no key that sells`, async ({
    browser,
    server,
  }) => {
    await server.start(shopAtHour(9, { counter: { ...DEFAULT_COUNTER, salesFrom } }))
    await server.act({ type: 'count', varietyId: varietyId('sesame'), pieces: 20 })
    const glass = await CounterGlass.open(browser, server, { language })
    const { page } = glass
    await expect(glass.line).toContainText(says)
    await expect(page.locator('.counter-idle [data-key]').first()).toHaveAttribute('data-key', 'sweep')
    expect(await unreadable(page)).toEqual([])
    await glass.touch(glass.rod('sesame'))
    await expect(page.locator('.counter-sell')).toHaveCount(0)
    await expect(page.locator('.counter-keys .key-act')).toHaveCount(1)
    expect(await unreadable(page)).toEqual([])
    expect(await axeFindings(page)).toEqual([])
    await glass.touch(page.locator('.counter-keys .key-act'))
    await expect(page.locator('.counter-rings')).toBeVisible()
  })
}
