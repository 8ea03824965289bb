import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { buildIfNeeded } from '../../server/start/build-if-needed.mjs'
import { StartError } from '../../server/start/project.mjs'
import { hashSources } from '../../server/start/sources.mjs'

/** Stands in for the real build: it says what it was given, or fails when a source says so. */
const BUILD = `
import { appendFileSync, existsSync, writeFileSync } from 'node:fs'
appendFileSync('builds.log', 'built\\n')
if (existsSync('client/broken.ts')) process.exit(1)
writeFileSync(process.argv[2] + '/server.mjs', '// ' + process.argv[3])
`

let root = ''

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'boilboard-build-'))
  for (const folder of ['client/wall', 'server/start', 'shared-core'])
    mkdirSync(join(root, folder), { recursive: true })
  for (const file of ['package.json', 'package-lock.json', 'tsconfig.json', 'vite.config.ts'])
    cpSync(file, join(root, file))
  write('client/wall/view.ts', 'export const rods = 1\n')
  write('server/start/build.mjs', BUILD)
  vi.spyOn(console, 'log').mockImplementation(() => undefined)
})

afterEach(() => {
  vi.restoreAllMocks()
  rmSync(root, { recursive: true, force: true })
})

describe('a build', () => {
  it('is made once for the same sources', async () => {
    await buildIfNeeded(root)
    await buildIfNeeded(root)
    expect(builds()).toBe(1)
    expect(read('dist/server.mjs')).toBe(`// ${hashSources(root).slice(0, 12)}`)
  })

  it.each(['client/wall/view.ts', 'server/main.ts', 'shared-core/units.ts', 'package-lock.json', 'vite.config.ts'])(
    'is made again after %s changed',
    async (path) => {
      await buildIfNeeded(root)
      write(path, 'changed')
      await buildIfNeeded(root)
      expect(builds()).toBe(2)
    },
  )

  it('is not made again for a document or a test', async () => {
    await buildIfNeeded(root)
    write('shared-core/rules.md', '- **L1** …')
    mkdirSync(join(root, 'tests'))
    write('tests/line.test.ts', '')
    await buildIfNeeded(root)
    expect(builds()).toBe(1)
  })

  it('that fails says so and leaves the last good one', async () => {
    await buildIfNeeded(root)
    const before = read('dist/server.mjs')
    write('client/broken.ts', '')
    await expect(buildIfNeeded(root)).rejects.toThrow(StartError)
    expect(read('dist/server.mjs')).toBe(before)
    await expect(buildIfNeeded(root)).rejects.toThrow(/build failed/)
  })

  it('leaves nothing of the one before', async () => {
    await buildIfNeeded(root)
    write('dist/old-asset.js', '')
    write('client/wall/view.ts', 'changed')
    await buildIfNeeded(root)
    expect(() => read('dist/old-asset.js')).toThrow(/ENOENT/)
  })
})

describe('the hash of the sources', () => {
  it('changes when a file is renamed or moves its text to a neighbour', () => {
    write('client/a.ts', 'one')
    write('client/b.ts', 'two')
    const first = hashSources(root)
    write('client/a.ts', 'onet')
    write('client/b.ts', 'wo')
    expect(hashSources(root)).not.toBe(first)
  })
})

function write(path: string, text: string) {
  writeFileSync(join(root, path), text)
}

function read(path: string) {
  return readFileSync(join(root, path), 'utf8')
}

function builds() {
  return read('builds.log').trim().split('\n').length
}
