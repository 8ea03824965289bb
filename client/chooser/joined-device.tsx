import { useState } from 'preact/hooks'
import type { JoinedWords } from '../words/door.ts'

interface JoinedDeviceProps {
  readonly name: string
  readonly say: JoinedWords
  /** How many taps on this device no server has answered. */
  readonly unsent: number
  readonly onLeave: () => void
}

/** What this device is here, and the way out, which is asked about once. */
export function JoinedDeviceLine({ name, say, unsent, onLeave }: JoinedDeviceProps) {
  const [isAsking, setAsking] = useState(false)
  return (
    <section class="chooser-joined" aria-label={say.is(name)}>
      <p class="chooser-device">{say.is(name)}</p>
      {isAsking ? (
        <div role="alert">
          <p>
            {say.leaveHow} {unsent > 0 && say.unsent(unsent)}
          </p>
          <button type="button" class="chooser-strong" onClick={onLeave}>
            {say.leaveYes}
          </button>
          <button type="button" onClick={() => setAsking(false)}>
            {say.leaveNo}
          </button>
        </div>
      ) : (
        <button type="button" onClick={() => setAsking(true)}>
          {say.leave}
        </button>
      )}
    </section>
  )
}
