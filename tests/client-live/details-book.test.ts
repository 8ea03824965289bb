import { describe, expect, it } from 'vitest'
import { createDetailsBook } from '../../client/live/details-book.ts'
import type { Command } from '../../shared-core/day/commands.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { OrderDetails } from '../../shared-core/orders/order-commands.ts'

const said = (name: string): OrderDetails => ({ name, phone: '', note: '' })

type Names = { readonly [id: string]: string }

/** A server whose answers the test gives when it likes. */
function asking() {
  const questions: { readonly ids: readonly string[]; readonly answer: (names: Names | null) => Promise<void> }[] = []
  const book = createDetailsBook(
    (ids) =>
      new Promise((resolve) => {
        const answer = async (names: Names | null) => {
          resolve(names === null ? null : new Map(Object.entries(names).map(([id, name]) => [id, said(name)])))
          // The book's own turn comes after the answer's.
          await Promise.resolve()
          await Promise.resolve()
        }
        questions.push({ ids, answer })
      }),
  )
  return { book, questions }
}

const one = { id: 'a.1', details: 1 }

describe('[M138] who ordered', () => {
  it('given an order with details, when it is wanted again, then it is asked for once and told when it is there', async () => {
    const { book, questions } = asking()
    let told = 0
    book.subscribe(() => {
      told += 1
    })
    book.want([one, { id: 'b.1', details: 0 }])
    book.want([one])
    expect(questions.map(({ ids }) => ids)).toEqual([['a.1']])
    expect(book.of(one)).toBeNull()
    await questions[0]?.answer({ 'a.1': 'first' })
    expect(book.of(one)?.name).toBe('first')
    book.want([one])
    expect(questions).toHaveLength(1)
    expect(told).toBe(1)
  })

  it('given details that were written again, then they are fetched anew, and an answer of before does not overwrite them', async () => {
    const { book, questions } = asking()
    const later = { ...one, details: 2 }
    book.want([one])
    book.want([later])
    expect(questions).toHaveLength(2)
    await questions[1]?.answer({ 'a.1': 'second' })
    await questions[0]?.answer({ 'a.1': 'first' })
    expect(book.of(later)?.name).toBe('second')
  })

  it('given a change that was taken back, then what was said before is fetched, once', async () => {
    const { book, questions } = asking()
    const changed = { ...one, details: 2 }
    book.want([changed])
    await questions[0]?.answer({ 'a.1': 'second' })
    book.want([one])
    await questions[1]?.answer({ 'a.1': 'first' })
    book.want([one])
    expect([book.of(one)?.name, questions.length]).toEqual(['first', 2])
  })

  it('given no contact, then it is asked for at the next call', async () => {
    const { book, questions } = asking()
    book.want([one])
    await questions[0]?.answer(null)
    book.want([one])
    expect(questions).toHaveLength(2)
  })

  it('given an order that is no longer open, then its name is forgotten here', async () => {
    const { book, questions } = asking()
    book.want([one])
    await questions[0]?.answer({ 'a.1': 'first' })
    book.want([])
    expect(book.of(one)).toBeNull()
  })

  it('given an order that this device has just typed, then its name is known without the server', () => {
    const { book, questions } = asking()
    const id = commandId('tap1')
    const asked = {
      mark: null,
      dueAtMs: null,
      way: 'here',
      runId: null,
      stop: 0,
      lines: [],
      items: [],
      isPaid: true,
    } as const
    const taken: Command = {
      id,
      deviceSeq: 1,
      tappedAtMs: null,
      type: 'takeOrder',
      ...asked,
      details: said('typed here'),
    }
    book.typed([taken])
    expect(book.of({ id: 'tap1.1', details: 1 })?.name).toBe('typed here')
    expect(questions).toEqual([])
    book.typed([])
    expect(book.of({ id: 'tap1.1', details: 1 })).toBeNull()
  })
})
