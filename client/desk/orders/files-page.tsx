import '../sales/sales.css'
import { CalendarPanel } from './calendar-panel.tsx'
import { ImportPanel } from './import-panel.tsx'
import type { OrdersParts } from './parts.ts'

/** Orders that come in a file, and the calendar that shows them elsewhere. */
export function FilesPage(parts: OrdersParts) {
  return (
    <>
      <ImportPanel {...parts} />
      <CalendarPanel {...parts} />
    </>
  )
}
