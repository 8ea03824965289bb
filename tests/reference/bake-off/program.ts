/** A mixed-integer program that is to be maximised, in the solver's text form (CPLEX LP). */
export class Program {
  readonly #objective: string[] = []
  readonly #rows: string[] = []
  readonly #bounds: string[] = []
  readonly #binaries: string[] = []
  readonly #integers: string[] = []

  binary(name: string, worth = 0): string {
    this.#binaries.push(name)
    return this.#worth(name, worth)
  }

  /** From 0 to `most`. */
  integer(name: string, most: number, worth = 0): string {
    this.#integers.push(name)
    this.#bounds.push(`0 <= ${name} <= ${most}`)
    return this.#worth(name, worth)
  }

  /** The sum of factor · variable is at most `most`. */
  atMost(terms: readonly (readonly [factor: number, name: string])[], most: number): void {
    if (terms.length > 0) this.#rows.push(`${terms.map(([factor, name]) => signed(factor, name)).join(' ')} <= ${most}`)
  }

  text(): string {
    return [
      `Maximize\n obj: ${this.#objective.join(' ')}`,
      `Subject To\n${this.#rows.map((row, n) => ` r${n}: ${row}`).join('\n')}`,
      `Bounds\n ${this.#bounds.join('\n ')}`,
      `Binary\n ${this.#binaries.join('\n ')}`,
      `General\n ${this.#integers.join('\n ')}`,
      'End\n',
    ].join('\n')
  }

  #worth(name: string, worth: number): string {
    if (worth !== 0) this.#objective.push(signed(worth, name))
    return name
  }
}

function signed(factor: number, name: string): string {
  return `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`
}
