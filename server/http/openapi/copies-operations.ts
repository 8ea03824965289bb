import type { Operation } from './operation.ts'

export const COPIES_OPERATIONS: readonly Operation[] = [
  {
    id: 'copies',
    method: 'get',
    path: '/api/v1/copies',
    summary: 'How well the journal is kept beside its own file',
    description: 'A demo keeps none: then the folder is "".',
    answer: {
      type: 'application/json',
      schema: 'Copies',
      description: 'The running copy and the daily archives, newest first.',
    },
  },
  {
    id: 'exportEntries',
    method: 'get',
    path: '/api/v1/export/entries.jsonl',
    summary: 'All entries of the journal, a JSON on each line',
    description:
      'As the journal stands when it is asked for, oldest first; npm run import reads such a file out of an export.',
    answer: { type: 'application/jsonl', schema: null, description: 'JSON Lines.' },
  },
]
