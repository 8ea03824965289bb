import { build } from 'esbuild'
import type { Act } from '../../shared-core/day/commands.ts'
import { anyAct } from '../core/support/any-act.ts'
import { shopWith } from '../core/support/shop.ts'
import { expect, test } from './support/shop-server.ts'

/** Enough to reach every kind of act with this seed; see the property that draws them. */
const ACTS = 150

test('[P1] given a morning of any acts, when folded in Chromium, then the hash is the one of Node', async ({
  page,
  server,
}) => {
  await server.start(shopWith())
  const kinds = new Set<string>()
  for (let n = 0; n < ACTS; n += 1) {
    const act: Act = anyAct(await server.state(), n * 2_654_435)
    if ((await server.ask(act)).kind === 'taken') kinds.add(act.type)
  }
  expect(kinds.size).toBeGreaterThan(12)
  const { entries } = await (await fetch(`${server.address}/api/v1/events?after=0`)).json()
  const bundle = await build({
    entryPoints: ['tests/screens/support/fold-in-page.ts'],
    bundle: true,
    write: false,
    format: 'iife',
    target: 'es2020',
  })
  await page.goto('about:blank')
  await page.addScriptTag({ content: bundle.outputFiles[0]?.text ?? '' })
  const inPage = await page.evaluate((all) => {
    const { hashOfFold } = globalThis as unknown as { hashOfFold: (entries: unknown[]) => string }
    return hashOfFold(all)
  }, entries)
  expect(inPage).toBe(await server.hash())
})
