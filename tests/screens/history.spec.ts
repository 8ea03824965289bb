import { varietyId } from '../../shared-core/ids.ts'
import { ago, noonShop, openDeskByTouch, part, twoLoads } from './support/desk-page.ts'
import { expect, test } from './support/shop-server.ts'

test('given a day of two loads and a sell-out, when it is replayed, then each instant shows what was in the oven and on the rods, by touch, drag and keys', async ({
  browser,
  server,
}) => {
  await server.start(noonShop())
  await twoLoads(server)
  await ago(server, 60, { type: 'sell', lines: [{ varietyId: varietyId('sesame'), pieces: 36 }] })
  await ago(server, 1, { type: 'closeDay', crewMinutes: 300 })
  const page = await openDeskByTouch(browser, server, { place: 'past' })
  await page.getByRole('link', { name: /^Look at/ }).tap()
  const replay = part(page, 'replay')
  await expect(replay.locator('.desk-lanes-load')).toHaveCount(2)
  await expect(replay.locator('.desk-lanes-gap')).toHaveCount(1)

  // What ran out leads to its instant.
  await part(page, 'gaps')
    .getByRole('button', { name: /^Sesame: none/ })
    .tap()
  const rod = (name: string) => replay.locator('.desk-rods li').filter({ hasText: name }).locator('.desk-rod-number')
  await expect(rod('Sesame')).toHaveText('0')
  await expect(rod('Poppy')).toHaveText('24')

  // Keys: from there back, a quarter of an hour at a time, to when the first load was in.
  const ruler = replay.getByRole('slider', { name: 'Instant of the day' })
  await ruler.focus()
  for (let quarter = 0; quarter < 5; quarter++) await page.keyboard.press('PageDown')
  await expect(rod('Sesame')).toHaveCount(0)
  for (let minute = 0; minute < 10; minute++) await page.keyboard.press('ArrowLeft')
  await expect(replay.getByText(/^Sesame 36, (first|second) side/)).toBeVisible()
  const clockOf = () => ruler.getAttribute('aria-valuetext')
  const before = await clockOf()
  await page.keyboard.press('ArrowRight')
  await expect.poll(clockOf).not.toBe(before)

  // A drag along the lanes: the second load's middle.
  const bar = await replay.locator('.desk-lanes-load').nth(1).boundingBox()
  const first = await replay.locator('.desk-lanes-load').first().boundingBox()
  if (bar === null || first === null) throw new Error('no bars')
  await page.mouse.move(first.x, first.y + 4)
  await page.mouse.down()
  await page.mouse.move(bar.x + bar.width / 2, bar.y + 4, { steps: 8 })
  await page.mouse.up()
  await expect(replay.getByText(/^Poppy 24, (first|second) side/)).toBeVisible()

  // It goes on by itself, and stops.
  const paused = await clockOf()
  await replay.getByRole('button', { name: 'Play' }).tap()
  await expect.poll(clockOf).not.toBe(paused)
  await replay.getByRole('button', { name: 'Stop' }).tap()
  await expect(replay.getByRole('button', { name: 'Play' })).toBeVisible()
  await expect(part(page, 'figures').getByText('in 5 crew hours')).toBeVisible()
})

test('given a link to a day, when it is opened, then that day stands there; one that never was is told', async ({
  browser,
  server,
}) => {
  await server.start(noonShop())
  await twoLoads(server)
  await ago(server, 1, { type: 'closeDay' })
  const label = (await server.state()).lastDay?.label ?? ''
  const page = await openDeskByTouch(browser, server, { place: `past/${label}`, size: { width: 390, height: 844 } })
  await expect(part(page, 'replay').locator('.desk-lanes-load')).toHaveCount(2)
  await page.getByRole('link', { name: '← All days' }).tap()
  await expect(part(page, 'days').getByRole('link', { name: /^Look at/ })).toBeVisible()
  await page.goto(`${server.address}/desk#past/1999-01-01`)
  await expect(page.getByText('The shop has no such day.')).toBeVisible()
})

test('given a morning of hundreds of entries, when one goes to and fro in it, then what is shown follows each step', async ({
  browser,
  server,
}) => {
  await server.start(noonShop())
  await twoLoads(server)
  for (let n = 0; n < 300; n++) {
    await ago(server, 90 - n * 0.25, {
      type: 'sell',
      lines: [{ varietyId: varietyId(n % 2 === 0 ? 'sesame' : 'poppy'), pieces: 1 }],
    })
  }
  const page = await openDeskByTouch(browser, server, { place: 'past/today' })
  const ruler = page.getByRole('slider', { name: 'Instant of the day' })
  await expect(ruler).toBeVisible()
  const { medianMs, texts } = await ruler.evaluate(async (input) => {
    if (!(input instanceof HTMLInputElement)) throw new Error('no slider')
    const [least, most] = [Number(input.min), Number(input.max)]
    const took: number[] = []
    const texts = new Set<string>()
    for (let step = 0; step < 40; step++) {
      // To and fro, so that no step is near the last one.
      const part = ((step * 13) % 40) / 40
      const beganMs = performance.now()
      input.value = String(least + part * (most - least))
      input.dispatchEvent(new Event('input', { bubbles: true }))
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
      took.push(performance.now() - beganMs)
      texts.add(input.getAttribute('aria-valuetext') ?? '')
    }
    const medianMs = took.sort((one, other) => one - other)[20] ?? Number.NaN
    return { medianMs, texts: [...texts] }
  })
  expect(texts.length).toBeGreaterThan(20)
  test.info().annotations.push({ type: 'time', description: `${medianMs.toFixed(1)} ms a step` })
})
