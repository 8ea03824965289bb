import { afterEach, describe, expect, it, vi } from 'vitest'
import { codeInLink, digitsIn, isWhole } from '../../client/chooser/code.ts'
import { forgetIds, savedName, unsentTaps } from '../../client/chooser/kept-here.ts'
import { askStanding, join } from '../../client/chooser/standing.ts'
import { changedSettings, defaultSettings, saveSettings } from '../../client/live/device-settings.ts'
import { QueueStore } from '../../client/live/queue-store.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import { FakeSaved } from '../client-live/support/fake-device.ts'

afterEach(() => vi.unstubAllGlobals())

/** The server's answer to whatever is asked; null: there is no contact. */
function answering(status: number | null, body: unknown = {}, headers: Record<string, string> = {}) {
  const asked: unknown[] = []
  vi.stubGlobal('fetch', async (address: string, init?: RequestInit) => {
    asked.push([init?.method ?? 'GET', address, init?.body === undefined ? null : JSON.parse(String(init.body))])
    if (status === null) throw new TypeError('no network')
    return new Response(JSON.stringify(body), { status, headers })
  })
  return asked
}

describe('a code of six digits', () => {
  it.each([
    ['123456', '123456'],
    ['123 456', '123456'],
    [' 12-34\u201356\n', '123456'],
    ['1234567', '123456'],
    ['12a', '12'],
    ['', ''],
  ])('[E33] given %j typed or pasted, then %j', (text, digits) => {
    expect(digitsIn(text)).toBe(digits)
    expect(isWhole(digits)).toBe(digits.length === 6)
  })

  it.each([
    ['#join=012345', '012345'],
    ['#join=12345', null],
    ['#join=1234567', null],
    ['#join=12345x', null],
    ['#name=123456', null],
    ['', null],
  ])('[E33] given the address %j, then the code in it is %j', (hash, code) => {
    expect(codeInLink(hash)).toBe(code)
  })

  it.each([
    [200, { standing: {}, page: '/bench' }, {}, { kind: 'joined', page: '/bench' }],
    [403, { detail: 'no' }, {}, { kind: 'wrong' }],
    [429, { detail: 'later' }, { 'retry-after': '45' }, { kind: 'too-many', waitS: 45 }],
    [429, {}, {}, { kind: 'too-many', waitS: null }],
    [400, { detail: 'The code is six digits.' }, {}, { kind: 'failed', detail: 'The code is six digits.' }],
    [500, {}, {}, { kind: 'failed', detail: '' }],
    [null, {}, {}, { kind: 'no-contact' }],
  ])('[E33] given the server answers %s %j, then that is told', async (status, body, headers, told) => {
    const asked = answering(status, body, headers)
    expect(await join('123456', 'Oven bench')).toEqual(told)
    expect(asked).toEqual([['POST', '/api/v1/join', { code: '123456', name: 'Oven bench' }]])
  })

  it('[E33] given no contact, then who this device is stays unknown', async () => {
    answering(null)
    expect(await askStanding()).toEqual({ kind: 'no-contact' })
    answering(503)
    expect(await askStanding()).toEqual({ kind: 'no-contact' })
    answering(200, { kind: 'unclaimed' })
    expect(await askStanding()).toEqual({ kind: 'known', standing: { kind: 'unclaimed' } })
  })
})

describe('what a device has kept from before it joined', () => {
  const named = (saved: FakeSaved, role: Role, name: string) =>
    saveSettings(saved, changedSettings(defaultSettings(role), { name }))

  it('[E33] given one name, then it joins with it; given none or several, then with none', () => {
    const saved = new FakeSaved()
    expect(savedName(saved)).toBe('')
    named(saved, 'bench', 'Oven bench')
    expect(savedName(saved)).toBe('Oven bench')
    named(saved, 'wall', 'Boiler wall')
    expect(savedName(saved)).toBe('')
  })

  it('[E33] given it joins without its old key, then its screens make new ids, and taps that wait stay', () => {
    const saved = new FakeSaved()
    const store = new QueueStore(saved, 'bench')
    expect(store.deviceId(() => 'first')).toBe('first')
    saved.write('boilboard.bench.queue.j1.a', '{}')
    forgetIds(saved)
    expect(new QueueStore(saved, 'bench').deviceId(() => 'second')).toBe('second')
    expect(unsentTaps(saved)).toBe(1)
  })

  it('[E33] given taps that no server has answered, then they are counted over its screens', () => {
    const saved = new FakeSaved()
    for (const key of ['bench.queue.j1.a', 'bench.queue.j1.b', 'counter.queue.j2.c', 'bench.device-id'])
      saved.write(`boilboard.${key}`, '{}')
    expect(unsentTaps(saved)).toBe(3)
  })
})
