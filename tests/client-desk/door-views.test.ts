import { describe, expect, it } from 'vitest'
import type { Refused } from '../../client/desk/refused-mark.ts'
import { rememberSeen, unseenIn } from '../../client/desk/refused-mark.ts'
import { pathIn } from '../../client/desk/screens/copies-panel.tsx'
import { joinLink, letInView, spaced } from '../../client/desk/screens/let-in-view.ts'
import { troubleOf } from '../../client/desk/screens/use-door.ts'
import { deskDoorWords } from '../../client/words/desk-door.ts'
import { wordsFor } from '../../client/words/words.ts'
import type { JoinCode, JoinedDevice } from '../../shared-core/live/devices.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { FakeSaved } from '../client-live/support/fake-device.ts'
import { at } from '../core/support/make.ts'

const MADE = at('6:00')
const later = (seconds: number): EpochMs => epochMs(MADE + seconds * 1_000)
const CODE: JoinCode = { code: '012345', role: 'bench', name: '', stationId: null, expiresAtMs: later(600) }

function device(id: string, change: Partial<JoinedDevice> = {}): JoinedDevice {
  const times = { joinedAtMs: later(-90_000), seenAtMs: later(-60), expiresAtMs: later(9_000_000) }
  return { id, kind: 'screen', name: id, role: 'bench', stationId: null, ...times, ...change }
}

const desk = device('desk', { role: 'desk' })
const oldBench = device('old bench')
const made = { code: CODE, madeAtMs: MADE, before: [desk, oldBench] }

describe('a code at the desk', () => {
  it('[E34] given it holds, then what is left of it empties from its making to its end', () => {
    const list = { devices: made.before, codes: [CODE] }
    expect(letInView(made, list, MADE)).toEqual({ kind: 'holds', fraction: 1, leftMs: 600_000 })
    expect(letInView(made, list, later(450))).toEqual({ kind: 'holds', fraction: 0.25, leftMs: 150_000 })
    expect(letInView(made, list, later(600))).toEqual({ kind: 'over' })
  })

  it('[E34] given it is used up and a device is there that was not, then that one has joined', () => {
    const bench2 = device('Bench 2', { joinedAtMs: later(30) })
    const wall = device('Wall', { role: 'wall', joinedAtMs: later(20) })
    const list = { devices: [desk, wall, oldBench, bench2], codes: [] }
    expect(letInView(made, list, later(31))).toEqual({ kind: 'joined', device: bench2 })
  })

  it('[E34] given a device that was here as another screen joins with it, then that one has joined', () => {
    const before = [desk, device('tablet', { role: 'counter' })]
    const now = device('tablet', { seenAtMs: later(30) })
    expect(letInView({ ...made, before }, { devices: [desk, now], codes: [] }, later(31))).toEqual({
      kind: 'joined',
      device: now,
    })
  })

  it('[E34] given it was taken back, or a script got a token meanwhile, then it is over', () => {
    const script = device('Till', { kind: 'script', joinedAtMs: later(5) })
    expect(letInView(made, { devices: made.before, codes: [] }, later(9))).toEqual({ kind: 'over' })
    // The list that is known a moment after may be from before the code was made.
    expect(letInView(made, { devices: made.before, codes: [] }, later(1))).toMatchObject({ kind: 'holds' })
    expect(letInView(made, { devices: [...made.before, script], codes: [] }, later(9))).toEqual({ kind: 'over' })
  })

  it('[E34] given six digits, then they are written in two groups, and a camera’s link has them after the hash', () => {
    expect(spaced('012345')).toBe('012 345')
    const link = joinLink('http://bagels.local:4610/', '012345')
    expect(link).toBe('http://bagels.local:4610/#join=012345')
    // What a browser sends to a server ends before the hash (RFC 3986, section 3.5).
    expect(new URL(link).pathname + new URL(link).search).toBe('/')
  })
})

describe('refused attempts', () => {
  const refused = (times: number, sinceMs = MADE): Refused => ({
    sinceMs,
    attempts: [
      { kind: 'wrong-code', times, lastAtMs: later(60), lastFrom: '192.168.1.23' },
      { kind: 'forged', times: 2, lastAtMs: later(50), lastFrom: '192.168.1.24' },
    ],
  })

  it('[E36] given somebody has looked, then only what came since counts; a server that was started anew counts anew', () => {
    const saved = new FakeSaved()
    expect(unseenIn(saved, refused(7))).toBe(9)
    rememberSeen(saved, refused(7))
    expect(unseenIn(saved, refused(7))).toBe(0)
    expect(unseenIn(saved, refused(13))).toBe(6)
    expect(unseenIn(saved, refused(1, later(3_600)))).toBe(3)
  })

  it.each(['{', 'null', '7', '{}', '{"sinceMs":"x","times":"y"}'])('[E36] given %s kept, then all count', (text) => {
    const saved = new FakeSaved()
    saved.write('boilboard.desk.refused-seen', text)
    expect(unseenIn(saved, refused(7))).toBe(9)
  })
})

describe('what the desk says', () => {
  const en = deskDoorWords(wordsFor('en'))
  const es = deskDoorWords(wordsFor('es'))

  it('[E36] given one or several, then each kind is told in words', () => {
    expect([en.refused.times('wrong-code', 7), en.refused.times('wrong-code', 1)]).toEqual([
      '7 wrong codes',
      '1 wrong code',
    ])
    expect([es.refused.times('wrong-code', 7), es.refused.times('wrong-code', 1)]).toEqual([
      '7 códigos equivocados',
      '1 código equivocado',
    ])
  })

  it.each([
    ['/media/stick/copies', '/media/stick/copies/2026-11-24.sqlite'],
    ['D:\\copies', 'D:\\copies\\2026-11-24.sqlite'],
    ['D:\\', 'D:\\2026-11-24.sqlite'],
  ])('[E37] given the folder %s, then the command names a copy in it by its path', (folder, path) => {
    expect(pathIn(folder, '2026-11-24.sqlite')).toBe(path)
  })

  it('[E37] given a copy, then how old it is and whether it has the last tap', () => {
    expect(en.copies.copied(12_000, 0)).toBe('Copied 12 s ago, up to the last tap.')
    expect(en.copies.copied(12_000, 1)).toBe('Copied 12 s ago; 1 act since is not in it yet.')
    expect(es.copies.copied(12_000, 3)).toBe('Copiado hace 12 s; 3 actos posteriores no están todavía.')
    expect([en.copies.bytes(4_200_000), en.copies.bytes(1), en.copies.bytes(999_500)]).toEqual([
      '4.2 MB',
      '1 kB',
      '1000 kB',
    ])
  })
})

describe('what the server refuses the desk', () => {
  it.each([
    ['en', 'DELETE', 409, 'It is the only desk'],
    ['es', 'DELETE', 409, 'Es el único escritorio'],
    ['es', 'PATCH', 409, 'Es el único escritorio'],
    ['es', 'PATCH', 404, 'Ya no está'],
    ['es', 'POST', 409, 'Ya hay demasiados'],
  ] as const)('[E34] given %s, %s and %i, then it is told in that language', (language, method, status, told) => {
    const say = deskDoorWords(wordsFor(language))
    const trouble = troubleOf(method, { kind: 'refused', status, detail: 'What scripts read.' }, say)
    expect(trouble).toContain(told)
    expect(trouble).not.toContain('scripts')
  })
})
