import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { afterMending } from '../../client/desk/sales/bad-rows.tsx'
import { removeAsked } from '../../client/desk/sales/files-page.tsx'
import type { Draft } from '../../client/desk/sales/mapping-view.ts'
import {
  COLUMNS,
  mappingOf,
  missingIn,
  otherReading,
  takenFor,
  withColumn,
} from '../../client/desk/sales/mapping-view.ts'
import { begun, isWhole, KINDS } from '../../client/desk/sales/meaning-edit.ts'
import { meaningTold, openShare, shownNames, suggestedFor } from '../../client/desk/sales/names-view.ts'
import { pageOf, withinOf } from '../../client/desk/sales/pages.ts'
import { ratePerSecond } from '../../client/desk/sales/taking-rate.ts'
import { troubleOf } from '../../client/desk/sales/trouble.ts'
import { EN_SALES } from '../../client/words/en-desk-sales.ts'
import { ES_SALES } from '../../client/words/es-desk-sales.ts'
import { wordsFor } from '../../client/words/words.ts'
import { varietyId } from '../../shared-core/ids.ts'
import type { BadRow, Meaning, TillName } from '../../shared-core/live/sales-import.ts'
import { DOUBTS, ROW_FAULTS } from '../../shared-core/live/sales-import.ts'
import { shopWith } from '../core/support/shop.ts'

const mapping = {
  skip: 0,
  hasHeader: true,
  delimiter: ',',
  quote: '"',
  decimal: '.',
  date: 0,
  clock: 1,
  dateForm: 'm-d-y',
  item: 2,
  detail: null,
  pieces: 3,
  transaction: null,
  line: null,
  voided: null,
} as const

describe('the columns of a till’s file', () => {
  it('[Q95] given any changes, then a column is taken for one thing, each thing is in one column, and the last one holds', () => {
    const change = fc.tuple(fc.integer({ min: 0, max: 5 }), fc.constantFrom(...COLUMNS))
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 12 }), (changes) => {
        const draft = changes.reduce<Draft>((so, [at, column]) => withColumn(so, at, column), mapping)
        const taken = [0, 1, 2, 3, 4, 5].map((at) => takenFor(draft, at)).filter((column) => column !== 'none')
        expect(new Set(taken).size).toBe(taken.length)
        const held = COLUMNS.filter((column) => column !== 'none' && draft[column] !== null)
        expect([...taken].sort()).toEqual([...held].sort())
        const [at, column] = changes[changes.length - 1] ?? [0, 'none']
        expect(takenFor(draft, at)).toBe(column)
      }),
    )
  })

  it('[Q95] given date or name is not said, then there is nothing to take by, and what is missing is said', () => {
    expect(mappingOf(mapping)).toEqual(mapping)
    const dateless = withColumn(mapping, 0, 'none')
    expect([mappingOf(dateless), missingIn(dateless)]).toEqual([null, ['date']])
    expect(missingIn(withColumn(dateless, 2, 'date'))).toEqual(['item'])
  })

  it('[Q95] given a date of two readings, then the other one is a touch away and back', () => {
    expect(otherReading('m-d-y')).toBe('d-m-y')
    expect(otherReading(otherReading('m-d-y'))).toBe('m-d-y')
    expect(otherReading('y-m-d')).toBe('y-m-d')
  })

  it('[Q95] given every doubt and fault, then both languages have a sentence of their own', () => {
    const date = (iso: string) => iso
    for (const code of DOUBTS) {
      const doubt = { code, params: { text: '1/2', one: '2026-01-02', other: '2026-02-01', name: 'x', bad: 3, of: 9 } }
      const [en, es] = [EN_SALES, ES_SALES].map((say) => say.doubt({ ...doubt, text: 'THE SERVER' }, date))
      expect([en === es, en === 'THE SERVER', es === 'THE SERVER', /undefined/.test(`${en}${es}`)]).toEqual([
        false,
        false,
        false,
        false,
      ])
    }
    for (const code of ROW_FAULTS) {
      const params = { text: 'x', column: 2, columns: 1, needed: 3, most: 9, example: '2026-11-24' }
      expect(ES_SALES.fault({ code, params, text: 'THE SERVER' })).not.toContain('THE SERVER')
      expect(ES_SALES.fault({ code, params, text: 'THE SERVER' })).not.toContain('undefined')
    }
  })
})

const sesame: Meaning = { kind: 'variety', varietyId: varietyId('sesame'), pieces: 12 }
const name = (parts: Partial<TillName> & { readonly name: string }): TillName => {
  return { rows: 1, sold: 1, lastDate: null, meaning: null, suggested: null, ...parts }
}

