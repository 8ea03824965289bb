import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { installComplaint, npmCommand, whatIsMissing } from '../../server/start/install.mjs'
import { LEAST_NODE, nodeComplaint } from '../../server/start/node-version.mjs'

describe('the Node that starts', () => {
  it.each([
    ['20.19.0', true],
    ['20.20.2', true],
    ['22.0.0', true],
    ['100.0.0', true],
    ['20.18.9', false],
    ['18.20.4', false],
    ['9.99.0', false],
  ])('%s is new enough: %s', (version, enough) => {
    expect(nodeComplaint(version) === null).toBe(enough)
  })

  it('is named in the complaint, with what would be right', () => {
    expect(nodeComplaint('18.20.4')).toMatch(/needs Node 20\.19\.0 or newer; this is Node 18\.20\.4/)
  })

  it('is the one that package.json states', () => {
    const { engines } = JSON.parse(readFileSync('package.json', 'utf8'))
    expect(`${engines.node}.0`).toBe(`>=${LEAST_NODE}`)
  })
})

describe('what is missing', () => {
  const lock = {
    '': { version: '0.1.0' },
    'node_modules/express': { version: '5.3.0' },
    'node_modules/express/node_modules/ms': { version: '2.1.3' },
    'node_modules/fsevents': { version: '2.3.3', optional: true, os: ['darwin'] },
    'node_modules/@esbuild/linux-x64': { version: '0.28.2', optional: true, os: ['linux'], cpu: ['x64'] },
    'node_modules/@rolldown/musl': { version: '1.2.19', optional: true, os: ['linux'], cpu: ['x64'], libc: ['musl'] },
    'node_modules/wasm-only': { version: '1.0.0', optional: true },
  }
  const linux = { lock, platform: 'linux', arch: 'x64' }
  const installed = {
    'node_modules/express': { version: '5.3.0' },
    'node_modules/express/node_modules/ms': { version: '2.1.3' },
    'node_modules/@esbuild/linux-x64': { version: '0.28.2' },
  }

  it('is everything, when npm has no record', () => {
    expect(whatIsMissing({ ...linux, installed: null })).toBe('none are installed yet')
  })

  it('is nothing, when all that this platform wants is there', () => {
    expect(whatIsMissing({ ...linux, installed })).toBeNull()
  })

  it('is a package of another version', () => {
    const old = { ...installed, 'node_modules/express': { version: '5.2.0' } }
    expect(whatIsMissing({ ...linux, installed: old })).toBe('missing: express')
  })

  it('is a package that was pruned', () => {
    expect(whatIsMissing({ ...linux, installed: { 'node_modules/express': { version: '5.3.0' } } })).toBe(
      'missing: ms and 1 more',
    )
  })

  it('is this platform’s binary, in a folder copied from another', () => {
    expect(whatIsMissing({ ...linux, installed, platform: 'darwin' })).toBe('missing: fsevents')
    expect(whatIsMissing({ ...linux, installed, arch: 'arm64' })).toBeNull()
  })

  it('is nothing here and now, by the real lock', () => {
    const read = (file: string) => JSON.parse(readFileSync(file, 'utf8')).packages
    const real = { lock: read('package-lock.json'), installed: read('node_modules/.package-lock.json') }
    expect(whatIsMissing({ ...real, platform: process.platform, arch: process.arch })).toBeNull()
  })
})

describe('npm', () => {
  it('is the one that started us', () => {
    const npm = npmCommand({ npm_execpath: '/opt/npm/bin/npm-cli.js' }, 'linux')
    expect(npm).toEqual({ command: process.execPath, args: ['/opt/npm/bin/npm-cli.js'], shell: false })
  })

  it('is the one on the path otherwise, also when another tool started us', () => {
    expect(npmCommand({}, 'linux')).toEqual({ command: 'npm', args: [], shell: false })
    expect(npmCommand({ npm_execpath: '/opt/yarn/yarn.js' }, 'linux').command).toBe('npm')
    expect(npmCommand({}, 'win32').shell).toBe(true)
  })

  it('without a network is explained, and anything else quoted', () => {
    expect(installComplaint('npm error code EAI_AGAIN\nnpm error request to …')).toMatch(/Connect this machine/)
    expect(installComplaint('npm error code EUSAGE\n')).toBe(
      'npm could not install the packages. Its last words:\nnpm error code EUSAGE',
    )
  })
})
