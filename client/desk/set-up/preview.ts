import type { Problem } from '../../../shared-core/shop/problem.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { outcomeOf } from '../post.ts'

/** What a set-up or formula file would change, or what is wrong with it. */
export type Preview =
  | { readonly kind: 'changes'; readonly changes: readonly SetUpChange[] }
  | { readonly kind: 'mistakes'; readonly problems: readonly Problem[] }
  | { readonly kind: 'no-contact' }

/** Has a file read by the server, which knows its form; nothing is taken. Never throws. @param address where it is posted */
export async function previewFile(address: string, body: string, deviceId: string): Promise<Preview> {
  try {
    const response = await fetch(`${address}?dryRun=1`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-device-role': 'desk', 'x-device-id': deviceId },
      body,
    })
    const answer: unknown = await response.json()
    const changes = response.ok ? changesIn(answer) : null
    if (changes !== null) return { kind: 'changes', changes }
    const outcome = outcomeOf(answer)
    return outcome.kind === 'mistakes' ? outcome : { kind: 'no-contact' }
  } catch {
    return { kind: 'no-contact' }
  }
}

/** Out of the command that the server would take: it has read the file by its schema and made these of it. */
function changesIn(answer: unknown): readonly SetUpChange[] | null {
  const command = typeof answer === 'object' && answer !== null && 'command' in answer ? answer.command : null
  if (typeof command !== 'object' || command === null || !('changes' in command)) return null
  return Array.isArray(command.changes) ? (command.changes as readonly SetUpChange[]) : null
}
