import type { Response } from 'express'
import type { CommandAnswer } from '../../shared-core/live/protocol.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'

/** An error over HTTP: problem details, RFC 9457. `errors` tells each mistake with its place. */
export interface HttpProblem {
  readonly status: number
  readonly title: string
  readonly detail: string
  readonly errors?: readonly Problem[]
}

export function sendProblem(response: Response, problem: HttpProblem): void {
  send(response, problem.status, { type: 'about:blank', ...problem })
}

/** A taken command as its answer; a question or refusal as problem details that carry the answer. */
export function sendAnswer(response: Response, answered: CommandAnswer): void {
  const { answer } = answered
  if (answer.kind === 'taken') {
    response.json(answered)
    return
  }
  const status = answer.kind === 'refused' ? (STATUS_OF[answer.refusal.code] ?? 409) : 409
  const told =
    answer.kind === 'refused'
      ? { title: 'Refused', detail: `The shop refused the command: ${answer.refusal.code}.` }
      : {
          title: 'A question first',
          detail: `The shop asks: ${answer.asks.map(({ code }) => code).join(', ')}. Say yes by confirming these codes.`,
        }
  send(response, status, { type: 'about:blank', status, ...told, ...answered })
}

const STATUS_OF: { readonly [code: string]: number } = { 'bad-command': 400, 'not-your-role': 403, internal: 500 }

function send(response: Response, status: number, body: object): void {
  response.status(status).type('application/problem+json').send(JSON.stringify(body))
}
