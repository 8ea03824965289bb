import { expect, it } from 'vitest'
import { shownName, unnamed } from '../../client/live/unnamed.ts'

it.each([
  [unnamed('bench', 'efe4a0b1'), 'Línea efe4'],
  ['', 'Línea'],
  ['bench 12', 'bench 12'],
  ['bench oven', 'bench oven'],
  ['Horno', 'Horno'],
])('[E32] given a bench called %j, then it is told as %j', (name, told) => {
  expect(shownName({ name, role: 'bench' }, 'Línea')).toBe(told)
})
