import { spawnSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { UnitParts } from '../../server/operation/systemd-unit.ts'
import { systemdUnit } from '../../server/operation/systemd-unit.ts'
import { tempFolder } from './support/temp-folder.ts'

const PARTS: UnitParts = {
  root: '/opt/boilboard',
  node: process.execPath,
  shop: '/var/lib/boilboard/my shop',
  copies: '/mnt/stick/copies $1 100%',
  user: 'boilboard',
  port: 4610,
  options: ['--https'],
}

describe('a unit for systemd', () => {
  it('[N13] given a shop, when printed, then it is started at boot and again, as its user, and writes to its folders only', () => {
    const lines = systemdUnit(PARTS).split('\n')
    expect(lines).toEqual(
      expect.arrayContaining([
        `ExecStart=${process.execPath} /opt/boilboard/dist/server.mjs --shop "/var/lib/boilboard/my shop" --copies "/mnt/stick/copies $$1 100%%" --https`,
        'User=boilboard',
        'Environment=NODE_ENV=production PORT=4610',
        'Restart=always',
        'StartLimitIntervalSec=0',
        'NoNewPrivileges=yes',
        'ProtectSystem=strict',
        'ReadWritePaths="/var/lib/boilboard/my shop" "/mnt/stick/copies $1 100%%"',
        'WantedBy=multi-user.target',
      ]),
    )
  })

  it.each([
    ['a path that is not absolute', { shop: 'my-shop' }],
    ['a line break, which would begin another setting', { shop: '/x\nExecStartPre=/bin/false' }],
    ['a line break in the user', { user: 'me\nUser=root' }],
  ])('[N13] given %s, when printed, then it throws', (_what, wrong) => {
    expect(() => systemdUnit({ ...PARTS, ...wrong })).toThrow(/absolute|line break/)
  })

  it('[N13] given systemd is here, when it reads the unit, then it finds nothing wrong, and something in a spoilt one', () => {
    const folder = tempFolder()
    const root = join(folder, 'root')
    mkdirSync(root)
    const verified = (name: string, text: string) => {
      writeFileSync(join(folder, name), text)
      return spawnSync('systemd-analyze', ['verify', join(folder, name)], { encoding: 'utf8' })
    }
    const unit = systemdUnit({ ...PARTS, root, user: 'root' })
    const good = verified('good.service', unit)
    // Elsewhere than on a Linux with systemd there is nobody to ask.
    if (good.error !== undefined) return
    expect(good.stderr).toBe('')
    const spoilt = verified('spoilt.service', unit.replace('Restart=always', 'Restart=sometimes'))
    expect(spoilt.stderr).toContain('restart')
  })
})
