import * as z from 'zod'
import { FORMULA_EXAMPLE } from './formula-example.ts'
import type { Operation, Parameter } from './operation.ts'

const json = (schema: string, description: string) => ({ type: 'application/json', schema, description })

const confirm: Parameter = {
  name: 'confirm',
  in: 'query',
  description: 'Codes of questions that are answered with yes, separated by commas.',
  schema: z.string(),
  example: 'old-tap',
  isLeftOut: true,
}
const dryRun: Parameter = {
  name: 'dryRun',
  in: 'query',
  description: '1: tells what would change and be asked, and changes nothing.',
  schema: z.enum(['0', '1']),
  example: '1',
}
const fromMs: Parameter = {
  name: 'fromMs',
  in: 'query',
  description: 'The instant from which it holds; left out, from now on.',
  schema: z.int().min(0),
  example: '1796000000000',
  isLeftOut: true,
}

/** Examples name what the demo's shop has: varieties "Sesame" and "Poppy", a shelf "1". */
export const WRITE_OPERATIONS: readonly Operation[] = [
  {
    id: 'postCommands',
    method: 'post',
    path: '/api/v1/commands',
    summary: 'Does what a tap does: one command, or a list of them',
    description:
      'A list is answered with a list in its order; a single one that is not taken with problem details that carry the answer. A repeat gets the first answer.',
    bodies: [
      {
        type: 'application/json',
        schema: 'Commands',
        example: [
          {
            id: 'till00000001',
            deviceSeq: 1,
            tappedAtMs: null,
            type: 'sell',
            lines: [{ varietyId: 'sesame', pieces: 6 }],
          },
        ],
      },
    ],
    answer: json('CommandsAnswered', 'The answer, or the answers.'),
    problems: [409, 413, 500],
    isAct: true,
  },
  {
    id: 'postSales',
    method: 'post',
    path: '/api/v1/sales',
    summary: 'Sales of a till, by name, by id, or of nobody knows which variety',
    description:
      'Each row is one sale by the till. With a row that cannot be read nothing is taken, unless partial=1. A row with an id counts once for each device, however often it is sent. A time more than ten minutes ahead of the server is refused.',
    parameters: [
      {
        name: 'partial',
        in: 'query',
        description: '1: the rows that can be read are taken, the others listed.',
        schema: z.literal('1'),
        example: '1',
      },
      confirm,
    ],
    bodies: [
      {
        type: 'application/json',
        schema: 'Sales',
        example: {
          sales: [
            { variety: 'Sesame', pieces: 6, id: 'receipt 1041/1' },
            { variety: null, pieces: 12, id: 'receipt 1041/2' },
          ],
        },
      },
      {
        type: 'text/csv',
        schema: null,
        example: 'at,variety,pieces,id\n,Sesame,6,receipt 1042/1\n,,12,receipt 1042/2\n',
      },
    ],
    answer: json('RowAnswers', 'How each row went.'),
    problems: [404, 413, 415, 422],
    isAct: true,
  },
  {
    id: 'postCounts',
    method: 'post',
    path: '/api/v1/counts',
    summary: 'Rods counted in one go',
    parameters: [confirm],
    bodies: [
      {
        type: 'application/json',
        schema: 'Counts',
        example: { id: 'count 7:30', counts: [{ variety: 'Sesame', pieces: 18, within: 3 }] },
      },
    ],
    answer: json('CommandAnswer', 'Taken.'),
    problems: [404, 409, 413, 422],
    isAct: true,
  },
  {
    id: 'postOvenReadings',
    method: 'post',
    path: '/api/v1/oven-readings',
    summary: 'Readings of the oven’s heat',
    parameters: [confirm],
    bodies: [
      {
        type: 'application/json',
        schema: 'OvenReadings',
        example: {
          readings: [
            { degrees: 475, unit: 'F' },
            { shelf: '1', degrees: 470, unit: 'F' },
          ],
        },
      },
    ],
    answer: json('RowAnswers', 'How each reading went.'),
    problems: [404, 413, 422],
    isAct: true,
  },
  {
    id: 'postReadings',
    method: 'post',
    path: '/api/v1/readings',
    summary: 'Readings of the dough room: of the room, the cooler, the flour and the tap',
    parameters: [confirm],
    bodies: [
      {
        type: 'application/json',
        schema: 'Readings',
        example: {
          readings: [
            { place: 'room', degrees: 71.5, unit: 'F' },
            { place: 'cooler', degrees: 38, unit: 'F' },
          ],
        },
      },
    ],
    answer: json('RowAnswers', 'How each reading went.'),
    problems: [404, 413, 422],
    isAct: true,
  },
  {
    id: 'postLoadList',
    method: 'post',
    path: '/api/v1/load-list',
    summary: 'The day’s loads, in place of those still to come',
    description: 'In local time; without a date, a list whose times are all past is the next day’s.',
    parameters: [
      {
        name: 'date',
        in: 'query',
        description: 'The local date of the list.',
        schema: z.iso.date(),
        example: '2026-11-25',
        isLeftOut: true,
      },
      confirm,
    ],
    bodies: [
      {
        type: 'application/json',
        schema: 'LoadList',
        example: { loads: [{ in: '5:10', shelf: '1', lines: [['Sesame', 36]] }] },
      },
      { type: 'text/csv', schema: null, example: 'in,shelf,variety,pieces\n5:10,1,Sesame,36\n' },
    ],
    answer: json('CommandAnswer', 'Taken.'),
    problems: [404, 409, 413, 415, 422],
    isAct: true,
  },
  {
    id: 'postSetUp',
    method: 'post',
    path: '/api/v1/set-up',
    summary: 'A set-up file, taken whole or not at all',
    parameters: [dryRun, fromMs, confirm],
    bodies: [{ type: 'application/json', schema: 'SetUpFile', example: null }],
    answer: json('SetUpAnswer', 'Taken, or what would come of it.'),
    problems: [409, 413, 422],
    isAct: true,
  },
  {
    id: 'postFormula',
    method: 'post',
    path: '/api/v1/formulas',
    summary: 'A formula file into the set-up, taken whole or not at all',
    description: 'Ingredients and preparations that the shop has by id, or by name and kind, are its own.',
    parameters: [dryRun, fromMs, confirm],
    bodies: [{ type: 'application/json', schema: 'FormulaFile', example: FORMULA_EXAMPLE }],
    answer: json('SetUpAnswer', 'Taken, or what would come of it.'),
    problems: [404, 409, 413, 422],
    isAct: true,
  },
  {
    id: 'restoreSetUp',
    method: 'post',
    path: '/api/v1/set-up/versions/{seq}/restore',
    summary: 'A version of the set-up again, as a change',
    parameters: [
      { name: 'seq', in: 'path', description: 'The version’s seq.', schema: z.int().min(1), example: '1' },
      dryRun,
      fromMs,
      confirm,
    ],
    answer: json('SetUpAnswer', 'Taken, or what would come of it.'),
    problems: [404, 409],
    isAct: true,
  },
]
