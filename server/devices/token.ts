import { createHash, randomBytes } from 'node:crypto'

/** 256 bits: nobody guesses one, so that neither slow hashing nor a salt is needed for what is stored. */
const TOKEN_BYTES = 32
const ID_BYTES = 8

/** A new secret: 43 letters of base64url (RFC 4648, section 5). */
export function newToken(): string {
  return randomBytes(TOKEN_BYTES).toString('base64url')
}

/** A new device's id, which is no secret: 16 hexadecimal digits. */
export function newDeviceRecordId(): string {
  return randomBytes(ID_BYTES).toString('hex')
}

/**
 * What is stored and looked up instead of a token: SHA-256 in hexadecimal. The look-up is by this hash, so that how long
 * it takes tells nothing about any token.
 */
export function tokenHash(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}
