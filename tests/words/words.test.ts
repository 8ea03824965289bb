import { describe, expect, it } from 'vitest'
import { minuteText } from '../../client/live/clock-text.ts'
import { settingsWords } from '../../client/words/settings.ts'
import { wallWords } from '../../client/words/wall.ts'
import type { Words } from '../../client/words/words.ts'
import { languageOf, wordsFor } from '../../client/words/words.ts'
import type { Params } from '../../shared-core/day/answers.ts'
import { ASK_CODES, REFUSAL_CODES } from '../../shared-core/day/answers.ts'
import type { ActType } from '../../shared-core/day/commands.ts'
import { doughId, shelfId, varietyId } from '../../shared-core/ids.ts'
import type { BatchStage, LineAct } from '../../shared-core/shop/shop.ts'
import { at, lines } from '../core/support/make.ts'
import { shelf, shopWith, table } from '../core/support/shop.ts'

const LANGUAGES = ['en', 'es'] as const
const ACTS: readonly LineAct[] = ['pull', 'dip', 'lift', 'board', 'load', 'flip', 'out']
const STAGES: readonly BatchStage[] = ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven']
const COMMANDS: { readonly [type in ActType]: true } = {
  shape: true,
  carryIn: true,
  pull: true,
  dip: true,
  lift: true,
  board: true,
  moveBatch: true,
  load: true,
  changeLoad: true,
  flip: true,
  out: true,
  moveLoad: true,
  wasteBatch: true,
  confirmPresumed: true,
  sell: true,
  remove: true,
  count: true,
  keep: true,
  release: true,
  handOver: true,
  openDay: true,
  closeDay: true,
  setLoadList: true,
  forbidLoads: true,
  skipPlanned: true,
  changeSetUp: true,
  takeBack: true,
  care: true,
  setBoards: true,
  sellUnnamed: true,
  sweep: true,
  lastOneGone: true,
  dayOldIn: true,
  dayOldOut: true,
  reopenDay: true,
  dropSetUp: true,
  takeUpSetUps: true,
  takeOrder: true,
  changeOrder: true,
  cancelOrder: true,
  missOrder: true,
  handOverOrder: true,
  setStanding: true,
  endStanding: true,
  moveItems: true,
  countPortions: true,
  takeUpOrders: true,
  noteImport: true,
  doStep: true,
  giveStep: true,
  testFloat: true,
  writeNote: true,
  clearNote: true,
  slipChangeover: true,
  changeOverShelf: true,
  readOven: true,
  setWanted: true,
  planMixes: true,
  orderMixes: true,
  dropMix: true,
  weighLine: true,
  readMix: true,
  moveMix: true,
  foldMix: true,
  endMix: true,
  placeBatch: true,
  readPlace: true,
  countIngredients: true,
  receiveIngredient: true,
  makePreparation: true,
  dropBuild: true,
  weighPieces: true,
}

/** Every parameter that a code may come with. */
const ALL_PARAMS: Params = {
  shelfId: 's2',
  doughId: 'rye',
  varietyId: 'sesame',
  stage: 'boards',
  type: 'sell',
  name: 'Sesame',
  label: '2026-11-24',
  atMs: at('6:41'),
  tappedAtMs: at('6:41'),
  pieces: 7,
  known: 31,
  id: 'k7',
  commandId: 'k7.1',
}

const localTime = (atMs: number) => minuteText(Math.floor((atMs - at('0:00')) / 60_000), 12)
const wordsIn = (language: (typeof LANGUAGES)[number]) => wordsFor(language, shopWith(), localTime)

/** All sentences that answers can come to, with every parameter and with none. */
function answerSentences(words: Words): string[] {
  return [ALL_PARAMS, {}].flatMap((params) => [
    ...REFUSAL_CODES.map((code) => words.answers.refusal({ code, params })),
    ...ASK_CODES.flatMap((code) => Object.values(words.answers.ask({ code, params }))),
  ])
}

