import { useEffect, useState } from 'preact/hooks'
import { Sheet } from '../sheet.tsx'
import type { SettingsProps, SettingsSheet } from './settings-sheet.tsx'

/**
 * The settings are opened once in a tablet's life: fetched after the line stands, so that its first paint does not wait
 * for them, and before anybody asks, so that they are there without the server.
 */
export function fetchSettings(): Promise<typeof SettingsSheet> {
  return import('./settings-sheet.tsx').then((part) => part.SettingsSheet)
}

export function SettingsLater(props: SettingsProps) {
  const [part, setPart] = useState<{ readonly Shown: typeof SettingsSheet } | null>(null)
  const [hasFailed, setFailed] = useState(false)
  useEffect(() => {
    fetchSettings().then(
      (Shown) => setPart({ Shown }),
      () => setFailed(true),
    )
  }, [])
  if (part !== null) return <part.Shown {...props} />
  const { more } = props.words.bench
  return (
    <Sheet {...props} title={more.settings} detail={hasFailed ? more.noSettings : undefined}>
      {null}
    </Sheet>
  )
}
