import { applyEntry } from '../../shared-core/day/apply.ts'
import type { Command } from '../../shared-core/day/commands.ts'
import type { Decide } from '../../shared-core/day/decide-with.ts'
import type { Context } from '../../shared-core/day/decision.ts'
import type { State } from '../../shared-core/day/state.ts'
import { forkState } from '../../shared-core/day/state-json.ts'
import { AssertionError } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Confirmed } from './confirmed.ts'
import type { PendingCommand } from './shop-store.ts'

/**
 * What a screen shows: what the server confirmed, with its own pending taps decided on top by the same rules that the
 * server will use. Always a fork, also with nothing pending: the confirmed state is changed in place, and a component
 * that still holds the last one must not see half of the next.
 */
export interface View {
  readonly shown: State
  readonly pending: readonly PendingCommand[]
}

/** The view of now, decided anew only when the confirmed state or the pending taps have changed. */
export class ViewState {
  readonly #decide: Decide
  #last: { readonly view: View; readonly version: number; readonly taps: readonly Command[] } | null = null

  constructor(decide: Decide) {
    this.#decide = decide
  }

  /** @returns null before the first welcome */
  of({ state, version }: Confirmed, taps: readonly Command[], context: () => Context): View | null {
    if (state === null) return null
    const last = this.#last
    if (last !== null && last.version === version && last.taps === taps) return last.view
    // A long queue is not decided anew at every tap: one more goes on top of what was shown.
    const isLonger = last !== null && last.version === version && last.taps.every((tap, at) => tap === taps[at])
    const view = isLonger
      ? decideOnTop(last.view, taps.slice(last.taps.length), context(), this.#decide)
      : decideOnTop({ shown: state, pending: [] }, taps, context(), this.#decide)
    this.#last = { view, version, taps }
    return view
  }
}

/** Decides taps on a fork of a view, which stays as it is. */
function decideOnTop(view: View, taps: readonly Command[], context: Context, decide: Decide): View {
  const shown = forkState(view.shown)
  const guesses = taps.map((command) => ({ command, guess: guessAt(shown, command, context, decide) }))
  return { shown, pending: [...view.pending, ...guesses] }
}

/** Changes the state when the tap would be taken. One that our own rules stumble over is the server's to answer. */
function guessAt(state: State, command: Command, context: Context, decide: Decide): PendingCommand['guess'] {
  // The server's last entry may carry a later time than this screen's clock, which is a guess.
  const nowMs = epochMs(Math.max(state.recordedAtMs, context.nowMs))
  try {
    const decision = decide(state, command, { ...context, nowMs })
    if (decision.kind !== 'taken') return decision.kind
    const { told, events } = decision
    const head = { seq: state.seq + 1, commandId: command.id, deviceId: context.deviceId, recordedAtMs: nowMs }
    applyEntry(state, { ...head, told, events })
    return 'taken'
  } catch (error) {
    if (error instanceof AssertionError) return 'refused'
    throw error
  }
}
