import { createPrivateKey, X509Certificate } from 'node:crypto'
import { readFileSync } from 'node:fs'
import type { HealthReason } from '../../shared-core/live/health.ts'
import { healthReason } from '../../shared-core/live/health.ts'
import type { ServerCertificate } from './certificate.ts'
import { daysLeft, ownCertificate } from './certificate.ts'

/** Where the certificate comes from: made and kept in a folder, or files of the shop's own. */
export type CertificateSource =
  | { readonly kind: 'own'; readonly folder: string }
  | { readonly kind: 'files'; readonly cert: string; readonly key: string }

const LOOKED_AT_EVERY_MS = 3_600_000
/** Time enough to get a new one from whoever gave it. */
const TOLD_BEFORE_DAYS = 21

/** Files that are no certificate and its key; the message says what would be right. */
export class CertificateError extends Error {
  override name = 'CertificateError'
}

/** Keeps the certificate that is served fitting: the names and addresses of today, and not about to end. */
export class CertificateKeeper {
  readonly #source: CertificateSource
  #current: ServerCertificate
  #hosts: readonly string[]
  #lookedAtMs: number
  #isAtWork = false

  private constructor(source: CertificateSource, current: ServerCertificate, seen: Seen) {
    this.#source = source
    this.#current = current
    this.#hosts = seen.hosts
    this.#lookedAtMs = seen.nowMs
  }

  /** @throws CertificateError when the files do not fit; whatever the folder throws */
  static async open(source: CertificateSource, seen: Seen): Promise<CertificateKeeper> {
    return new CertificateKeeper(source, await certificateOf(source, seen), seen)
  }

  get current(): ServerCertificate {
    return this.#current
  }

  /** To be called about once a second. @returns one to be served from now on; null: nothing new */
  async tick(seen: Seen): Promise<ServerCertificate | null> {
    const isOfOthers = seen.hosts.join() !== this.#hosts.join()
    if (this.#isAtWork || !(isOfOthers || Math.abs(seen.nowMs - this.#lookedAtMs) >= LOOKED_AT_EVERY_MS)) return null
    this.#isAtWork = true
    try {
      this.#hosts = seen.hosts
      this.#lookedAtMs = seen.nowMs
      const next = await certificateOf(this.#source, seen)
      if (next.cert === this.#current.cert) return null
      this.#current = next
      return next
    } finally {
      this.#isAtWork = false
    }
  }

  /** One of its own is renewed by itself. */
  reasons(nowMs: number): readonly HealthReason[] {
    const days = daysLeft(this.#current.cert, nowMs)
    if (days === null || days >= TOLD_BEFORE_DAYS) return []
    return [healthReason('certificate-ends', 'warning', { days })]
  }
}

interface Seen {
  readonly hosts: readonly string[]
  readonly nowMs: number
}

async function certificateOf(source: CertificateSource, seen: Seen): Promise<ServerCertificate> {
  return source.kind === 'own' ? await ownCertificate({ ...source, ...seen }) : ofFiles(source)
}

function ofFiles({ cert, key }: { readonly cert: string; readonly key: string }): ServerCertificate {
  const [certText, keyText] = [read('--cert', cert), read('--key', key)]
  let fits: boolean
  try {
    fits = new X509Certificate(certText).checkPrivateKey(createPrivateKey(keyText))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    throw new CertificateError(`${cert} and ${key} must be a certificate and its key, both as PEM text: ${why}.`)
  }
  if (!fits) throw new CertificateError(`The key in ${key} is not that of the certificate in ${cert}.`)
  return { cert: certText, key: keyText, authority: null }
}

function read(option: string, file: string): string {
  try {
    return readFileSync(file, 'utf8')
  } catch (error) {
    throw new CertificateError(`${option} ${file} cannot be read: ${error instanceof Error ? error.message : error}.`)
  }
}
