import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { StartError } from '../../server/start/project.mjs'
import { chromiumPaths, ensureChromium } from '../run/chromium.mjs'

const SYSTEM = '/usr/bin/chromium'
const PLAYWRIGHTS = '/cache/playwright/chrome'

beforeEach(() => {
  vi.spyOn(console, 'log').mockImplementation(() => undefined)
})
afterEach(() => {
  vi.restoreAllMocks()
})

describe('the Chromium for the screen tests', () => {
  it('is the one that is named', async () => {
    const machine = madeMachine({ there: ['/opt/mine', SYSTEM], env: { BOILBOARD_CHROMIUM: '/opt/mine' } })
    await expect(ensureChromium(machine)).resolves.toBe('/opt/mine')
  })

  it('is not silently another one than the one that is named', async () => {
    const machine = madeMachine({ there: [SYSTEM], env: { BOILBOARD_CHROMIUM: '/opt/mine' } })
    await expect(ensureChromium(machine)).rejects.toThrow(/BOILBOARD_CHROMIUM names \/opt\/mine/)
  })

  it('is the system’s, and nothing is installed', async () => {
    const machine = madeMachine({ there: [SYSTEM, PLAYWRIGHTS], debian: true })
    await expect(ensureChromium(machine)).resolves.toBe(SYSTEM)
    expect(machine.ran).toEqual([])
  })

  it('is looked for on the path under each of its names', () => {
    const exists = (path: string) => path === '/opt/bin/google-chrome'
    expect(chromiumPaths({ env: { PATH: '/bin:/opt/bin' }, exists })).toEqual(['/opt/bin/google-chrome'])
  })

  it('is Debian’s package, as root on Debian', async () => {
    const machine = madeMachine({ debian: true, brings: { 'apt-get install': SYSTEM } })
    await expect(ensureChromium(machine)).resolves.toBe(SYSTEM)
    expect(machine.ran).toEqual(['apt-get update', 'apt-get install'])
  })

  it('is Debian’s package even where the package lists could not be fetched anew', async () => {
    const machine = madeMachine({ debian: true, brings: { 'apt-get install': SYSTEM }, failing: ['apt-get update'] })
    await expect(ensureChromium(machine)).resolves.toBe(SYSTEM)
  })

  it('is Playwright’s download for anyone else', async () => {
    const machine = madeMachine({ debian: true, isRoot: false, brings: { 'playwright install': PLAYWRIGHTS } })
    await expect(ensureChromium(machine)).resolves.toBe(PLAYWRIGHTS)
    expect(machine.ran).toEqual(['playwright install'])
  })

  it('is fetched once only', async () => {
    const machine = madeMachine({ there: [PLAYWRIGHTS] })
    await expect(ensureChromium(machine)).resolves.toBe(PLAYWRIGHTS)
    expect(machine.ran).toEqual([])
  })

  it('is not a script that only tells how to install one', async () => {
    const machine = madeMachine({ there: [SYSTEM, PLAYWRIGHTS], dumb: [SYSTEM] })
    await expect(ensureChromium(machine)).resolves.toBe(PLAYWRIGHTS)
  })

  it('is asked for in a sentence when there is no way', async () => {
    const found = ensureChromium(madeMachine({ debian: true }))
    await expect(found).rejects.toThrow(StartError)
    await expect(found).rejects.toThrow(/set BOILBOARD_CHROMIUM/)
  })
})

interface MachineLook {
  readonly there?: readonly string[]
  readonly dumb?: readonly string[]
  readonly env?: Readonly<Record<string, string>>
  readonly isRoot?: boolean
  readonly debian?: boolean
  readonly brings?: Readonly<Record<string, string>>
  readonly failing?: readonly string[]
}

function madeMachine({ there = [], dumb = [], env = {}, isRoot = true, debian = false, ...does }: MachineLook) {
  const files = new Set([...there, ...(debian ? ['/etc/debian_version'] : [])])
  const ran: string[] = []
  return {
    ran,
    env: { PATH: '/usr/bin:/bin', ...env },
    isRoot,
    exists: (path: string) => files.has(path),
    starts: async (path: string) => files.has(path) && !dumb.includes(path),
    playwrightPath: async () => PLAYWRIGHTS,
    run: async (command: string, args: readonly string[]) => {
      const what = command === 'apt-get' ? `apt-get ${args[0]}` : `playwright ${args[1]}`
      ran.push(what)
      const brought = does.brings?.[what]
      if (brought !== undefined) files.add(brought)
      return !(does.failing ?? []).includes(what)
    },
  }
}
