import fc from 'fast-check'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { COMMANDS } from '../../core/command-maker.ts'
import { shopWith } from '../../core/support/shop.ts'
import type { Outcome } from '../fuzz.ts'
import { assertTold, asText, Find } from '../fuzz.ts'
import { anyText, mutated } from '../mutate.ts'
import { NetworkShop } from './network-shop.ts'
import type { RawAnswer } from './raw-http.ts'
import { sendRaw } from './raw-http.ts'
import { RawScreen } from './raw-screen.ts'
import type { Request } from './requests.ts'
import { brokenRequests, bytesOf, requests } from './requests.ts'

interface NetworkTarget<Input> {
  readonly name: string
  readonly share: number
  readonly inputs: fc.Arbitrary<Input>
  readonly check: (input: Input) => Promise<string>
}

const LOOK_OVER_EVERY = 200

/** Bad input over real links to one server. @param told hears of each target when it is through */
export async function fuzzNetwork(
  { cases, seed }: { readonly cases: number; readonly seed: number },
  told: (outcome: Outcome) => void = () => undefined,
): Promise<readonly Outcome[]> {
  const shop = await NetworkShop.open()
  const screens = new Screens(shop)
  const outcomes: Outcome[] = []
  try {
    const run = async <Input>(target: NetworkTarget<Input>, index: number) => {
      const some = { cases: Math.ceil(cases * target.share), seed: seed + index }
      const outcome = await fuzzOne(shop, target, some)
      outcomes.push(outcome)
      told(outcome)
    }
    const setUp = toSetUpFile(shopWith())
    await run(
      { name: 'HTTP requests', share: 0.6, inputs: requests(setUp), check: (one) => checkRequest(shop, one) },
      0,
    )
    await run({ name: 'broken HTTP', share: 0.15, inputs: brokenRequests, check: (one) => checkBroken(shop, one) }, 1)
    await run({ name: 'messages of screens', share: 0.25, inputs: messages, check: (one) => screens.check(one) }, 2)
  } finally {
    screens.close()
    await shop.close()
  }
  return outcomes
}

async function fuzzOne<Input>(
  shop: NetworkShop,
  target: NetworkTarget<Input>,
  { cases, seed }: { readonly cases: number; readonly seed: number },
): Promise<Outcome> {
  const counts = new Map<string, number>()
  const startMs = performance.now()
  let slowestMs = 0
  let done = 0
  const property = fc.asyncProperty(target.inputs, async (input) => {
    const fromMs = performance.now()
    const word = await target.check(input)
    slowestMs = Math.max(slowestMs, performance.now() - fromMs)
    counts.set(word, (counts.get(word) ?? 0) + 1)
    done += 1
    if (done % LOOK_OVER_EVERY === 0) await shop.assertWell()
  })
  const run = await fc.check(property, { seed, numRuns: cases })
  const find = run.failed ? `${asText(run.counterexample?.[0]).slice(0, 2_000)}\n${run.errorInstance}` : null
  return { target: target.name, cases: done, ms: performance.now() - startMs, counts, slowestMs, find }
}

async function checkRequest(shop: NetworkShop, request: Request): Promise<string> {
  const { port } = shop.serving
  const answer = await sendRaw(port, bytesOf(request, port), shop.nextAddress())
  assertAnswer(answer, request)
  // Without an answer nobody knows: the same command sent again would tell.
  shop.assertAsAnswered(answer.status === 0 || (answer.status === 200 && request.method !== 'GET'))
  return String(answer.status)
}

async function checkBroken(shop: NetworkShop, text: string): Promise<string> {
  const answer = await sendRaw(shop.serving.port, Buffer.from(text), shop.nextAddress())
  assertAnswer(answer, {
    method: text.startsWith('HEAD') ? 'HEAD' : 'GET',
    path: text,
    headers: [],
    body: '',
    coding: 'plain',
  })
  shop.assertAsAnswered(false)
  return answer.status === 0 ? 'ended' : String(answer.status)
}

