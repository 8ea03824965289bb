import multicastDns from 'multicast-dns'
import type { Options } from '../options.ts'
import type { MulticastSocket } from './lan-name.ts'

/** What announces a name on the network; nothing when it is not to be. */
export function multicastFor({ hasName }: Pick<Options, 'hasName'>): { openMulticast?: () => MulticastSocket } {
  return hasName ? { openMulticast: () => multicastDns({ loopback: true }) as unknown as MulticastSocket } : {}
}
