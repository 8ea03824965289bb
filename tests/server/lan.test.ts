import type { NetworkInterfaceInfo } from 'node:os'
import { describe, expect, it } from 'vitest'
import { addressesOf, lanAddresses } from '../../server/lan/addresses.ts'
import type { MulticastSocket, Packet } from '../../server/lan/lan-name.ts'
import { LanName, nameFor } from '../../server/lan/lan-name.ts'
import { ask, startServer } from './support/start-server.ts'

type Sent = { readonly query: Packet } | { readonly respond: Packet }

/** A network of one socket: what is sent is kept, what is heard is said by the test, and time passes when it says so. */
function network(addresses: readonly string[] = ['192.168.1.7']) {
  const sent: Sent[] = []
  const told: string[] = []
  const names: string[] = []
  const timers: (() => void)[] = []
  const heard = new Map<string, (packet: never) => void>()
  const world = { isShut: false, broken: null as Error | null }
  const socket: MulticastSocket = {
    on: (event: string, hear: (packet: never) => void) => heard.set(event, hear),
    query: (packet: Packet) => {
      if (world.broken !== null) throw world.broken
      sent.push({ query: packet })
    },
    respond: (packet: Packet) => sent.push({ respond: packet }),
    destroy: () => {
      world.isShut = true
    },
  }
  const name = new LanName({
    openSocket: () => socket,
    addresses: () => addresses,
    after: (_ms, run) => {
      timers.push(run)
      return () => timers.splice(0)
    },
    say: (line) => told.push(line),
    onName: (one) => names.push(one),
  })
  return {
    name,
    sent,
    told,
    names,
    world,
    hear: (event: string, packet: unknown) => heard.get(event)?.(packet as never),
    /** The probes' waits, one after the other. */
    pass: () => {
      for (let run = timers.shift(); run !== undefined; run = timers.shift()) run()
    },
  }
}

const record = (name: string, data = '192.168.1.7', ttl = 120) => ({ name, type: 'A', ttl, flush: true, data })
const responses = (sent: readonly Sent[]) =>
  sent.flatMap((one) => ('respond' in one ? [one.respond.answers ?? []] : []))

describe('a name on the network', () => {
  it.each([
    ['Corner Bagels', 'corner-bagels'],
    ['Café “Étoile” & Söhne', 'cafe-etoile-sohne'],
    ['  --  ', 'boilboard'],
    [null, 'boilboard'],
    ['パン屋', 'boilboard'],
    ['a'.repeat(80), 'a'.repeat(60)],
  ])('[H11] given a shop called %j, then the name %s', (shop, label) => {
    expect(nameFor(shop)).toBe(label)
  })

  it('[H11] given nobody who has it, when asked for three times, then it is announced and answered to, in any letters', () => {
    const { name, sent, names, hear, pass } = network()
    name.follow('Corner Bagels')
    expect(name.name).toBeNull()
    hear('query', { questions: [{ name: 'corner-bagels.local', type: 'A' }] })
    expect(responses(sent)).toEqual([])
    pass()
    expect(sent.filter((one) => 'query' in one)).toHaveLength(3)
    expect([name.name, names]).toEqual(['corner-bagels.local', ['corner-bagels.local']])
    hear('query', { questions: [{ name: 'Corner-Bagels.LOCAL', type: 'A' }] })
    hear('query', { questions: [{ name: 'printer.local', type: 'A' }] })
    hear('query', { questions: [{ name: 'corner-bagels.local', type: 'AAAA' }] })
    expect(responses(sent)).toEqual([[record('corner-bagels.local')], [record('corner-bagels.local')]])
  })

  it('[H11] given another machine of that name, when it answers, before or later, then this one takes the next', () => {
    const { name, hear, pass, names } = network()
    name.follow('Corner Bagels')
    hear('response', { answers: [record('corner-bagels.local', '192.168.1.20')] })
    pass()
    expect(name.name).toBe('corner-bagels-2.local')
    hear('response', { answers: [record('corner-bagels-2.local')] })
    expect(name.name).toBe('corner-bagels-2.local')
    hear('response', { answers: [record('corner-bagels-2.local', '192.168.1.21')] })
    expect(name.name).toBeNull()
    pass()
    expect(names).toEqual(['corner-bagels-2.local', 'corner-bagels-3.local'])
  })

  it('[H11] given a shop that is called something else now, when followed, then the old name says goodbye', () => {
    const { name, sent, pass } = network()
    name.follow('New shop')
    pass()
    name.follow('New shop')
    name.follow('Corner Bagels')
    pass()
    expect(responses(sent).map(([first]) => [first?.name, first?.ttl])).toEqual([
      ['new-shop.local', 120],
      ['new-shop.local', 0],
      ['corner-bagels.local', 120],
    ])
    name.stop()
    expect(responses(sent).at(-1)).toEqual([record('corner-bagels.local', '192.168.1.7', 0)])
  })

  it('[H11] given a network that does not let it, when it fails, then one line says so and nothing else happens', () => {
    const { name, told, world, hear, pass } = network()
    world.broken = new Error('EPERM')
    name.follow('Corner Bagels')
    pass()
    expect([name.name, told.length, world.isShut]).toEqual([null, 1, true])
    expect(told[0]).toContain('--no-name')
    hear('query', { questions: [{ name: 'corner-bagels.local', type: 'A' }] })
    name.stop()
  })

  it('[H11] given no socket at all, when it cannot be opened, then one line says so', () => {
    const told: string[] = []
    const name = new LanName({
      openSocket: () => {
        throw new Error('no network')
      },
      addresses: () => [],
      after: () => () => undefined,
      say: (line) => told.push(line),
      onName: () => undefined,
    })
    name.follow(null)
    expect(told).toHaveLength(1)
  })
})

describe('addresses', () => {
  const info = (address: string, parts: Partial<NetworkInterfaceInfo> = {}) =>
    ({ address, family: 'IPv4', internal: false, ...parts }) as NetworkInterfaceInfo

  it('[H11] given interfaces, then the addresses that others can reach', () => {
    const found = lanAddresses({
      lo: [info('127.0.0.1', { internal: true })],
      eth0: [info('192.168.1.7'), info('fe80::1', { family: 'IPv6' } as never)],
    })
    expect(found).toEqual(['192.168.1.7'])
  })

  it('[H11] given names and addresses, then names first; one that listens to itself alone says so', () => {
    const lan = ['192.168.1.7']
    expect(addressesOf({ scheme: 'http', bind: '0.0.0.0', port: 4610, names: ['corner.local'], lan })).toEqual([
      { url: 'http://corner.local:4610', kind: 'name' },
      { url: 'http://192.168.1.7:4610', kind: 'address' },
    ])
    expect(addressesOf({ scheme: 'http', bind: '127.0.0.1', port: 80, names: [], lan })).toEqual([
      { url: 'http://127.0.0.1:80', kind: 'address' },
    ])
    expect(addressesOf({ scheme: 'http', bind: '::1', port: 80, names: [], lan })).toEqual([
      { url: 'http://[::1]:80', kind: 'address' },
    ])
  })

  it('[H11] given a server on loopback, when asked, then its address, and no name is announced', async () => {
    const server = await startServer({ names: ['board'] })
    expect((await ask(server, '/api/v1/addresses')).json).toEqual([
      { url: `http://board:${server.port}`, kind: 'name' },
      { url: `http://127.0.0.1:${server.port}`, kind: 'address' },
    ])
  })
})
