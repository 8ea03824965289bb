import { useEffect, useRef, useState } from 'preact/hooks'
import type { JoinWords } from '../words/door.ts'
import { digitsIn, isWhole } from './code.ts'
import type { Joining } from './standing.ts'

interface CodeFormProps {
  readonly title: string
  readonly lead: string
  /** "" where there is nothing more to say. */
  readonly more: string
  readonly say: JoinWords
  readonly isJoining: boolean
  readonly outcome: Joining | null
  readonly onCode: (code: string) => void
}

/** Six digits, typed with a thumb or pasted; the sixth sends them. */
export function CodeForm({ title, lead, more, say, isJoining, outcome, onCode }: CodeFormProps) {
  const [code, setCode] = useState('')
  const field = useRef<HTMLInputElement>(null)
  const trouble = outcome === null ? '' : troubleText(outcome, say)
  useEffect(() => {
    if (outcome === null || outcome.kind === 'no-contact') return
    // A code that was refused is of no more use: the next one is typed over it.
    setCode('')
    field.current?.focus()
  }, [outcome])
  const send = (digits: string) => {
    if (isWhole(digits) && !isJoining) onCode(digits)
  }
  return (
    <form
      class="chooser-join"
      onSubmit={(event) => {
        event.preventDefault()
        send(code)
      }}
    >
      <h1>{title}</h1>
      <p>{lead}</p>
      {more !== '' && <p class="chooser-quiet">{more}</p>}
      <div class="chooser-code">
        <input
          ref={field}
          aria-label={say.code}
          inputMode="numeric"
          autoComplete="one-time-code"
          placeholder="000000"
          aria-invalid={trouble !== ''}
          aria-describedby="join-trouble"
          readOnly={isJoining}
          value={code}
          onInput={(event) => {
            const digits = digitsIn(event.currentTarget.value)
            event.currentTarget.value = digits
            setCode(digits)
            send(digits)
          }}
        />
        <button type="submit" disabled={isJoining || !isWhole(code)}>
          {isJoining ? say.joining : say.key}
        </button>
      </div>
      <p id="join-trouble" class="chooser-trouble" role="alert">
        {trouble}
      </p>
    </form>
  )
}

function troubleText(outcome: Joining, say: JoinWords): string {
  switch (outcome.kind) {
    case 'joined':
      return ''
    case 'wrong':
      return say.wrong
    case 'too-many':
      return say.tooMany(outcome.waitS)
    case 'no-contact':
      return say.noContact
    case 'failed':
      return `${say.failed} ${outcome.detail}`.trim()
  }
}