/** Every answer is one that a script and a person can use, and shows nothing of the machine. @throws Find */
export function assertAnswer({ status, type, body }: RawAnswer, request: Request): void {
  if (status >= 500 && status !== 503) throw new Find(`${status}: ${body}`)
  assertTold(status < 400 ? '' : body, () => asText(request))
  if (status < 400 || request.method === 'HEAD') return
  if (type === 'text/html' && status === 404 && body.includes('There is no page here')) return
  const problem: unknown = type === 'application/problem+json' ? JSON.parse(body) : null
  const isTold = typeof problem === 'object' && problem !== null && 'detail' in problem && 'status' in problem
  if (
    !isTold ||
    typeof problem.detail !== 'string' ||
    !/^.{10,}[.?]$/s.test(problem.detail) ||
    problem.status !== status
  ) {
    throw new Find(`${status} without problem details: ${type} ${body.slice(0, 300)}`)
  }
}

const HELLO = {
  type: 'hello',
  protocol: 2,
  foldVersion: 2,
  buildId: 'test',
  device: { deviceId: 'fuzz', name: 'Fuzz', role: 'desk', stationId: null },
  isRenamed: false,
  afterSeq: null,
  journalId: null,
  course: null,
}
const MESSAGES = [
  HELLO,
  { type: 'probe', t0: 1 },
  { type: 'coming', actKey: 'flip:1' },
  { type: 'commands', commands: COMMANDS.slice(14, 18) },
]

/** What goes in one frame of a websocket: mostly whole messages, some that break socket.io's own form. */
const messages: fc.Arbitrary<string> = fc.oneof(
  { weight: 8, arbitrary: mutated(MESSAGES).map((message) => `42${asText(['m', message])}`) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '1',
      '2',
      '3',
      '42',
      '42[]',
      '42["x",1]',
      '451-["m",{"_placeholder":true,"num":0}]',
      '5',
      '6',
      '40/elsewhere,',
      '42{"m":1}',
      `42["m",${'['.repeat(60_000)}${']'.repeat(60_000)}]`,
    ),
  },
  { weight: 1, arbitrary: anyText.map((text) => `42["m",${JSON.stringify(text)}]`) },
  { weight: 1, arbitrary: anyText },
)

/** One screen after the other: a message too bad ends a link, and the next one is made. */
class Screens {
  readonly #shop: NetworkShop
  #screen: RawScreen | null = null
  #asked = 0

  constructor(shop: NetworkShop) {
    this.#shop = shop
  }

  async check(message: string): Promise<string> {
    const { port } = this.#shop.serving
    if (this.#screen === null || this.#screen.isClosed) this.#screen = await greeted(port, this.#shop.nextAddress())
    const screen = this.#screen
    screen.take()
    screen.say(message)
    this.#asked += 1
    const t0 = this.#asked + 0.5
    screen.say(`42${JSON.stringify(['m', { type: 'probe', t0 }])}`)
    const isThere = await screen.until((text) => text.includes('"probed"') && text.includes(`"t0":${t0},`))
    const heard = screen.take()
    for (const text of heard.filter((one) => !one.includes('"welcome"'))) assertTold(text, () => message)
    if (heard.some((text) => text.includes('"code":"internal"'))) throw new Find(`internal: ${heard.join('\n')}`)
    this.#shop.assertAsAnswered(heard.some((text) => text.includes('"kind":"taken"')))
    if (isThere) return 'link stands'
    if (screen.isClosed) return 'link ended'
    screen.close()
    this.#screen = null
    return 'link silent'
  }

  close(): void {
    this.#screen?.close()
  }
}

async function greeted(port: number, from: string): Promise<RawScreen> {
  const screen = await RawScreen.open(port, from)
  screen.say(`42${JSON.stringify(['m', HELLO])}`)
  if (!(await screen.until((text) => text.includes('"welcome"')))) throw new Find('a good hello is not answered')
  return screen
}
