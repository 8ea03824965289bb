import { describe, expect, it } from 'vitest'
import { checkNames, checkSizes } from './tidy/files.ts'
import { checkClientStaysLight, checkImports } from './tidy/imports.ts'
import { checkLeftovers, checkShortcuts } from './tidy/leftovers.ts'
import { checkPurity } from './tidy/purity.ts'
import { checkRules } from './tidy/rules.ts'
import type { Finding, SourceFile } from './tidy/source-files.ts'
import { projectFiles } from './tidy/source-files.ts'

const files = projectFiles()
const CHECKS = {
  checkImports,
  checkClientStaysLight,
  checkPurity,
  checkSizes,
  checkNames,
  checkLeftovers,
  checkShortcuts,
  checkRules,
}

describe('the project', () => {
  it.each(Object.entries(CHECKS))('%s finds nothing', (_name, check) => {
    expect(inWords(check(files))).toEqual([])
  })

  it('is what the checks look at', () => {
    const paths = files.map((file) => file.path)
    expect(paths).toEqual(expect.arrayContaining(['tests/tidy.test.ts', 'server/start/start.mjs', 'package.json']))
  })
})

describe('a planted fault is found by', () => {
  it.each([
    ['shared-core/day/apply.ts', "import { room } from '../../server/live/room.ts'"],
    ['shared-core/day/apply.ts', "import { readFileSync } from 'node:fs'"],
    ['shared-core/day/apply.ts', "import { DateTime } from 'luxon'"],
    ['server/main.ts', "import { view } from '../client/wall/view.ts'"],
    ['server/main.ts', "import { madeShop } from '../tests/core/made-shop.ts'"],
    ['server/main.ts', "const later = await import('../client/wall/view.ts')"],
    ['server/main.ts', "import {\n  a,\n  b,\n} from '../client/wall/view.ts'"],
    ['server/journal/journal.ts', "export { room } from '../live/room.ts'"],
    ['server/start/start.mjs', "import express from 'express'"],
    ['client/wall/rods.tsx', "import { ring } from '../bench/ring.tsx'"],
    ['client/wall/rods.tsx', "import '../bench/bench.css'"],
    ['client/wall/rods.tsx', "import { io } from 'socket.io-client'"],
    ['client/live/store.ts', "import { useState } from 'preact/hooks'"],
    ['client/live/store.ts', "import { ring } from '../parts/ring.tsx'"],
    ['client/words/words.ts', "import { render } from 'preact'"],
    ['elsewhere/thing.ts', "import { render } from 'preact'"],
  ])('checkImports in %s: %s', (path, text) => {
    expect(checkImports([{ path, text }])).toHaveLength(1)
  })

  it('checkClientStaysLight, through a file of the core', () => {
    const core = { path: 'shared-core/shop/schema.ts', text: "import { z } from 'zod'" }
    const screen = { path: 'client/desk/view.ts', text: "import { schema } from '../../shared-core/shop/schema.ts'" }
    expect(checkClientStaysLight([screen, core])).toHaveLength(1)
    const typed = { ...screen, text: screen.text.replace('import', 'import type') }
    expect(checkClientStaysLight([typed, core])).toEqual([])
  })

  it.each([
    'const at = new Date(0)',
    'const at = Date.parse(text)',
    'const any = Math.random()',
    'const name = word.toLocaleUpperCase()',
    'names.sort((a, b) => a.localeCompare(b))',
    'const format = new Intl.NumberFormat()',
    'globalThis.count = 1',
    'const line = `at $' + '{Date.now()}`',
    'const load = async () => 1',
    'const weight = Math.exp(-rate)',
    'const weight = base ** 2',
  ])('checkPurity: %s', (text) => {
    expect(checkPurity([{ path: 'shared-core/line/dwell.ts', text }])).not.toEqual([])
  })

  it.each(['const now = Date.now()', 'const now = new Date()', 'const now = new Date', 'const now = Date()'])(
    'checkPurity, where a calendar is excused too: %s',
    (text) => {
      expect(checkPurity([{ path: 'shared-core/day/label.ts', text }])).toHaveLength(1)
      expect(checkPurity([{ path: 'shared-core/day/label.ts', text: 'new Date(Date.parse(text))' }])).toEqual([])
    },
  )

  it('checkSizes', () => {
    const long = (path: string, lines: number): SourceFile => ({ path, text: 'x\n'.repeat(lines) })
    expect(checkSizes([long('server/main.ts', 301), long('tests/core/a.test.ts', 401)])).toHaveLength(2)
    expect(checkSizes([long('server/main.ts', 300), long('tests/core/a.test.ts', 400)])).toEqual([])
  })

  it.each([
    'client/parts/index.ts',
    'client/parts/utils.ts',
    'server/helpers/x.ts',
    'server/RunOut.ts',
    'client/a_b.ts',
  ])('checkNames: %s', (path) => {
    expect(checkNames([{ path, text: '' }])).toHaveLength(1)
  })

  it.each([
    `// ${'TO'}DO: later`,
    `cd ${'/wo'}rk/main`,
    `const folder = '${'/ho'}me/someone'`,
    `${'registry.'}npmjs.org`,
  ])('checkLeftovers: %s', (text) => {
    expect(checkLeftovers([{ path: 'server/main.ts', text }])).toHaveLength(1)
  })

  it.each([
    `// ${'@ts-'}ignore`,
    `// ${'@ts-'}expect-error`,
    "it.only('x')",
    "test.describe.skip('x')",
    "export * from './a.ts'",
  ])('checkShortcuts: %s', (text) => {
    expect(checkShortcuts([{ path: 'tests/core/line.test.ts', text }])).toHaveLength(1)
  })

  it.each([
    ['no rules at all', '', "it('[L1] x')"],
    ['an untested rule', '- **L1** one\n- **L2** two', "it('[L1] x')"],
    ['an unknown rule', '- **L1** one', "it('[L1, L9] x')"],
    ['a rule given twice', '- **L1** one\n- **L1** again', "it('[L1] x')"],
  ])('checkRules: %s', (_what, rules, test) => {
    const found = checkRules([
      { path: 'shared-core/rules.md', text: rules },
      { path: 'tests/core/line.test.ts', text: test },
    ])
    expect(found).toHaveLength(1)
  })
})

describe('what is in order passes', () => {
  it('imports along the directions, words in comments and strings', () => {
    const good: SourceFile[] = [
      { path: 'client/wall/view.ts', text: "import type { Shop } from '../../shared-core/shop/shop.ts'" },
      { path: 'client/wall/view.ts', text: "// import { x } from '../bench/x.ts'" },
      { path: 'shared-core/line/dwell.ts', text: "/** Date and Math.random are not used. */\nconst word = 'Intl'" },
    ]
    expect(inWords([...checkImports(good), ...checkPurity(good), ...checkLeftovers(good)])).toEqual([])
  })

  it('every rule cited', () => {
    const rules = { path: 'shared-core/rules.md', text: '- **L1** one\n- **S2** two' }
    const test = { path: 'tests/core/line.test.ts', text: "it.each([])('[L1, S2] given …')" }
    expect(checkRules([rules, test])).toEqual([])
  })
})

function inWords(findings: readonly Finding[]): string[] {
  return findings.map(({ path, what }) => `${path} ${what}`)
}
