import type { TargetedEvent, TargetedKeyboardEvent } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'

/**
 * The value and handlers of a field whose text is taken when it is finished: left, entered, or put away with its sheet.
 * Taken at each letter, a name would lose the space before its next word, a number would be refused at its first digit,
 * and the server would be told a dozen names. What is half typed is kept here, as each second paints anew.
 */
export function useTyped(value: string, onTyped: (text: string) => void) {
  const [typed, setTyped] = useState<string | null>(null)
  const done = () => {
    if (typed !== null) onTyped(typed)
    setTyped(null)
  }
  const onGone = useRef(done)
  onGone.current = done
  useEffect(() => () => onGone.current(), [])
  return {
    value: typed ?? value,
    onInput: (event: TargetedEvent<HTMLInputElement>) => setTyped(event.currentTarget.value),
    onBlur: done,
    onKeyDown: ({ key }: TargetedKeyboardEvent<HTMLInputElement>) => {
      if (key === 'Enter') done()
    },
  }
}
