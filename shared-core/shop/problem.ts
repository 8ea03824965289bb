/** One mistake in something that came in from outside. */
export interface Problem {
  /** Where, as a JSON Pointer (RFC 6901), e.g. `/varieties/3/dough`. */
  readonly path: string
  /** What is wrong, a sentence. */
  readonly wrong: string
  /** What would be right, a sentence. */
  readonly right: string
}