describe.each(LANGUAGES)('words in %s', (language) => {
  const words = wordsIn(language)

  it('[G8] given every refusal and question, with and without its parameters, then each is a sentence without a code or a hole', () => {
    for (const sentence of answerSentences(words)) {
      expect(sentence).toMatch(/^[\p{Lu}¿0-9].*[.?]$|^(Yes|No|Sí),? /su)
      expect(sentence).not.toMatch(/undefined|null|NaN|\[object|\{|\}|\$|k7|\bs2\b|-(set|role|codes)\b/)
      for (const code of [...REFUSAL_CODES, ...ASK_CODES]) {
        if (code.includes('-')) expect(sentence).not.toContain(code)
      }
      expect(sentence).not.toMatch(/ {2}|^\s|\s$| [.,]/)
    }
  })

  it('[G8] given no two refusal codes alike, then no two say the same', () => {
    const all = REFUSAL_CODES.map((code) => words.answers.refusal({ code, params: ALL_PARAMS }))
    expect(new Set(all).size).toBe(all.length)
  })

  it('[G8] given every kind of command, then what it did is told in words', () => {
    for (const type of Object.keys(COMMANDS)) {
      const told = {
        type,
        shelfId: shelfId('s3'),
        doughId: doughId('plain'),
        lines: lines('sesame', 24, 'poppy', 12),
        pieces: 36,
      }
      for (const text of [words.told.did(told), words.told.did({ type })]) {
        expect(text).not.toBe('')
        expect(text).not.toMatch(/undefined|null| {2}|^\s|[\s:]$/)
        if (/[A-Z]/.test(type)) expect(text).not.toContain(type)
      }
    }
  })

  it('[G8] given things that the set-up does not know, then they are called so and never by their id', () => {
    const empty = wordsFor(language, null, localTime)
    const said = [
      empty.names.dough(doughId('d77')),
      empty.names.variety(varietyId('v77')),
      empty.acts.name({ act: 'flip', shelfId: shelfId('s77') }),
      empty.told.did({ type: 'load', shelfId: shelfId('s77'), lines: lines('v77', 6) }),
    ]
    for (const text of said) expect(text).not.toContain('77')
  })

  it('[G7] given any duration, then it ends in a unit and never looks like a clock time; a clock time always has its colon', () => {
    const SPANS_MS = [0, 1, 999, 1_000, 59_000, 60_000, 99_000, 100_000, 479_000, 5_999_000, 6_000_000, 36_000_000, 9e8]
    for (const ms of SPANS_MS) {
      for (const text of [words.times.left(ms), words.times.span(ms), words.times.within(ms), words.times.late(ms)]) {
        expect(text).toMatch(/\d (s|min|h|days|días)\b/)
        expect(text).not.toMatch(/\d[:.]\d/)
      }
    }
    for (const clock of ['1:05', '6:41', '12:00']) {
      const atMs = at(clock)
      const { at: atTime, since, by, upTo } = words.times
      for (const text of [atTime(atMs), since(atMs), by(atMs), upTo(atMs)]) expect(text).toMatch(/ \d{1,2}:\d\d$/)
    }
  })

  it('given every act of the line, then its verb comes first and no two acts begin alike', () => {
    const named = ACTS.map((act) =>
      words.acts.name({ act, shelfId: shelfId('s2'), doughId: doughId('rye'), pieces: 36, trays: 3 }),
    )
    for (const name of named) expect(name).toMatch(/^\p{Lu}/u)
    expect(new Set(named.map((name) => name.split(' ').slice(0, 2).join(' '))).size).toBe(ACTS.length)
    for (const act of ACTS) expect(words.acts.verb(act)).not.toBe('')
  })

  it('given every stage, phase and limit, then each has words of its own', () => {
    expect(new Set(STAGES.map(words.line.stage)).size).toBe(STAGES.length)
    expect(words.line.phase('first-side')).not.toBe(words.line.phase('second-side'))
    const limits = (['shelf', 'kettle', 'boards', 'too-early', 'too-late'] as const).map(words.answers.over)
    expect(new Set(limits).size).toBe(5)
  })
})

describe('what the two languages have in common and what not', () => {
  it('[G8] given the same code, then Spanish does not say it in English', () => {
    const [en, es] = [answerSentences(wordsIn('en')), answerSentences(wordsIn('es'))]
    expect(en.length).toBe(es.length)
    en.forEach((sentence, index) => {
      expect(es[index]).not.toBe(sentence)
    })
  })

  it('given every fixed text of the wall and its settings, then Spanish differs, but for names and signs', () => {
    const fixed = (language: 'en' | 'es') => {
      const words = wordsIn(language)
      return flatTexts({ wall: wallWords(words), settings: settingsWords(words), cautions: words.cautions })
    }
    const [en, es] = [fixed('en'), fixed('es')]
    expect([...es.keys()]).toEqual([...en.keys()])
    const same = [...en].filter(([key, text]) => es.get(key) === text).map(([key]) => key)
    expect(same).toEqual(['wall.demo', 'settings.earlier', 'settings.later'])
  })

  it('given no choice of the device, then its language is the shop’s; given neither, English', () => {
    const spanish = shopWith({ profile: { ...shopWith().profile, language: 'es' } })
    expect(languageOf(null, spanish)).toBe('es')
    expect(languageOf('en', spanish)).toBe('en')
    expect(languageOf(null, null)).toBe('en')
  })
})

describe('sentences as they are read', () => {
  const en = wordsIn('en')
  const es = wordsIn('es')
  const flip2 = { act: 'flip', shelfId: shelfId('s2') } as const
  const now = at('6:47')

  it.each([
    ['to come', at('6:47:40'), 'coming', 'Flip 2 in 40 s', 'Voltear 2 en 40 s'],
    ['in minutes', at('6:55'), 'coming', 'Flip 2 in 8 min', 'Voltear 2 en 8 min'],
    ['due', at('6:46:30'), 'due', 'Flip 2 now', 'Voltear 2 ya'],
    ['late by nothing yet', at('6:47'), 'late', 'Flip 2, now', 'Voltear 2, ya'],
    ['late', at('6:43:30'), 'late', 'Flip 2, 3 min late', 'Voltear 2, 3 min tarde'],
  ] as const)('given a flip that is %s, then it says so', (_, atMs, status, english, spanish) => {
    expect(en.acts.timed({ ...flip2, atMs, status }, now)).toBe(english)
    expect(es.acts.timed({ ...flip2, atMs, status }, now)).toBe(spanish)
  })

  it('given a pull of trays, then it names trays and dough; given one that the mixer decided, its variety', () => {
    const pull = { act: 'pull', trays: 3, pieces: 45, doughId: doughId('plain') } as const
    expect(en.acts.name(pull)).toBe('Pull 3 trays Plain')
    expect(es.acts.name({ ...pull, trays: 1 })).toBe('Traer 1 bandeja de Plain')
    expect(en.acts.name({ ...pull, varietyId: varietyId('rye') })).toBe('Pull 3 trays Rye')
  })

  it('given what a load did, then time, shelf and contents are told', () => {
    const told = { type: 'load', shelfId: shelfId('s3'), lines: lines('sesame', 24, 'poppy', 24) }
    expect(en.told.at(told, at('6:46'))).toBe('6:46 loaded 3: Sesame 24, Poppy 24')
    expect(es.told.at(told, at('6:46'))).toBe('6:46 cargado 3: Sesame 24, Poppy 24')
  })

  it('given somebody else’s tap first, then it is a kind word with shelf and time', () => {
    const refusal = { code: 'already-loaded', params: { shelfId: 's2', atMs: at('6:41') } } as const
    expect(en.answers.refusal(refusal)).toBe('Already done: shelf 2 was loaded at 6:41.')
    expect(es.answers.refusal(refusal)).toBe('Ya está hecho: piso 2, cargado a las 6:41.')
  })

  it('given a shelf whose name says what it is, then it is not called a shelf once more', () => {
    const shop = shopWith({ shelves: table([shelf({ id: 's2', name: 'Hearth' })]) })
    expect(wordsFor('en', shop).line.shelf(shelfId('s2'))).toBe('Hearth')
  })

  it('given no contact, then it says since when; before the clock is known, only that', () => {
    const away = { phase: 'away', sinceMs: at('6:41') } as const
    expect(en.live.connection(away)).toBe('No contact since 6:41 – counting on')
    expect(es.live.connection(away)).toBe('Sin contacto desde las 6:41: sigue contando')
    expect(wordsFor('en').live.connection(away)).toBe('No contact')
  })

  it('given one o’clock in Spanish, then it is singular; given a list before an i, then y turns to e', () => {
    expect(es.times.at(at('1:05'))).toBe('a la 1:05')
    expect(es.times.at(at('11:05'))).toBe('a las 11:05')
    expect(es.line.list(['queso', 'hinojo'])).toBe('queso e hinojo')
    expect(es.line.list(['queso', 'hielo'])).toBe('queso y hielo')
  })

  it('given a countdown, then seconds run to 99 and minutes are to the nearest', () => {
    expect([99_000, 99_001, 149_999, 150_000].map((ms) => en.times.left(ms))).toEqual([
      '99 s',
      '2 min',
      '3 min',
      '3 min',
    ])
    expect(en.times.left(148_000)).toBe('2 min')
    expect(en.times.span(119_999)).toBe('1 min')
    expect(en.times.span(6_300_000)).toBe('1 h 45 min')
  })
})

/** Every text that stands fixed in a tree of words, by its path. */
function flatTexts(tree: object, path = ''): Map<string, string> {
  const found = new Map<string, string>()
  for (const [key, value] of Object.entries(tree)) {
    const here = path === '' ? key : `${path}.${key}`
    if (typeof value === 'string') found.set(here, value)
    else if (typeof value === 'object' && value !== null) for (const [k, v] of flatTexts(value, here)) found.set(k, v)
  }
  return found
}
