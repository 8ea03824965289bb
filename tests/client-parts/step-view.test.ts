import { describe, expect, it } from 'vitest'
import { doneLast } from '../../client/parts/step-view.ts'
import type { StepLine } from '../../shared-core/day/step-list.ts'
import { stepId } from '../../shared-core/ids.ts'
import { at } from '../core/support/make.ts'

const line = (id: string, status: StepLine['status']): StepLine => ({
  stepId: stepId(id),
  doughId: null,
  name: id,
  kind: 'plain',
  dueAtMs: at('4:00'),
  status,
  personId: null,
  doneAtMs: status === 'done' ? at('4:01') : null,
  float: null,
})

describe('steps on a sheet', () => {
  it('given steps done between others, then those still to do stand first, each part in the order of the list', () => {
    const lines = [line('a', 'done'), line('b', 'late'), line('c', 'done'), line('d', 'due'), line('e', 'coming')]
    expect(doneLast(lines).map(({ stepId: id }) => id)).toEqual(['b', 'd', 'e', 'a', 'c'])
  })
})
