import fc from 'fast-check'

/**
 * What is thrown at one reader, and what must hold for each case.
 * @template Input what a case is; a find is shrunk to the smallest that still fails
 */
export interface Target<Input = unknown> {
  readonly name: string
  /** Share of the cases that it gets; 1 where a case takes microseconds. */
  readonly weight: number
  readonly inputs: fc.Arbitrary<Input>
  /** @returns in a word how it went, for the table @throws Find, or whatever the reader threw */
  readonly check: (input: Input) => string
  /** What is looked at now and then, being too slow for each case. @throws Find */
  readonly lookOver?: () => void
}

/** Something that must not be. */
export class Find extends Error {
  override name = 'Find'
}

export interface Outcome {
  readonly target: string
  readonly cases: number
  readonly ms: number
  readonly counts: ReadonlyMap<string, number>
  readonly slowestMs: number
  /** In words, with the input that it came from; null: none. */
  readonly find: string | null
}

/** CPU of one case. A real file or message takes a few ms; beyond this, a few hundred of them stop a shop. */
const CPU_MS_MAX = 1_000
/** Cases between two of the slow looks. */
const LOOK_OVER_EVERY = 512
/** Cases in one run of fast-check, so that a long run keeps nothing. */
const CHUNK = 10_000

/** Runs a target's cases. The same seed gives the same cases. */
export function fuzz<Input>(
  target: Target<Input>,
  { cases, seed, cpuMsMax = CPU_MS_MAX }: { cases: number; seed: number; cpuMsMax?: number },
): Outcome {
  const counts = new Map<string, number>()
  const watch = { slowestMs: 0, sinceLook: 0, cpuMsMax }
  const startMs = performance.now()
  let find: string | null = null
  let done = 0
  for (; done < cases && find === null; done += CHUNK) {
    const property = fc.property(target.inputs, (input) => {
      const word = timed(target, input, watch)
      counts.set(word, (counts.get(word) ?? 0) + 1)
    })
    const run = fc.check(property, { seed: seed + done, numRuns: Math.min(CHUNK, cases - done), endOnFailure: false })
    if (run.failed) find = told(run.counterexample?.[0], run.errorInstance)
  }
  find ??= lookedOver(target)
  return {
    target: target.name,
    cases: Math.min(done, cases),
    ms: performance.now() - startMs,
    counts,
    find,
    slowestMs: watch.slowestMs,
  }
}

interface Watch {
  slowestMs: number
  sinceLook: number
  readonly cpuMsMax: number
}

function timed<Input>(target: Target<Input>, input: Input, watch: Watch): string {
  const startMs = performance.now()
  const word = target.check(input)
  const tookMs = performance.now() - startMs
  watch.slowestMs = Math.max(watch.slowestMs, tookMs)
  if (tookMs > watch.cpuMsMax) assertQuick(target, input, watch)
  watch.sinceLook += 1
  if (watch.sinceLook >= LOOK_OVER_EVERY) {
    watch.sinceLook = 0
    target.lookOver?.()
  }
  return word
}

/** A machine that is busy makes any case slow: once more, by the processor's own clock. */
function assertQuick<Input>(target: Target<Input>, input: Input, { cpuMsMax }: Watch): void {
  const before = process.cpuUsage()
  target.check(input)
  const { user, system } = process.cpuUsage(before)
  const cpuMs = (user + system) / 1_000
  if (cpuMs > cpuMsMax) throw new Find(`took ${Math.round(cpuMs)} ms of the processor`)
}

function lookedOver<Input>({ lookOver }: Target<Input>): string | null {
  try {
    lookOver?.()
    return null
  } catch (error) {
    return told('(one of the last cases)', error)
  }
}

function told(input: unknown, error: unknown): string {
  const text = asText(input)
  const why = error instanceof Error ? (error.stack ?? error.message) : String(error)
  return `${text.length > TOLD_MAX ? `${text.slice(0, TOLD_MAX)}…` : text}\n${why.split('\n').slice(0, 6).join('\n')}`
}
const TOLD_MAX = 2_000

export function asText(input: unknown): string {
  try {
    return JSON.stringify(input) ?? String(input)
  } catch {
    return '(too deep to be written down)'
  }
}

/** What an answer must never show: where our code lies, or how it got there. */
const LEAK = /\n\s+at |node:internal|node_modules|\.(?:ts|mjs|js):\d+|file:\/\/|Error: |\bundefined\b|\[object /

/** Texts of ours hold nothing of the machine. What came in is told again in them, so it is taken out first. */
export function assertTold(text: string, saidByThem: () => string = () => ''): void {
  const leak = LEAK.exec(text)
  if (leak !== null && !saidByThem().includes(leak[0].trim())) {
    throw new Find(`"${leak[0]}" is told in: ${text.slice(Math.max(0, leak.index - 80), leak.index + 200)}`)
  }
}

/** A mistake is told with its place, what is wrong and what would be right, in whole sentences. */
export function assertProblems(
  problems: readonly { path: string; wrong: string; right: string }[],
  input: unknown,
): void {
  if (problems.length === 0) throw new Find('refused without a word')
  const said = () => (typeof input === 'string' ? input : asText(input))
  for (const { path, wrong, right } of problems) {
    if (typeof path !== 'string') throw new Find(`no place: ${wrong}`)
    for (const sentence of [wrong, right]) {
      if (sentence.length < 5 || !/[.?"…]$/.test(sentence)) throw new Find(`no sentence: "${sentence}"`)
      if (sentence.length > SENTENCE_MAX) throw new Find(`a sentence of ${sentence.length}: ${sentence.slice(0, 90)}`)
      assertTold(sentence, said)
    }
  }
  // Nobody reads more, and a small body must not make a huge answer.
  if (problems.length > PROBLEMS_MOST) throw new Find(`${problems.length} problems`)
}
/** A shop with every list full is named in "One of: …": some 200 names of 64 letters. */
const SENTENCE_MAX = 16_000
const PROBLEMS_MOST = 500
