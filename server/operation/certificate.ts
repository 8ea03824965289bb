import { createPrivateKey, KeyObject, webcrypto, X509Certificate } from 'node:crypto'
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { isIP } from 'node:net'
import { join } from 'node:path'

/**
 * A certificate for a server that no public authority can know: the shop gets an authority of its own, which people
 * trust once on each device, and which signs the server's certificate as often as names and addresses change. Rejected:
 * one certificate that signs itself, which every tablet would have to be told of again at each new address.
 */
export interface ServerCertificate {
  /** PEM texts. */
  readonly key: string
  readonly cert: string
  /** What devices trust; null when the shop brought a certificate of its own. */
  readonly authority: string | null
}

const DAY_MS = 86_400_000
/** Longer than any tablet lives. */
const AUTHORITY_DAYS = 3_650
/** Some systems trust no server for longer than 825 days, some for no more than 398. */
const SERVER_DAYS = 365
/** So early that it is renewed while nobody waits for it. */
const RENEWED_BEFORE_DAYS = 60
/** A device whose clock is a little behind believes it all the same. */
const BEGUN_BEFORE_MS = 2 * DAY_MS
/** Its owner reads and writes; nobody else. */
const OWNER_ONLY = 0o600

interface OwnCertificate {
  /** Made when it is not there; holds the keys. */
  readonly folder: string
  /** Every name and address that a device may open the server by. */
  readonly hosts: readonly string[]
  readonly nowMs: number
}

/**
 * The server's certificate as it lies in the folder, or a new one when there is none, it ends soon, or a host is missing.
 * The authority is kept as long as it holds.
 * @throws when the folder cannot be written to
 */
export async function ownCertificate({ folder, hosts, nowMs }: OwnCertificate): Promise<ServerCertificate> {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const authority = readPair(folder, 'authority')
  const holding = authority !== null && holds(authority.cert, nowMs) ? authority : null
  const signer = holding ?? keep(folder, 'authority', await makeAuthority(nowMs))
  const server = readPair(folder, 'server')
  if (server !== null && holding !== null && isGood(server.cert, { signer: signer.cert, hosts, nowMs }))
    return { ...server, authority: signer.cert }
  return { ...keep(folder, 'server', await makeServer(signer, hosts, nowMs)), authority: signer.cert }
}

/** Whole days until it ends, negative when it has; null when it is no certificate. */
export function daysLeft(cert: string, nowMs: number): number | null {
  try {
    return Math.floor((Date.parse(new X509Certificate(cert).validTo) - nowMs) / DAY_MS)
  } catch {
    return null
  }
}

interface Pair {
  readonly key: string
  readonly cert: string
}

function readPair(folder: string, name: string): Pair | null {
  try {
    const key = readFileSync(join(folder, `${name}-key.pem`), 'utf8')
    return { key, cert: readFileSync(join(folder, `${name}.pem`), 'utf8') }
  } catch {
    return null
  }
}

function keep(folder: string, name: string, pair: Pair): Pair {
  for (const [file, text] of [
    [`${name}-key.pem`, pair.key],
    [`${name}.pem`, pair.cert],
  ] as const) {
    const path = join(folder, file)
    writeFileSync(path, text, { mode: OWNER_ONLY })
    // The mode above holds for new files only.
    chmodSync(path, OWNER_ONLY)
  }
  return pair
}

/** A clock that was wrong when it was made may have put its beginning into the future. */
function holds(cert: string, nowMs: number): boolean {
  const left = daysLeft(cert, nowMs)
  return left !== null && left > RENEWED_BEFORE_DAYS && Date.parse(new X509Certificate(cert).validFrom) <= nowMs
}

interface Wanted {
  readonly signer: string
  readonly hosts: readonly string[]
  readonly nowMs: number
}

function isGood(cert: string, { signer, hosts, nowMs }: Wanted): boolean {
  if (!holds(cert, nowMs)) return false
  const read = new X509Certificate(cert)
  return read.verify(new X509Certificate(signer).publicKey) && hosts.every((host) => isFor(read, host))
}

function isFor(cert: X509Certificate, host: string): boolean {
  return (isIP(host) === 0 ? cert.checkHost(host) : cert.checkIP(host)) !== undefined
}

async function makeAuthority(nowMs: number): Promise<Pair> {
  const { x509, keys } = await begin()
  const cert = await x509.X509CertificateGenerator.createSelfSigned({
    ...lasting(AUTHORITY_DAYS, nowMs),
    name: [{ CN: ['Boilboard: authority of this shop'] }],
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  return { key: await keyText(keys.privateKey), cert: cert.toString('pem') }
}

async function makeServer(signer: Pair, hosts: readonly string[], nowMs: number): Promise<Pair> {
  const { x509, keys } = await begin()
  const authority = new x509.X509Certificate(signer.cert)
  const cert = await x509.X509CertificateGenerator.create({
    ...lasting(SERVER_DAYS, nowMs),
    subject: [{ CN: [hosts[0] ?? 'localhost'] }],
    issuer: authority.subject,
    publicKey: keys.publicKey,
    signingKey: await signingKey(signer.key),
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(
        hosts.map((value) => ({ type: isIP(value) === 0 ? ('dns' as const) : ('ip' as const), value })),
      ),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      await x509.AuthorityKeyIdentifierExtension.create(authority.publicKey),
    ],
  })
  return { key: await keyText(keys.privateKey), cert: cert.toString('pem') }
}

const CURVE = { name: 'ECDSA', namedCurve: 'P-256' } as const

/** The library and a new pair of keys; loaded only by a server that needs them. */
async function begin() {
  await import('reflect-metadata')
  const x509 = await import('@peculiar/x509')
  return { x509, keys: await webcrypto.subtle.generateKey(CURVE, true, ['sign', 'verify']) }
}

async function keyText(key: webcrypto.CryptoKey): Promise<string> {
  return KeyObject.from(key).export({ type: 'pkcs8', format: 'pem' }).toString()
}

async function signingKey(pem: string): Promise<webcrypto.CryptoKey> {
  const pkcs8 = createPrivateKey(pem).export({ type: 'pkcs8', format: 'der' })
  return await webcrypto.subtle.importKey('pkcs8', pkcs8, CURVE, false, ['sign'])
}

function lasting(days: number, nowMs: number) {
  return {
    notBefore: new Date(nowMs - BEGUN_BEFORE_MS),
    notAfter: new Date(nowMs + days * DAY_MS),
    signingAlgorithm: { name: 'ECDSA', hash: 'SHA-256' },
  }
}