describe('what the till’s names mean', () => {
  const names = [
    name({ name: 'GIFT CARD', sold: 2, meaning: { kind: 'nothing' } }),
    name({ name: 'DOZ SESAME', sold: 30, suggested: sesame }),
    name({ name: 'Jalapeño', sold: 8 }),
    name({ name: 'BAGEL', sold: 30 }),
  ]

  it('[Q96] given names, then those that nobody has said are shown, the most sold first, and found without accents', () => {
    const shown = (isAll: boolean, text = '') => shownNames(names, { isAll, text }).map((one) => one.name)
    expect(shown(false)).toEqual(['BAGEL', 'DOZ SESAME', 'Jalapeño'])
    expect(shown(true)).toHaveLength(4)
    expect(shown(true, ' jalapeno')).toEqual(['Jalapeño'])
  })

  it('[Q96] given yes to all, then only what nobody has said gets what was suggested', () => {
    const said = name({ name: 'DOZ POPPY', meaning: { kind: 'nothing' }, suggested: sesame })
    expect(suggestedFor([...names, said])).toEqual([{ name: 'DOZ SESAME', meaning: sesame }])
  })

  it('[Q96] given returns and nothing sold, then how much is open is a share all the same', () => {
    expect(openShare(names)).toBeCloseTo(68 / 70, 10)
    expect(openShare([name({ name: 'A', sold: -3 }), name({ name: 'B', sold: 3, meaning: sesame })])).toBe(0)
    expect(openShare([])).toBe(0)
  })

  it('[Q96] given each kind of meaning, then it is told, and another kind begins with what the one before said', () => {
    const { names: called } = wordsFor('en', shopWith(), () => '')
    const varieties = [...shopWith().varieties.values()]
    const told = KINDS.map((kind) => meaningTold(begun(kind, varieties, sesame), EN_SALES.names.meaning, called))
    expect(told).toEqual(['12 × Sesame', '12 Sesame', '12 pieces, any variety', 'kitchen: 12 × Sesame', 'no bagel'])
    for (const kind of KINDS) expect(isWhole(begun(kind, varieties, sesame))).toBe(true)
  })

  it.each<[string, Meaning]>([
    ['no pieces', { ...sesame, pieces: 0 }],
    ['part of one', { ...sesame, pieces: 1.5 }],
    ['nothing typed', { ...sesame, pieces: Number.NaN }],
    ['a pack of nothing', { kind: 'pack', lines: [] }],
    [
      'a pack with a variety twice',
      { kind: 'pack', lines: [1, 2].map((pieces) => ({ varietyId: varietyId('sesame'), pieces })) },
    ],
  ])('[Q96] given %s, then it cannot be saved', (_what, meaning) => {
    expect(isWhole(meaning)).toBe(false)
  })
})

describe('a file that is taken', () => {
  const bad = (line: number, text = 'x'): BadRow => {
    return { line, text, fault: { code: 'no-date', params: { text, column: 1 }, text: '' } }
  }

  it('[Q97] given corrected lines, then those taken leave the list, those still bad stay as they are now, others are untouched', () => {
    const still = bad(7, 'y')
    expect(afterMending([bad(3), bad(7), bad(9)], [bad(3), bad(7)], [still])).toEqual([still, bad(9)])
  })

  it('[Q97] given looks at how far it is, then rows a second are told to two digits, and nothing while it stands', () => {
    expect(ratePerSecond([{ atMs: 1_000, rows: 0 }])).toBeNull()
    const looks = [
      { atMs: 1_000, rows: 10_000 },
      { atMs: 2_000, rows: 90_000 },
      { atMs: 3_000, rows: 203_456 },
    ]
    expect(ratePerSecond(looks)).toBe(97_000)
    expect(ratePerSecond([looks[0], looks[0]].flatMap((look) => look ?? []))).toBeNull()
  })

  it('[Q97] given an address, then it is a page, and what is none is the list of files', () => {
    for (const page of [{ kind: 'files' }, { kind: 'names' }, { kind: 'file', id: 12 }] as const)
      expect(pageOf(withinOf(page))).toEqual(page)
    expect(pageOf('file/x')).toEqual({ kind: 'files' })
  })

  it('[Q97] given a refusal, then the server’s sentence is told; a file that is gone has one of its own', () => {
    const refused = { kind: 'refused', status: 400, detail: 'Send a table.' } as const
    expect(troubleOf(refused, EN_SALES)).toContain('Send a table.')
    expect(troubleOf({ ...refused, status: 404 }, EN_SALES)).toBe(EN_SALES.unknown)
    expect(troubleOf({ kind: 'done', value: null }, EN_SALES)).toBe('')
  })

  it.each([EN_SALES, ES_SALES])(
    '[Q97] given a file to be removed, then its rows are told, or that none was taken',
    (say) => {
      const empty = removeAsked({ name: 'till.csv', taken: 0 }, say)
      expect(empty).toBe(say.files.removeEmptyAsk('till.csv'))
      expect(empty).not.toMatch(/\d/)
      expect(removeAsked({ name: 'till.csv', taken: 1234 }, say)).toMatch(/till\.csv.*1.?234/)
    },
  )
})
