import { readFile } from 'node:fs/promises'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { planTimed } from './plan-instance.ts'
import { readBakeOff } from './read-bake-off.ts'

const HELP = `npm run -s plan -- INSTANCE.json

Reads a planning problem as JSON, "-" from standard input, and writes a plan as JSON: the loads in the order of their
kettle starts, and "planMs", the milliseconds of processor time that planning took once the code was warm. Minutes are
after local midnight. The same problem gives the same loads.
`

/** Where the command reads and writes. */
export interface Outlets {
  readonly data: (text: string) => void
  readonly say: (sentence: string) => void
  readonly input: () => Promise<string>
  /** Times that the problem is planned before it counts; left out: until the code is warm. */
  readonly warmUps?: number
}

/** Code that has run some times is compiled by then; a plan on the way is much the same each time. */
const WARM_UPS_MAX = 20
/** Nobody waits longer for code to be warm. */
const WARM_UP_MS_MAX = 1_500

/**
 * Runs the command.
 * @returns exit status: 0, or 2 where what is given cannot be planned, with a sentence for each mistake
 */
export async function planCommand(args: readonly string[], { data, say, input, warmUps }: Outlets): Promise<number> {
  if (args.includes('--help') || args.includes('-h')) {
    data(HELP)
    return 0
  }
  const [file, ...others] = args
  if (file === undefined || others.length > 0) {
    say(`Name one file: npm run -s plan -- INSTANCE.json. ${args.length} were named.`)
    return 2
  }
  const text = await textOf(file, input)
  if (!text.ok) {
    say(text.why)
    return 2
  }
  const json = parsed(text.value)
  if (!json.ok) {
    say(`${file} is no JSON: ${json.why}`)
    return 2
  }
  const read = readBakeOff(json.value)
  if (!read.ok) {
    for (const one of read.problems) say(`${file} ${sentence(one)}`)
    return 2
  }
  for (const path of read.passedOver) say(`${file} ${path}: nobody knows this key; it was passed over.`)
  const startMs = performance.now()
  for (let runs = 0; runs < (warmUps ?? WARM_UPS_MAX) && performance.now() - startMs < WARM_UP_MS_MAX; runs += 1)
    planTimed(read.given)
  data(`${JSON.stringify(planTimed(read.given))}\n`)
  return 0
}

function sentence({ path, wrong, right }: Problem): string {
  return `${path === '' ? '' : `${path}: `}${wrong} Right would be: ${right}`
}

type Got<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly why: string }

async function textOf(file: string, input: () => Promise<string>): Promise<Got<string>> {
  try {
    return { ok: true, value: file === '-' ? await input() : await readFile(file, 'utf8') }
  } catch (error) {
    const { code = '', message } = error as NodeJS.ErrnoException
    return { ok: false, why: `${file}: ${WHYS[code] ?? message}` }
  }
}
const WHYS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file.',
  EISDIR: 'this is a folder; name a file.',
  EACCES: 'this file may not be read.',
}

function parsed(text: string): Got<unknown> {
  try {
    return { ok: true, value: JSON.parse(text) }
  } catch (error) {
    return { ok: false, why: error instanceof Error ? error.message : String(error) }
  }
}
