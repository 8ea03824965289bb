import { describe, expect, it } from 'vitest'
import { chooseLanguage, firstLanguage } from '../../client/chooser/chosen-language.ts'
import { loadSettings } from '../../client/live/device-settings.ts'
import { FakeSaved } from '../client-live/support/fake-device.ts'

describe('the language of the first page', () => {
  it.each([
    [['es-MX', 'en'], 'es'],
    [['fr', 'es'], 'es'],
    [['en-GB', 'es'], 'en'],
    [['fr'], 'en'],
    [[], 'en'],
  ] as const)('given a browser that prefers %j, then it is %s', (preferred, language) => {
    expect(firstLanguage(new FakeSaved(), preferred)).toBe(language)
  })

  it('given a choice, then every screen of the device has it, and what else was set stays', () => {
    const saved = new FakeSaved()
    saved.write('boilboard.counter.settings', JSON.stringify({ name: 'Left' }))
    chooseLanguage(saved, 'es')
    expect(firstLanguage(saved, ['en'])).toBe('es')
    for (const role of ['wall', 'bench', 'counter', 'desk'] as const)
      expect(loadSettings(saved, role).language).toBe('es')
    expect(loadSettings(saved, 'counter').name).toBe('Left')
  })
})
