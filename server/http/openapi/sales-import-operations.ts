import * as z from 'zod'
import type {
  BadRows,
  Mapping,
  MendedRows,
  Preview,
  SalesFile,
  TillNames,
} from '../../../shared-core/live/sales-import.ts'
import { DATE_FORMS, DELIMITERS, DOUBTS, ROW_FAULTS } from '../../../shared-core/live/sales-import.ts'
import type { Operation, Parameter } from './operation.ts'

const count = z.int().min(0)
const date = z.iso.date()
const column = count.meta({ description: 'Counted from 0.' })
const params = z.record(z.string(), z.union([z.string(), z.number()]))
const said = <Code extends string>(codes: readonly Code[]) =>
  z.object({ code: z.enum(codes), params, text: z.string() })
/** Types with brands are plain texts and numbers on the wire. */
type Wire<T> = z.ZodType<{ [K in keyof T]: unknown }>

const file = z.object({
  id: count,
  name: z.string(),
  sha256: z.string(),
  bytes: count,
  addedAtMs: count,
  state: z.enum(['waiting', 'taking', 'taken', 'failed']),
  bytesRead: count,
  rows: count,
  taken: count,
  doubled: count,
  bad: count,
  from: date.nullable(),
  to: date.nullable(),
  why: z.string().nullable(),
}) satisfies Wire<SalesFile>

const mapping: z.ZodType<Mapping> = z.object({
  skip: count,
  hasHeader: z.boolean(),
  delimiter: z.enum(DELIMITERS),
  quote: z.enum(['"', "'"]),
  decimal: z.enum(['.', ',']),
  date: column,
  clock: column.nullable(),
  dateForm: z.enum(DATE_FORMS),
  item: column,
  detail: column.nullable(),
  pieces: column.nullable(),
  transaction: column.nullable(),
  line: column.nullable(),
  voided: column.nullable(),
})

const understood = z.object({
  date,
  minute: count.nullable(),
  item: z.string(),
  pieces: z.int(),
  transaction: z.string(),
  voided: z.boolean(),
})

const preview = z.object({
  file,
  encoding: z.enum(['utf-8', 'utf-16le', 'windows-1252']),
  mapping,
  isRemembered: z.boolean(),
  columns: z.array(z.object({ name: z.string(), samples: z.array(z.string()) })),
  rows: z.array(
    z.object({
      line: count,
      cells: z.array(z.string()),
      read: understood.nullable(),
      fault: said(ROW_FAULTS).nullable(),
    }),
  ),
  doubts: z.array(said(DOUBTS)),
}) satisfies Wire<Preview>

const badRow = z.object({ line: count, text: z.string(), fault: said(ROW_FAULTS) })
const badRows: z.ZodType<BadRows> = z.object({ bad: z.array(badRow), hasMore: z.boolean() })
const mended: z.ZodType<MendedRows> = z.object({ taken: count, doubled: count, bad: z.array(badRow) })

const meaning = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('variety'), varietyId: z.string(), pieces: count }),
  z.object({
    kind: z.literal('pack'),
    lines: z.array(z.object({ varietyId: z.string(), pieces: count })),
  }),
  z.object({ kind: z.literal('unnamed'), pieces: count, among: z.array(z.string()).nullable() }),
  z.object({ kind: z.literal('kitchen'), varietyId: z.string().nullable(), pieces: count }),
  z.object({ kind: z.literal('nothing') }),
])
const names = z.object({
  names: z.array(
    z.object({
      name: z.string(),
      rows: count,
      sold: z.int(),
      lastDate: date.nullable(),
      meaning: meaning.nullable(),
      suggested: meaning.nullable(),
    }),
  ),
}) satisfies Wire<TillNames>

/** What these routes answer with, by the names of the document. */
export const SALES_IMPORT_ANSWERS: Readonly<Record<string, z.ZodType>> = {
  SalesFile: file,
  SalesFiles: z.array(file),
  SalesPreview: preview,
  SalesBadRows: badRows,
  SalesMended: mended,
  SalesNames: names,
  SalesRemoved: z.object({}),
}

const json = (schema: string, description: string) => ({ type: 'application/json', schema, description })
const ofFile = (example: string): Parameter => ({
  name: 'id',
  in: 'path',
  description: 'The file’s id.',
  schema: z.int().min(1),
  example,
})

/** Examples are of a shop with two files: 1 was taken and has a bad row in line 3, 2 waits. */
const MAPPING: Mapping = {
  ...{ skip: 0, hasHeader: true, delimiter: ',', quote: '"', decimal: '.', dateForm: 'y-m-d' },
  ...{ date: 0, clock: 1, item: 3, detail: null, pieces: 4, transaction: 2, line: null, voided: null },
}
const CSV = 'Date,Time,Receipt,Item,Qty\n2026-11-20,7:05,1041,Sesame Bagel,2\n2026-11-20,7:06,1042,Half dozen,1\n'

