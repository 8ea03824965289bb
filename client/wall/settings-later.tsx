import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { SheetProps } from './settings-sheet.tsx'

/** Opened some times a year. Fetched once the wall stands, so that it is there without the server. */
export const fetchSettings = () => import('./settings-sheet.tsx').then((part) => part.SettingsSheet)

/** What cannot be fetched is closed again: the next touch asks anew. */
export function SettingsLater(props: SheetProps) {
  const [part, setPart] = useState<{ readonly Shown: ComponentType<SheetProps> } | null>(null)
  const { onClose } = props
  useEffect(() => {
    let isOpen = true
    fetchSettings().then(
      (Shown) => isOpen && setPart({ Shown }),
      () => isOpen && onClose(),
    )
    return () => {
      isOpen = false
    }
  }, [onClose])
  return part === null ? null : <part.Shown {...props} />
}
