import { listed } from './joined.ts'
import type { OwnWallKitchenWords } from './wall-kitchen.ts'
import type { Words } from './words.ts'

export function enWallKitchen({ times }: Words): OwnWallKitchenWords {
  return {
    toMake: (count) => `To make: ${count}`,
    ready: (marks) => `ready: ${marks.join(', ')}`,
    now: 'now',
    oven: 'Oven',
    ovenEmpty: 'Nothing is in the oven',
    placesFree: (places) => (places === 0 ? 'no place free' : places === 1 ? '1 place free' : `${places} places free`),
    otherKinds: (count) => (count === 1 ? '1 other kind' : `${count} other kinds`),
    risk: ({ mark, dueAtMs, missing, save }) => listed(`${mark} ${times.at(dueAtMs)} lacks ${missing}`, save),
    moreRisks: (count) => (count === 1 ? '1 more order' : `${count} more orders`),
    next: ({ mark, dueAtMs, kept, pieces }) => `${mark} ${times.clock(dueAtMs)}: ${kept} of ${pieces} kept`,
  }
}
