import type { NetworkInterfaceInfo } from 'node:os'
import { networkInterfaces } from 'node:os'

/** Where a screen finds the server. */
export interface ServerAddress {
  readonly url: string
  /** `name`: goes on holding when the router gives the server another address. */
  readonly kind: 'name' | 'address'
}

type Interfaces = NodeJS.Dict<NetworkInterfaceInfo[]>

/** This machine's IPv4 addresses that others on its networks can reach. */
export function lanAddresses(interfaces: Interfaces = networkInterfaces()): readonly string[] {
  return Object.values(interfaces)
    .flatMap((all) => all ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)
}

/** Whether the server listens to more than this machine. */
export function isOpenToLan(bind: string): boolean {
  return bind === '0.0.0.0' || bind === '::'
}

interface Listening {
  readonly scheme: 'http' | 'https'
  readonly bind: string
  readonly port: number
  /** Names that it answers to, the announced one first. */
  readonly names: readonly string[]
  readonly lan: readonly string[]
}

/**
 * Best first: names, then addresses. One that listens to this machine alone has no other address.
 * @example addressesOf({ scheme: 'http', bind: '0.0.0.0', port: 4610, names: ['corner.local'], lan: ['192.168.1.7'] })
 * // http://corner.local:4610, http://192.168.1.7:4610
 */
export function addressesOf({ scheme, bind, port, names, lan }: Listening): readonly ServerAddress[] {
  const at = (host: string) => `${scheme}://${host.includes(':') ? `[${host}]` : host}:${port}`
  const named = names.map((name) => ({ url: at(name), kind: 'name' }) as const)
  const hosts = isOpenToLan(bind) ? lan : [bind]
  return [...named, ...hosts.map((host) => ({ url: at(host), kind: 'address' }) as const)]
}
