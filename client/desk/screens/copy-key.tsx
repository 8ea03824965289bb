import { useState } from 'preact/hooks'

interface CopyKeyProps {
  readonly text: string
  readonly label: string
  readonly done: string
}

export function CopyKey({ text, label, done }: CopyKeyProps) {
  const [isCopied, setCopied] = useState(false)
  return (
    <button type="button" onClick={() => copy(text).then(setCopied)}>
      <span role="status">{isCopied ? done : label}</span>
    </button>
  )
}

/** @returns whether it is in the clipboard */
async function copy(text: string): Promise<boolean> {
  // Plain http on a shop's network is no secure context, and has no clipboard of its own.
  if (!window.isSecureContext) return copyBySelection(text)
  return navigator.clipboard.writeText(text).then(
    () => true,
    () => copyBySelection(text),
  )
}

function copyBySelection(text: string): boolean {
  const field = document.createElement('textarea')
  field.value = text
  field.style.position = 'fixed'
  field.style.opacity = '0'
  document.body.append(field)
  field.select()
  const isCopied = document.execCommand('copy')
  field.remove()
  return isCopied
}
