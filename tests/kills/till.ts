import { request } from 'node:http'
import type { Command } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { CommandAnswer } from '../../shared-core/live/protocol.ts'
import type { Chance } from '../days/chance.ts'
import { nextAct } from './acts.ts'

/** A script at the HTTP API: it sends lists of commands, and what got no answer is sent again until it has one. */
export class Till {
  readonly sent = new Map<string, Command>()
  readonly #port: number
  readonly #chance: Chance
  readonly #told: (answer: CommandAnswer, who: string) => void
  #unanswered: readonly Command[] = []
  #isWaiting = false
  #made = 0

  constructor(port: number, chance: Chance, told: (answer: CommandAnswer, who: string) => void) {
    this.#port = port
    this.#chance = chance
    this.#told = told
  }

  get isWaiting(): boolean {
    return this.#isWaiting || this.#unanswered.length > 0
  }

  /** Sends the list that is still unanswered, else a new one of what the shop's state suggests. */
  async send(shown: State | null): Promise<void> {
    if (this.#isWaiting) return
    if (this.#unanswered.length === 0 && shown !== null) this.#unanswered = this.#newList(shown)
    if (this.#unanswered.length === 0) return
    this.#isWaiting = true
    const answers = await this.ask(this.#unanswered)
    this.#isWaiting = false
    if (answers === null) return
    for (const answer of answers) this.#told(answer, 'the till')
    this.#unanswered = []
  }

  /** The answers to a list, or null when none came. */
  ask(commands: readonly Command[]): Promise<readonly CommandAnswer[] | null> {
    return new Promise((resolve) => {
      const headers = { 'content-type': 'application/json', 'x-device-role': 'desk', 'x-device-id': 'till' }
      const outgoing = request(
        { port: this.#port, host: '127.0.0.1', path: '/api/v1/commands', method: 'POST', agent: false, headers },
        (answer) => {
          let text = ''
          answer.setEncoding('utf8')
          answer.on('data', (chunk: string) => {
            text += chunk
          })
          answer.once('error', () => resolve(null))
          answer.once('close', () => resolve(answer.statusCode === 200 && answer.complete ? JSON.parse(text) : null))
        },
      )
      outgoing.once('error', () => resolve(null))
      outgoing.end(JSON.stringify(commands))
    })
  }

  #newList(shown: State): readonly Command[] {
    const chance = this.#chance
    return Array.from({ length: chance.between(1, 8) }, () => {
      this.#made += 1
      const id = commandId(`till${String(this.#made).padStart(8, '0')}${chance.word().toString(16).padStart(8, '0')}`)
      const act = nextAct(shown, chance.oneOf(['counter', 'bench']), chance)
      const command: Command = { id, deviceSeq: this.#made, tappedAtMs: null, ...act }
      this.sent.set(id, command)
      return command
    })
  }
}
