import type { FeedQuestions } from './feed-questions.ts'
import type { Handlers } from './questions.ts'
import type { Work } from './work.ts'

export function feedHandlers({ book }: Work): Handlers<FeedQuestions> {
  return {
    shop: (shop) => book.setShop(shop),
    journalDays: (told) => book.tellDays(told),
  }
}
