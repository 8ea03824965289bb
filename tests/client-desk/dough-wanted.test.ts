import { describe, expect, it } from 'vitest'
import type { Typed } from '../../client/desk/dough/wanted-view.ts'
import {
  allCleared,
  changesIn,
  copiedFrom,
  linesToSave,
  raisedBy,
  rowKey,
  rowPieces,
  typedKey,
  typedPieces,
  wantedGroups,
} from '../../client/desk/dough/wanted-view.ts'
import type { Wanted, WantedLine } from '../../shared-core/dough/mix.ts'
import { doughId, varietyId } from '../../shared-core/ids.ts'
import { dough, shopWith, table } from '../core/support/shop.ts'

const PLAIN = doughId('plain')
const line = (pieces: number, ordered: number, variety: string | null = null): WantedLine => ({
  doughId: PLAIN,
  varietyId: variety === null ? null : varietyId(variety),
  pieces,
  ordered,
})
const wanted = (...lines: readonly WantedLine[]): Wanted => ({ date: '2026-11-27', lines })
const typed = (texts: Readonly<Record<string, string>>): Typed => new Map(Object.entries(texts))

const SHOP = shopWith()
const STANDS = wanted(line(120, 24), line(36, 0, 'sesame'))
const GROUPS = wantedGroups(SHOP, STANDS)

describe('the table of what is wanted', () => {
  it('given a shop, then doughs stand in its order with their varieties below them', () => {
    expect(GROUPS.map(({ dough: { name } }) => name)).toEqual(['Plain', 'Rye'])
    expect(GROUPS[1]?.varieties.map(({ key }) => key)).toEqual(['rye/rye'])
  })

  it('given a retired dough, then it stays while something of it is wanted', () => {
    const shop = shopWith({ doughs: table([dough({ id: 'plain', retired: true }), dough({ id: 'rye' })]) })
    expect(wantedGroups(shop, STANDS).map(({ dough: { key } }) => key)).toContain('plain')
    expect(wantedGroups(shop, undefined).map(({ dough: { key } }) => key)).toEqual(['rye'])
  })

  it.each([
    ['', 0],
    [' 36 ', 36],
    ['12d', 144],
    ['12 D', 144],
    ['-1', null],
    ['1.5', null],
    ['60000', null],
    ['5000d', null],
  ])('given "%s", then %j pieces', (text, expected) => {
    expect(typedPieces(text)).toBe(expected)
  })
})

describe('what is typed over what stands', () => {
  it('[Q58] given a number that was advised, when it is changed here, then the advice stays beside it', () => {
    const advised = wanted({ ...line(120, 24), advised: 150 })
    const lines = linesToSave(wantedGroups(SHOP, advised), advised, typed({ 'plain|pieces': '130' }))
    expect(lines).toEqual([{ ...line(130, 24), advised: 150 }])
  })

  it('given another desk changes other numbers meanwhile, then both are saved', () => {
    const mine = typed({ [typedKey('plain', 'ordered')]: '48' })
    const theirs = wanted(line(150, 24), line(36, 0, 'sesame'))
    expect(linesToSave(GROUPS, theirs, mine)).toEqual([line(150, 48), line(36, 0, 'sesame')])
  })

  it('given a number typed as it stands, then nothing changes; given nought, then the line goes', () => {
    expect(changesIn(GROUPS, STANDS, typed({ [typedKey('plain', 'pieces')]: '120' }))).toBe(0)
    const cleared = typed({ [typedKey('plain/sesame', 'pieces')]: '' })
    expect(changesIn(GROUPS, STANDS, cleared)).toBe(1)
    expect(linesToSave(GROUPS, STANDS, cleared)).toEqual([line(120, 24)])
  })

  it('given a text that is no number, then nothing can be saved and the row has no sum', () => {
    const wrong = typed({ [typedKey('plain', 'pieces')]: 'many' })
    expect(linesToSave(GROUPS, STANDS, wrong)).toBeNull()
    expect(rowPieces(STANDS, wrong, rowKey(PLAIN, null))).toBeNull()
    expect(changesIn(GROUPS, STANDS, wrong)).toBe(1)
  })

  it('given a copy of another day, then every number is as on that day, those that were not wanted then too', () => {
    const copy = copiedFrom(GROUPS, wanted(line(90, 6)))
    expect(linesToSave(GROUPS, STANDS, copy)).toEqual([line(90, 6)])
    expect(linesToSave(GROUPS, STANDS, allCleared(GROUPS))).toEqual([])
  })

  it('given ten percent more, then the counter rises by whole pieces, rounded up, and orders stay', () => {
    const raised = raisedBy(10, GROUPS, wanted(line(91, 24)), new Map())
    expect(linesToSave(GROUPS, wanted(line(91, 24)), raised)).toEqual([line(101, 24)])
    const less = raisedBy(-100, GROUPS, STANDS, new Map())
    expect(linesToSave(GROUPS, STANDS, less)).toEqual([line(0, 24)])
  })
})
