import type { ServerAddress } from './addresses.ts'
import { addressesOf, isOpenToLan, lanAddresses } from './addresses.ts'
import type { MulticastSocket } from './lan-name.ts'
import { LanName } from './lan-name.ts'

export interface Where {
  readonly scheme: 'http' | 'https'
  readonly port: number
}

interface Bound {
  readonly bind: string
  readonly names: readonly string[]
}

/** How the server is reached just now, by its names and by the machine's addresses. */
export function addressesNow({ bind, names }: Bound, where: Where, lanName: LanName | null): readonly ServerAddress[] {
  const announced = lanName?.name ?? null
  const all = [...(announced === null ? [] : [announced]), ...names]
  return addressesOf({ ...where, bind, names: all, lan: lanAddresses() })
}

interface Announced {
  readonly options: Pick<Bound, 'bind'>
  readonly openMulticast?: () => MulticastSocket
  readonly say: (line: string) => void
}

/** The shop's name on its network; null: none is announced. */
export function lanNameFor({ options, openMulticast, say }: Announced, { scheme, port }: Where): LanName | null {
  if (openMulticast === undefined || !isOpenToLan(options.bind)) return null
  const after = (ms: number, run: () => void) => {
    const timer = setTimeout(run, ms)
    return () => clearTimeout(timer)
  }
  return new LanName({
    openSocket: openMulticast,
    addresses: () => lanAddresses(),
    after,
    say,
    onName: (name) => say(`  by name, from other devices: ${scheme}://${name}:${port}`),
  })
}
