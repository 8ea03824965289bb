import type { z } from 'zod'

/** One operation of the API, with an example that a test calls. */
export interface Operation {
  readonly id: string
  readonly method: 'get' | 'post' | 'put' | 'patch' | 'delete'
  /** As OpenAPI writes it, parameters in braces. */
  readonly path: string
  readonly summary: string
  readonly description?: string
  readonly parameters?: readonly Parameter[]
  readonly bodies?: readonly Body[]
  /** What it answers when all is well. */
  readonly answer: AnswerBody
  /** Statuses of problem details that it may answer with, besides 400, 401, 403, 429 and 503. */
  readonly problems?: readonly number[]
  /** Whether the device headers say who asks. */
  readonly isAct?: boolean
  /** Whether its example is of a shop that lets in who has joined; an open one answers 409. */
  readonly isClosed?: boolean
}

export interface Parameter {
  readonly name: string
  readonly in: 'path' | 'query'
  readonly description: string
  readonly schema: z.ZodType
  readonly example: string
  /** Left out of the example call. */
  readonly isLeftOut?: boolean
}

export interface Body {
  readonly type: 'application/json' | 'text/csv'
  /** A named schema of the document; of a CSV there is none. */
  readonly schema: string | null
  readonly example: unknown
}

export interface AnswerBody {
  readonly type: string
  readonly schema: string | null
  readonly description: string
}
