import * as z from 'zod'
import { commandSchema } from '../../../shared-core/day/command-schema.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../../shared-core/live/protocol.ts'
import { formulaJsonSchema } from '../../../shared-core/shop/formula-file.ts'
import { setUpJsonSchema } from '../../../shared-core/shop/set-up-file.ts'
import { COOKIE } from '../../devices/credentials.ts'
import { rightOf } from '../../devices/route-rights.ts'
import { bakeOffSchema } from '../../plan/bake-off-schema.ts'
import { deviceChangeSchema, joinSchema, newCodeSchema, newTokenSchema } from '../devices-schema.ts'
import { loadListSchema } from '../load-list-json.ts'
import { calendarAskedSchema } from '../orders-calendar-schema.ts'
import { rememberMappingSchema } from '../orders-import-schema.ts'
import { handedOverSchema, orderSchema } from '../orders-schema.ts'
import { planTrySchema, whatIfSchema } from '../plan-schema.ts'
import { meaningsSchema, mendSchema, takeSchema } from '../sales-import-schema.ts'
import { countsSchema, ovenReadingsSchema, readingsSchema, salesSchema } from '../sales-schema.ts'
import { ANSWERS } from './answer-schemas.ts'
import { COMING_ANSWERS, COMING_OPERATIONS } from './coming-operations.ts'
import { COPIES_OPERATIONS } from './copies-operations.ts'
import { DEVICE_ANSWERS } from './device-answers.ts'
import { DEVICE_OPERATIONS } from './device-operations.ts'
import { HOLIDAY_ANSWERS, HOLIDAY_OPERATIONS } from './holiday-operations.ts'
import type { AnswerBody, Body, Operation, Parameter } from './operation.ts'
import { ORDER_DETAILS_ANSWERS, ORDER_DETAILS_OPERATIONS } from './order-details-operations.ts'
import { ORDERS_CALENDAR_ANSWERS, ORDERS_CALENDAR_OPERATIONS } from './orders-calendar-operations.ts'
import { ORDERS_IMPORT_ANSWERS, ORDERS_IMPORT_OPERATIONS } from './orders-import-operations.ts'
import { ORDERS_ANSWERS, ORDERS_OPERATIONS } from './orders-operations.ts'
import { OUTLOOK_ANSWERS, OUTLOOK_OPERATIONS } from './outlook-operations.ts'
import { OVEN_ANSWERS, OVEN_OPERATIONS } from './oven-operations.ts'
import { PAST_SALES_ANSWERS, PAST_SALES_OPERATIONS } from './past-sales-operations.ts'
import { PLAN_ANSWERS, PLAN_OPERATIONS } from './plan-operations.ts'
import { READ_OPERATIONS } from './read-operations.ts'
import { SALES_IMPORT_ANSWERS, SALES_IMPORT_OPERATIONS } from './sales-import-operations.ts'
import { WRITE_OPERATIONS } from './write-operations.ts'

export const OPERATIONS: readonly Operation[] = [
  ...READ_OPERATIONS,
  ...WRITE_OPERATIONS,
  ...SALES_IMPORT_OPERATIONS,
  ...DEVICE_OPERATIONS,
  ...COPIES_OPERATIONS,
  ...HOLIDAY_OPERATIONS,
  ...PAST_SALES_OPERATIONS,
  ...COMING_OPERATIONS,
  ...OUTLOOK_OPERATIONS,
  ...ORDERS_OPERATIONS,
  ...ORDER_DETAILS_OPERATIONS,
  ...ORDERS_IMPORT_OPERATIONS,
  ...ORDERS_CALENDAR_OPERATIONS,
  ...OVEN_OPERATIONS,
  ...PLAN_OPERATIONS,
]

/** Any operation may be answered so: bad query or headers, nobody known, a foreign name or role, too many, no disk. */
const ALWAYS = [400, 401, 403, 429, 503]
const PROBLEM_TITLES: { readonly [status: number]: string } = {
  400: 'It cannot be read',
  401: 'Nobody who has joined',
  403: 'Not for this name, page or role',
  404: 'There is no such thing, or no set-up yet',
  409: 'Refused, or a question first',
  413: 'Too large',
  415: 'Neither JSON nor CSV in UTF-8',
  422: 'Mistakes; each is told with its place',
  429: 'Too many requests',
  500: 'A fault of ours',
  503: 'Nothing can be taken now, or not yet',
}

type Json = { readonly [key: string]: unknown }

/**
 * The API as OpenAPI 3.1, out of the very schemas that read what comes in, so that the two cannot part. Its examples are
 * calls that a test makes.
 */
export function openApiDocument(version: string): Json {
  const paths: Record<string, Record<string, Json>> = {}
  for (const operation of OPERATIONS) {
    paths[operation.path] = { ...paths[operation.path], [operation.method]: operationOf(operation) }
  }
  return {
    openapi: '3.1.1',
    info: {
      title: 'Boilboard',
      version,
      description:
        'The shop’s production board, for tills and scripts. A request must name the server by an address, localhost, *.local or a name given with --host, and, unless the shop was started with --open, carry a token. Instants are milliseconds since 1970.',
    },
    servers: [{ url: '/' }],
    paths,
    components: { schemas: schemas(), parameters: DEVICE_HEADERS, securitySchemes: TOKENS },
    security: [{ token: [] }, { cookie: [] }],
  }
}

