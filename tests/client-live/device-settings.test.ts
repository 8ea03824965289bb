import { describe, expect, it } from 'vitest'
import { changedSettings, defaultSettings, loadSettings, saveSettings } from '../../client/live/device-settings.ts'
import { randomId } from '../../client/live/random-id.ts'
import { stationId } from '../../shared-core/ids.ts'
import { FakeSaved } from './support/fake-device.ts'

const kettle = stationId('kettle')

describe('what a device is set to', () => {
  it('given nothing kept, then sane values by role', () => {
    const saved = new FakeSaved()
    expect(loadSettings(saved, 'wall')).toMatchObject({
      role: 'wall',
      diagonalInches: 43,
      viewingMetres: 3,
      textPercent: 100,
    })
    expect(loadSettings(saved, 'counter')).toMatchObject({
      role: 'counter',
      volumePercent: 0,
      stationId: null,
      language: null,
    })
  })

  it('given a change, then it is the same after a reload, and another role’s are its own', () => {
    const saved = new FakeSaved()
    const quiet = { fromMinute: 1_320, toMinute: 240 }
    const changed = changedSettings(defaultSettings('bench'), {
      name: ' By the oven ',
      stationId: kettle,
      language: 'es',
      quiet,
      keys: { F13: kettle },
    })
    expect(saveSettings(saved, changed)).toBe(true)
    expect(loadSettings(saved, 'bench')).toEqual({ ...changed, name: 'By the oven' })
    expect(loadSettings(saved, 'wall')).toEqual(defaultSettings('wall'))
  })

  it.each([
    { diagonalInches: 2 },
    { diagonalInches: Number.NaN },
    { viewingMetres: 200 },
    { volumePercent: -1 },
    { textPercent: 400 },
    { theme: 'pink' },
    { personId: 7 },
    { language: 'xx' },
    { quiet: { fromMinute: 1_440, toMinute: 0 } },
    { quiet: { fromMinute: 12.5, toMinute: 0 } },
    { quiet: {} },
    { keys: ['F13'] },
    { keys: { F13: 3 } },
    { stationId: 7 },
    { name: 7 },
    { role: 'desk' },
  ])('given %o, then it stays as it was', (change) => {
    const before = changedSettings(defaultSettings('wall'), { name: 'North', stationId: kettle, keys: { F13: kettle } })
    expect(changedSettings(before, change)).toEqual(before)
  })

  it('given null, then station, language and quiet hours are as before anybody set them', () => {
    const set = changedSettings(defaultSettings('wall'), {
      stationId: kettle,
      language: 'es',
      quiet: { fromMinute: 0, toMinute: 1 },
    })
    expect(changedSettings(set, { stationId: null, language: null, quiet: null })).toEqual(defaultSettings('wall'))
  })

  it.each(['{', 'null', '7', '"x"', '[]', '{"diagonalInches":"big"}'])('given %s kept, then the defaults', (text) => {
    const saved = new FakeSaved()
    saved.texts.set('boilboard.wall.settings', text)
    expect(loadSettings(saved, 'wall')).toEqual(defaultSettings('wall'))
  })
})

describe('ids', () => {
  it('given bytes, then 24 characters that any key, file name or address may hold', () => {
    const bytes = [0, 1, 15, 16, 255, 9, 9, 9, 9, 9, 9, 171]
    expect(randomId((into) => into.set(bytes))).toBe('00010f10ff090909090909ab')
  })
})
