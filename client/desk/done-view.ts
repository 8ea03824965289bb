import type { State } from '../../shared-core/day/state.ts'
import { changedSince, NEVER_TAKEN_BACK } from '../../shared-core/day/take-back.ts'
import type { Trace } from '../../shared-core/day/trace.ts'
import type { CommandId, DeviceId } from '../../shared-core/ids.ts'
import type { ScreenPresence } from '../../shared-core/live/protocol.ts'
import type { DeskWords } from '../words/desk.ts'
import { deviceName } from './device-name.ts'

/** An act that was done, who did it, and whether it can be undone. */
export interface DoneRow {
  readonly commandId: CommandId
  readonly text: string
  readonly by: string
  /** Why it cannot be taken back; null when it can. */
  readonly refusal: string | null
}

/** No desk lists more: the rest is too long ago to be taken back by hand. */
const ROWS_MAX = 40

/** What was done, newest first. */
export function doneRows(
  state: State,
  parts: { readonly deviceId: DeviceId; readonly screens: readonly ScreenPresence[]; readonly words: DeskWords },
): readonly DoneRow[] {
  const { deviceId, screens, words } = parts
  const names = new Map(screens.map(({ device }) => [device.deviceId, deviceName(device, words)]))
  return [...state.traces]
    .reverse()
    .slice(0, ROWS_MAX)
    .map((trace) => ({
      commandId: trace.commandId,
      text: words.told.at(trace.told, trace.atMs),
      by: trace.deviceId === deviceId ? words.desk.done.here : (names.get(trace.deviceId) ?? trace.deviceId),
      refusal: refusalOf(state, trace, words),
    }))
}

function refusalOf(state: State, trace: Trace, { answers }: DeskWords): string | null {
  if (NEVER_TAKEN_BACK.has(trace.told.type)) {
    return answers.refusal({ code: 'take-back-never', params: { type: trace.told.type } })
  }
  const after = changedSince(state, trace)
  if (after === null) return null
  const params = { type: after.told.type, atMs: after.atMs, commandId: after.commandId }
  return answers.refusal({ code: 'take-back-changed-since', params })
}