function schemas(): Json {
  const named: Record<string, z.ZodType> = {
    ...ANSWERS,
    ...DEVICE_ANSWERS,
    ...SALES_IMPORT_ANSWERS,
    SalesMapping: takeSchema,
    SalesCorrected: mendSchema,
    SalesMeanings: meaningsSchema,
    ...HOLIDAY_ANSWERS,
    ...PAST_SALES_ANSWERS,
    ...COMING_ANSWERS,
    ...OUTLOOK_ANSWERS,
    ...ORDERS_ANSWERS,
    ...ORDER_DETAILS_ANSWERS,
    Order: orderSchema,
    HandedOver: handedOverSchema,
    ...OVEN_ANSWERS,
    ...PLAN_ANSWERS,
    ...ORDERS_IMPORT_ANSWERS,
    ...ORDERS_CALENDAR_ANSWERS,
    CalendarAsked: calendarAskedSchema,
    OrderMappingSaid: rememberMappingSchema,
    PlanTry: planTrySchema,
    WhatIfAsked: whatIfSchema,
    BakeOff: bakeOffSchema,
    Join: joinSchema,
    NewCode: newCodeSchema,
    NewToken: newTokenSchema,
    DeviceChange: deviceChangeSchema,
    Command: commandSchema,
    Sales: salesSchema,
    Counts: countsSchema,
    OvenReadings: ovenReadingsSchema,
    Readings: readingsSchema,
    LoadList: loadListSchema,
  }
  const own = Object.entries(named).map(([name, schema]) => [name, jsonSchema(schema)])
  const command = ref('Command')
  return {
    ...Object.fromEntries(own),
    SetUpFile: withoutDialect(setUpJsonSchema() as Json),
    FormulaFile: withoutDialect(formulaJsonSchema() as Json),
    Commands: { oneOf: [command, { type: 'array', items: command, minItems: 1, maxItems: COMMANDS_PER_MESSAGE_MAX }] },
    CommandsAnswered: { oneOf: [ref('CommandAnswer'), ref('CommandAnswers')] },
  }
}

function jsonSchema(schema: z.ZodType): Json {
  return withoutDialect(z.toJSONSchema(schema, { io: 'input', target: 'draft-2020-12' }) as Json)
}

/** The document says its dialect once, for all. */
function withoutDialect({ $schema: _dialect, ...rest }: Json): Json {
  return rest
}

function ref(name: string): Json {
  return { $ref: `#/components/schemas/${name}` }
}

function operationOf({
  id,
  method,
  path,
  summary,
  description = '',
  parameters = [],
  bodies,
  answer,
  problems = [],
  isAct,
}: Operation): Json {
  const right = rightOf(method.toUpperCase(), path)
  const isForAll = right === null || right === 'everybody'
  const headers =
    isAct === true ? Object.keys(DEVICE_HEADERS).map((name) => ({ $ref: `#/components/parameters/${name}` })) : []
  const statuses = [...new Set([...ALWAYS, ...problems])].sort((one, other) => one - other)
  return {
    operationId: id,
    summary,
    description: `${description} ${isForAll ? 'Needs no token.' : `For: ${right.join(', ')}.`}`.trim(),
    ...(isForAll ? { security: [] } : {}),
    parameters: [...parameters.map(parameterOf), ...headers],
    ...(bodies === undefined ? {} : { requestBody: { required: true, content: contentOf(bodies) } }),
    responses: {
      200: { description: answer.description, content: { [answer.type]: { schema: schemaOf(answer) } } },
      ...Object.fromEntries(statuses.map((status) => [status, problemOf(status, id)])),
    },
  }
}

function parameterOf({ name, in: place, description, schema, example }: Parameter): Json {
  return {
    name,
    in: place,
    description,
    required: place === 'path',
    schema: jsonSchema(schema),
    example: typed(example, schema),
  }
}

/** A number in a query is written as text; the document shows the number. */
function typed(example: string, schema: z.ZodType): unknown {
  return schema.safeParse(example).success ? example : Number(example)
}

function contentOf(bodies: readonly Body[]): Json {
  return Object.fromEntries(
    bodies.map(({ type, schema, example }) => {
      return [
        type,
        { schema: schema === null ? { type: 'string' } : ref(schema), ...(example === null ? {} : { example }) },
      ]
    }),
  )
}

function schemaOf({ type, schema }: AnswerBody): Json {
  if (schema !== null) return ref(schema)
  return type.endsWith('json') ? { type: 'object' } : { type: 'string' }
}

/** Health says in its own form why it is failing. */
function problemOf(status: number, id: string): Json {
  const isHealth = id === 'health' && status === 503
  const content = isHealth
    ? { 'application/json': { schema: ref('Health') } }
    : { 'application/problem+json': { schema: ref('Problem') } }
  return { description: PROBLEM_TITLES[status], content }
}

/** How a request shows that it comes from a device that has joined; an open shop asks for neither. */
const TOKENS = {
  token: { type: 'http', scheme: 'bearer', description: 'Of a till, a sensor, a script: made at the desk.' },
  cookie: { type: 'apiKey', in: 'cookie', name: COOKIE, description: 'Of a browser that joined with a code.' },
}

const header = (name: string, description: string, schema: Json, example: string): Json => {
  return { name, in: 'header', required: false, description, schema, example }
}
const DEVICE_HEADERS = {
  DeviceId: header(
    'X-Device-Id',
    'Which device asks; a row’s id counts for it. Left out, the token’s, and "http" in an open shop.',
    { type: 'string', pattern: '^[a-z0-9][a-z0-9.-]{0,63}$' },
    'till-1',
  ),
  DeviceName: header('X-Device-Name', 'As people call it.', { type: 'string', maxLength: 40 }, 'Till'),
  DeviceRole: header(
    'X-Device-Role',
    'With whose rights; left out, the token’s, and "desk" in an open shop. A desk may act as another.',
    { type: 'string', enum: ['wall', 'bench', 'counter', 'desk'] },
    'counter',
  ),
}
