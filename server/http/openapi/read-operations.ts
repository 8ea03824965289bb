import * as z from 'zod'
import { DAYS_PER_PAGE_MAX } from '../days.ts'
import type { Operation, Parameter } from './operation.ts'

const json = (schema: string, description: string) => ({ type: 'application/json', schema, description })
const whole = (least: number, most = Number.MAX_SAFE_INTEGER) => z.int().min(least).max(most)

const dayLabel: Parameter = {
  name: 'label',
  in: 'path',
  description: 'The local date of the day’s opening, or "today": the day that is open.',
  schema: z.string().regex(/^(today|\d{4}-\d{2}-\d{2})$/),
  example: 'today',
}
const opened: Parameter = {
  name: 'opened',
  in: 'query',
  description: 'Which of two days of one date: its openedAtMs. Left out, the newer one.',
  schema: whole(0),
  example: '1796000000000',
  isLeftOut: true,
}

export const READ_OPERATIONS: readonly Operation[] = [
  {
    id: 'health',
    method: 'get',
    path: '/api/health',
    summary: 'How the server is',
    description: 'Status 503, with reasons, when nothing can be taken or while a journal is read.',
    answer: json('Health', 'It takes what is tapped; a warning is for somebody to look at.'),
  },
  {
    id: 'addresses',
    method: 'get',
    path: '/api/v1/addresses',
    summary: 'Where screens find the server, best first',
    answer: json('Addresses', 'Names, then addresses.'),
  },
  {
    id: 'state',
    method: 'get',
    path: '/api/v1/state',
    summary: 'The running shop, whole',
    answer: json('State', 'The state with its fingerprint.'),
  },
  {
    id: 'events',
    method: 'get',
    path: '/api/v1/events',
    summary: 'Entries of the journal, oldest first',
    description: 'Asked again with the last one’s seq it goes on; an empty list is the end.',
    parameters: [
      { name: 'after', in: 'query', description: 'Those after this seq.', schema: whole(0), example: '0' },
      { name: 'limit', in: 'query', description: 'At most so many.', schema: whole(1, 1_000), example: '100' },
    ],
    answer: json('Entries', 'Entries and the last seq of the journal.'),
  },
  {
    id: 'days',
    method: 'get',
    path: '/api/v1/days',
    summary: 'Business days, newest first',
    description: 'Asked again with the last one’s openedAtMs as "before" it goes on; an empty list is the end.',
    parameters: [
      {
        name: 'before',
        in: 'query',
        description: 'Those opened before this instant.',
        schema: whole(0),
        example: '4000000000000',
      },
      {
        name: 'limit',
        in: 'query',
        description: 'At most so many.',
        schema: whole(1, DAYS_PER_PAGE_MAX),
        example: '30',
      },
    ],
    answer: json('Days', 'Days with the figures of those that are closed.'),
  },
  {
    id: 'day',
    method: 'get',
    path: '/api/v1/days/{label}',
    summary: 'A day’s record, from which it can be played again',
    description: 'The state just before its first entry, and its entries up to its last close, or to now.',
    parameters: [dayLabel, opened],
    answer: json('DayRecord', 'The record.'),
    problems: [404],
  },
  {
    id: 'dayFigures',
    method: 'get',
    path: '/api/v1/days/{label}/figures',
    summary: 'A day’s five figures',
    description: 'Of a day that is open as they are now. What nobody can know is null, never nought.',
    parameters: [dayLabel, opened],
    answer: json('Figures', 'The figures.'),
    problems: [404],
  },
  {
    id: 'dayAccount',
    method: 'get',
    path: '/api/v1/days/{label}/account.csv',
    summary: 'A day’s account of pieces and sales by dough and variety, and of dough in grams by formula',
    parameters: [dayLabel, opened],
    answer: { type: 'text/csv', schema: null, description: 'RFC 4180, with a header line.' },
    problems: [404],
  },
  {
    id: 'dayEntries',
    method: 'get',
    path: '/api/v1/days/{label}/entries.jsonl',
    summary: 'A day’s entries, a JSON on each line',
    parameters: [dayLabel, opened],
    answer: { type: 'application/jsonl', schema: null, description: 'JSON Lines.' },
    problems: [404],
  },
  {
    id: 'setUp',
    method: 'get',
    path: '/api/v1/set-up',
    summary: 'The set-up as a file',
    answer: json('SetUpFile', 'The file that POST /api/v1/set-up takes.'),
    problems: [404],
  },
  {
    id: 'setUpSchema',
    method: 'get',
    path: '/api/v1/set-up.schema.json',
    summary: 'The form of a set-up file',
    answer: { type: 'application/schema+json', schema: null, description: 'JSON Schema, draft 2020-12.' },
  },
  {
    id: 'setUpVersions',
    method: 'get',
    path: '/api/v1/set-up/versions',
    summary: 'What the set-up was, change by change, newest first',
    parameters: [
      { name: 'before', in: 'query', description: 'Those before this seq.', schema: whole(0), example: '100000' },
    ],
    answer: json('SetUpVersions', 'Versions.'),
  },
  {
    id: 'formula',
    method: 'get',
    path: '/api/v1/formulas/{id}',
    summary: 'One formula as a file, with its ingredients and preparations',
    parameters: [{ name: 'id', in: 'path', description: 'The formula’s id.', schema: z.string(), example: 'plain' }],
    answer: json('FormulaFile', 'The file that POST /api/v1/formulas takes.'),
    problems: [404],
  },
  {
    id: 'openapi',
    method: 'get',
    path: '/api/openapi.json',
    summary: 'This document',
    answer: { type: 'application/json', schema: null, description: 'OpenAPI 3.1.' },
  },
]
