import type { CareCommand } from '../day/commands.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, take } from '../day/decision.ts'
import { boardsMark } from '../day/marks.ts'

type Of<Type extends CareCommand['type']> = Case<Extract<CareCommand, { type: Type }>>

/** What was done for the kettle's water or the boards, with what had touched them until then. */
export function decideCare(oneCase: Of<'care'>): Decision {
  const { command, state } = oneCase
  const touches = [...state.touches].sort(([one], [other]) => (one < other ? -1 : 1))
  const atMs = happenedAt(oneCase)
  happen(oneCase, atMs, { type: 'cared', care: { kind: command.care, atMs, touches } })
  return take(oneCase, { care: command.care })
}

/** Boards that can be used today: some crack, some are still in the wash. */
export function decideSetBoards(oneCase: Of<'setBoards'>): Decision {
  const { command, shop, state } = oneCase
  const { usable } = command
  const id = boardsMark()
  const atMs = happenedAt(oneCase)
  // All of them again: nothing is left to say.
  if (usable === shop.boards.count && state.marks.has(id)) happen(oneCase, atMs, { type: 'unmarked', markId: id })
  else happen(oneCase, atMs, { type: 'marked', mark: { kind: 'boards', id, usable } })
  return take(oneCase, { pieces: usable })
}
