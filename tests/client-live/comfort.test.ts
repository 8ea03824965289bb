import { describe, expect, it } from 'vitest'
import { comfortOf } from '../../client/live/comfort.ts'
import { changedSettings, defaultSettings } from '../../client/live/device-settings.ts'

const NOON = 12 * 60

describe('how a screen looks', () => {
  it.each([
    // role, chosen, minute, system dark, theme
    ['wall', 'usual', NOON, false, 'dark'],
    ['bench', 'usual', 0, true, 'light'],
    ['wall', 'light', 0, true, 'light'],
    ['desk', 'dark', NOON, false, 'dark'],
    ['bench', 'clock', 3 * 60, false, 'dark'],
    ['bench', 'clock', 7 * 60, false, 'light'],
    ['bench', 'clock', 19 * 60, false, 'dark'],
    ['bench', 'clock', 19 * 60 - 1, false, 'light'],
    ['wall', 'clock', null, false, 'dark'],
    ['counter', 'clock', null, true, 'light'],
    ['counter', 'system', NOON, true, 'dark'],
    ['wall', 'system', 0, false, 'light'],
  ] as const)(
    'given a %s set to %s at minute %s, system dark %s, then %s',
    (role, theme, minute, isSystemDark, then) => {
      const settings = changedSettings(defaultSettings(role), { theme })
      expect(comfortOf({ settings, minute, isSystemDark }).theme).toBe(then)
    },
  )

  it.each([
    [80, 'usual'],
    [100, 'usual'],
    [125, 'large'],
    [150, 'large'],
  ] as const)('given print of %d percent, then it counts as %s', (textPercent, print) => {
    const settings = changedSettings(defaultSettings('bench'), { textPercent })
    expect(comfortOf({ settings, minute: null, isSystemDark: false }).print).toBe(print)
  })
})
