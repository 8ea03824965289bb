/** What is given is wrong: the sentence says where, what is wrong and what would be right. */
export class InputError extends Error {
  override name = 'InputError'
}

/** @param line counted from 1, the header's */
export function wrongAt(path: string, line: number, what: string): InputError {
  return new InputError(`${path}:${line}: ${what}`)
}
