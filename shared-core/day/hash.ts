import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'
import { assert } from '../support.ts'
import type { State } from './state.ts'
import { toJson } from './state-json.ts'

/**
 * A state's fingerprint: SHA-256 (FIPS 180-4), hex, over its canonical JSON (RFC 8785). Equal on server and screens
 * when they folded the same entries. In plain code, as a page on plain http has no `crypto.subtle`.
 */
export function hashState(state: State): string {
  const text = canonicalize(toJson(state))
  assert(text !== undefined, 'a state is always JSON')
  return bytesToHex(sha256(utf8ToBytes(text)))
}
