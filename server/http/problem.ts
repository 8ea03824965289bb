import type { Response } from 'express'
import type { Problem } from '../../shared-core/shop/problem.ts'

/** An error over HTTP: problem details, RFC 9457. `errors` tells each mistake with its place. */
export interface HttpProblem {
  readonly status: number
  readonly title: string
  readonly detail: string
  readonly errors?: readonly Problem[]
}

export function sendProblem(response: Response, problem: HttpProblem): void {
  response
    .status(problem.status)
    .type('application/problem+json')
    .send(JSON.stringify({ type: 'about:blank', ...problem }))
}
