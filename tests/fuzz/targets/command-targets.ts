import fc from 'fast-check'
import { parseFromScreen } from '../../../server/live/parse-message.ts'
import { readCommands } from '../../../server/live/read-commands.ts'
import { isZone } from '../../../server/live/shop-clock.ts'
import { parseCommand } from '../../../shared-core/day/command-schema.ts'
import { FOLD_VERSION } from '../../../shared-core/day/state.ts'
import { PROTOCOL_VERSION } from '../../../shared-core/live/protocol.ts'
import { COMMANDS } from '../../core/command-maker.ts'
import type { Target } from '../fuzz.ts'
import { assertProblems, Find } from '../fuzz.ts'
import { anyValue, mutated, overWire } from '../mutate.ts'
import type { ShopAtWork } from '../shop-at-work.ts'

const HELLO = {
  type: 'hello',
  protocol: PROTOCOL_VERSION,
  foldVersion: FOLD_VERSION,
  buildId: 'build-1',
  device: { deviceId: 'bench-1', name: 'Bench', role: 'bench', stationId: null },
  isRenamed: false,
  afterSeq: 3,
  journalId: 'fuzz',
  course: '',
}

/** Commands and messages of screens. */
export function commandTargets(shop: ShopAtWork): readonly Target[] {
  const examples = [...shop.examples(), ...COMMANDS]
  const messages = [
    HELLO,
    { ...HELLO, afterSeq: null, journalId: null, course: null },
    { type: 'probe', t0: 12.5 },
    { type: 'coming', actKey: 'flip:1' },
    { type: 'commands', commands: examples.slice(0, 2) },
  ]
  return [
    {
      name: 'command, its form',
      weight: 1,
      inputs: fc.oneof({ weight: 12, arbitrary: mutated(examples) }, { weight: 1, arbitrary: anyValue }),
      check: (raw) => {
        const parsed = parseCommand(raw, { isZone })
        if (!parsed.ok) assertProblems(parsed.problems, raw)
        return parsed.ok ? 'read' : 'refused'
      },
    },
    {
      name: 'command, in a shop at work',
      weight: 1,
      inputs: mutated(examples),
      check: (raw) => shop.submit([overWire(raw)]),
      lookOver: () => shop.assertAsBefore(),
    },
    {
      name: 'commands of one message',
      weight: 0.3,
      inputs: fc.array(mutated(examples), { maxLength: 8 }),
      check: (raws) => shop.submit((raws as unknown[]).map(overWire)),
      lookOver: () => shop.assertAsBefore(),
    } as Target,
    {
      name: 'message of a screen',
      weight: 1,
      inputs: fc.oneof({ weight: 8, arbitrary: mutated(messages) }, { weight: 1, arbitrary: anyValue }),
      check: (raw) => checkMessage(raw),
    },
  ]
}

/** What is read out of a message is plain: all of it can be sent on as JSON. */
function checkMessage(raw: unknown): string {
  const parsed = parseFromScreen(raw)
  if (!parsed.ok) return parsed.isHello ? 'refused hello' : 'link ended'
  const { message } = parsed
  if (message.type === 'commands') {
    const { commands, unread, nameless } = readCommands(message.commands)
    if (commands.length + unread.length + nameless !== message.commands.length) throw new Find('a command was lost')
  } else if (message.type === 'probe' && !Number.isFinite(message.t0)) throw new Find(`a probe of ${message.t0}`)
  return message.type
}
