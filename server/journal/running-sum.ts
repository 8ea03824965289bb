import { crc32 } from 'node:zlib'

/**
 * The running sum of a journal's entries: what `sum` of row n holds is the CRC-32 of `,text₁,text₂…,textₙ`, so it speaks
 * for the whole history up to there: a row that was changed, dropped or swapped gives another one from there on. A page
 * of rows, joined by commas as it comes from the file, is checked by one call.
 *
 * CRC-32 as in ISO/IEC 13239 and RFC 1952, section 8 (node:zlib): it finds what disks and copies do by accident, every
 * error of up to 32 bits in a row among them. It keeps nobody from changing the file on purpose: who may write to the
 * folder may do so anyway.
 * @param sum of the row before; 0 before the first
 * @param texts one row's text, or several joined by commas
 */
export function runOn(sum: number, texts: string): number {
  return crc32(texts, crc32(',', sum))
}

/** Of one refusal by itself, as they are pruned from the middle. */
export function refusalSum(row: { commandId: string; recordedAtMs: number; answer: string }): number {
  return crc32(`${row.commandId},${row.recordedAtMs},${row.answer}`)
}
