import type { HealthReason } from '../../shared-core/live/health.ts'
import { Front } from '../http/front.ts'
import { isOpenToLan, lanAddresses } from '../lan/addresses.ts'
import type { CertificateSource } from './certificate-keeper.ts'
import { CertificateKeeper } from './certificate-keeper.ts'
import type { ServerLogger } from './log.ts'

export interface OpenFront {
  readonly front: Front
  readonly scheme: 'http' | 'https'
  /** To be called about once a second. @param announced the server's name on the network; null: none */
  tick(announced: string | null): void
  reasons(): readonly HealthReason[]
}

interface FrontParts {
  /** Undefined: plain http. */
  readonly certificate: CertificateSource | undefined
  readonly names: readonly string[]
  readonly bind: string
  readonly log: ServerLogger
}

/**
 * The server's port as it is to be spoken to, with a certificate that goes along with names and addresses.
 * @throws CertificateError when the shop's files do not fit
 */
export async function openFront({ certificate, names, bind, log }: FrontParts): Promise<OpenFront> {
  if (certificate === undefined) return { front: new Front(), scheme: 'http', tick: () => undefined, reasons: () => [] }
  const seen = (announced: string | null) => ({ hosts: hostsOf({ names, bind, announced }), nowMs: Date.now() })
  const keeper = await CertificateKeeper.open(certificate, seen(null))
  const front = new Front({ certificate: keeper.current, admission: { names } })
  return {
    front,
    scheme: 'https',
    tick: (announced) => {
      keeper.tick(seen(announced)).then(
        (next) => next !== null && front.renew(next),
        (error: unknown) => log.warn({ error }, 'the certificate could not be renewed'),
      )
    },
    reasons: () => keeper.reasons(Date.now()),
  }
}

interface Hosts {
  readonly names: readonly string[]
  readonly bind: string
  readonly announced: string | null
}

/** Each once, names first. */
function hostsOf({ names, bind, announced }: Hosts): readonly string[] {
  const named = announced === null ? [] : [announced]
  const bound = isOpenToLan(bind) ? lanAddresses() : [bind]
  return [...new Set([...named, ...names, 'localhost', ...bound, '127.0.0.1', '::1'])]
}
