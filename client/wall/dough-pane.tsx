import type { DoughColumn } from './dough-view.ts'
import { OvenPane } from './oven-pane.tsx'

/** Mixes, or what proofs: a heading and rows with rings, as the oven has them. */
export function DoughPane({ column }: { readonly column: DoughColumn }) {
  const { heading, note, isTrouble, set, nothing } = column
  return (
    <>
      <h2 class="wall-heading">
        {heading}
        {note !== '' && <span class={isTrouble ? 'wall-heading-note wall-trouble' : 'wall-heading-note'}>{note}</span>}
      </h2>
      {nothing === '' ? <OvenPane view={set} /> : <div class="wall-nothing wall-quiet">{nothing}</div>}
    </>
  )
}