export const SALES_IMPORT_OPERATIONS: readonly Operation[] = [
  {
    id: 'postSalesFile',
    method: 'post',
    path: '/api/v1/sales/files',
    summary: 'A file of past sales from a till, as long as it may be',
    description:
      'CSV with commas, semicolons, tabs or bars, in UTF-8, UTF-16 with its mark, or Windows-1252. It waits for its mapping; the answer says how it would be understood.',
    parameters: [
      { name: 'name', in: 'query', description: 'The file’s name.', schema: z.string(), example: 'november.csv' },
    ],
    bodies: [{ type: 'text/csv', schema: null, example: CSV }],
    answer: json('SalesPreview', 'How it would be understood.'),
    problems: [404, 422],
  },
  {
    id: 'getSalesFiles',
    method: 'get',
    path: '/api/v1/sales/files',
    summary: 'Files of past sales, newest first, and how far each is taken',
    answer: json('SalesFiles', 'The files.'),
    problems: [404],
  },
  {
    id: 'getSalesFile',
    method: 'get',
    path: '/api/v1/sales/files/{id}',
    summary: 'How far one file is taken',
    parameters: [ofFile('1')],
    answer: json('SalesFile', 'The file.'),
    problems: [404],
  },
  {
    id: 'deleteSalesFile',
    method: 'delete',
    path: '/api/v1/sales/files/{id}',
    summary: 'Takes a file out with all that only it brought',
    parameters: [ofFile('1')],
    answer: json('SalesRemoved', 'It is out.'),
    problems: [404],
  },
  {
    id: 'previewSalesFile',
    method: 'post',
    path: '/api/v1/sales/files/{id}/preview',
    summary: 'How a file that waits would be understood by another mapping',
    description: 'A mapping that is left out is guessed, or what an earlier file with this header was taken by.',
    parameters: [ofFile('2')],
    bodies: [{ type: 'application/json', schema: 'SalesMapping', example: { mapping: MAPPING } }],
    answer: json('SalesPreview', 'How it would be understood.'),
    problems: [404, 409, 422],
  },
  {
    id: 'takeSalesFile',
    method: 'post',
    path: '/api/v1/sales/files/{id}/take',
    summary: 'Takes a file; it goes on by itself, also after a stop',
    parameters: [ofFile('2')],
    bodies: [{ type: 'application/json', schema: 'SalesMapping', example: { mapping: MAPPING } }],
    answer: json('SalesFile', 'It is being taken.'),
    problems: [404, 409, 422],
  },
  {
    id: 'getBadSales',
    method: 'get',
    path: '/api/v1/sales/files/{id}/bad',
    summary: 'Rows that could not be read, with line and reason, 200 a page',
    parameters: [
      ofFile('1'),
      { name: 'after', in: 'query', description: 'A line.', schema: z.int().min(0), example: '0' },
    ],
    answer: json('SalesBadRows', 'The rows.'),
    problems: [404],
  },
  {
    id: 'mendBadSales',
    method: 'post',
    path: '/api/v1/sales/files/{id}/bad',
    summary: 'Takes such rows as they were corrected; an empty text lets one go',
    parameters: [ofFile('1')],
    bodies: [
      {
        type: 'application/json',
        schema: 'SalesCorrected',
        example: { rows: [{ line: 3, text: '2026-11-20,7:06,1042,Half dozen,1' }] },
      },
    ],
    answer: json('SalesMended', 'What was taken, and what is wrong still.'),
    problems: [404, 409, 422],
  },
  {
    id: 'getSalesNames',
    method: 'get',
    path: '/api/v1/sales/names',
    summary: 'What the till calls things, what they are, and what they may be',
    answer: json('SalesNames', 'The names, most sold first.'),
    problems: [404],
  },
  {
    id: 'putSalesNames',
    method: 'put',
    path: '/api/v1/sales/names',
    summary: 'Says what names are; all past sales of them follow',
    bodies: [
      {
        type: 'application/json',
        schema: 'SalesMeanings',
        example: {
          names: [
            { name: 'Half dozen', meaning: { kind: 'unnamed', pieces: 6, among: null } },
            { name: 'Sesame Bagel', meaning: { kind: 'variety', varietyId: 'sesame', pieces: 1 } },
          ],
        },
      },
    ],
    answer: json('SalesNames', 'The names, most sold first.'),
    problems: [404, 422],
  },
]
