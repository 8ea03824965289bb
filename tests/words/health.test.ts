import { describe, expect, it } from 'vitest'
import { healthWords } from '../../client/words/health.ts'
import type { HealthParams } from '../../shared-core/live/health.ts'
import { HEALTH_CODES } from '../../shared-core/live/health.ts'

const PARAMS: HealthParams = {
  percent: 40,
  freeMb: 120,
  minutes: 61,
  year: 1970,
  ms: 350,
  entries: 5_100,
  days: 9,
  why: 'x.',
}

describe('why somebody should look at the server', () => {
  it.each(HEALTH_CODES)(
    '[N7] given %s, when said, then a whole sentence in each language with the same numbers',
    (code) => {
      const [en, es] = (['en', 'es'] as const).map((language) =>
        healthWords({ language }).reason({ code, params: PARAMS }),
      )
      for (const text of [en, es]) {
        expect(text).toMatch(/^[¿A-ZÁÉÍÓÚ].*[.%]$/)
        expect(text).not.toContain('undefined')
      }
      expect(es).not.toBe(en)
      expect(es?.match(/\d+/g)).toEqual(en?.match(/\d+/g))
    },
  )
})
