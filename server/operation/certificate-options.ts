import { join } from 'node:path'
import type { Options } from '../options.ts'
import type { CertificateSource } from './certificate-keeper.ts'

/** Where the certificate comes from, by the command line; nothing for plain http. Its own lies in the shop's folder. */
export function certificateFor(
  { https }: Pick<Options, 'https'>,
  folder: string,
): { readonly certificate?: CertificateSource } {
  if (https === null) return {}
  if (https === 'own') return { certificate: { kind: 'own', folder: join(folder, 'https') } }
  return { certificate: { kind: 'files', ...https } }
}
