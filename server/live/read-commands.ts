import { COMMAND_ID_PATTERN } from '../../shared-core/day/command-fields.ts'
import { parseCommand } from '../../shared-core/day/command-schema.ts'
import type { Command } from '../../shared-core/day/commands.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { CommandAnswer } from '../../shared-core/live/protocol.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { isZone } from './shop-clock.ts'

export interface ReadCommands {
  readonly commands: readonly Command[]
  readonly unread: readonly CommandAnswer[]
  /** How many had no id by which they could be answered. */
  readonly nameless: number
}

/** Commands off the wire, in the order of the taps. What cannot be read is refused by name and stored nowhere. */
export function readCommands(raw: readonly unknown[]): ReadCommands {
  const commands: Command[] = []
  const unread: CommandAnswer[] = []
  let nameless = 0
  for (const one of raw) {
    const parsed = parseCommand(one, { isZone })
    const id = idOf(one)
    if (parsed.ok) commands.push(parsed.command)
    else if (id === null) nameless += 1
    else unread.push(unreadable(id, parsed.problems))
  }
  commands.sort((one, other) => one.deviceSeq - other.deviceSeq)
  return { commands, unread, nameless }
}

function unreadable(id: string, [problem]: readonly Problem[]): CommandAnswer {
  const params = { path: problem?.path ?? '', wrong: problem?.wrong ?? '', right: problem?.right ?? '' }
  return { commandId: commandId(id), answer: { kind: 'refused', refusal: { code: 'bad-command', params } } }
}

function idOf(raw: unknown): string | null {
  if (typeof raw !== 'object' || raw === null || !('id' in raw)) return null
  return typeof raw.id === 'string' && COMMAND_ID_PATTERN.test(raw.id) ? raw.id : null
}
