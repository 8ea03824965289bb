import type { SalesWords } from '../../words/desk-sales.ts'
import type { Done } from '../call.ts'

/** Why something was not done, in words; "" when it was. The server's sentence says what would be right. */
export function troubleOf(done: Done<unknown>, say: Pick<SalesWords, 'noContact' | 'failed' | 'unknown'>): string {
  if (done.kind === 'done') return ''
  if (done.kind === 'no-contact') return say.noContact
  return done.status === 404 ? say.unknown : `${say.failed} ${done.detail}`.trim()
}
