import { OrderRing } from '../parts/order-ring.tsx'
import type { MadeRing, MadeRod } from './made-rod.ts'
import type { OvenBox, RodsBox } from './made-view.ts'
import { OvenPane } from './oven-pane.tsx'
import { paintedByView } from './same-view.tsx'

/** What is made to order, a rod for each kind; now is a line across them. */
export const RodsOfMade = paintedByView(({ view }: { readonly view: Omit<RodsBox, 'box'> }) => {
  const { heading, note, rods, nowPx, rest } = view
  const heightPx = rods.reduce((sum, rod) => sum + rod.heightPx, 0)
  return (
    <>
      <h2 class="wall-heading">
        {heading}
        {note !== '' && <span class="wall-heading-note wall-made-ready">{note}</span>}
      </h2>
      <div class="wall-made">
        <div class="wall-made-now" style={{ left: `${nowPx}px`, height: `${heightPx}px` }} />
        {rods.map((rod) => (
          <Rod key={rod.key} rod={rod} view={view} />
        ))}
      </div>
      {rest !== '' && <div class="wall-quiet">{rest}</div>}
    </>
  )
})

function Rod({ rod, view }: { readonly rod: MadeRod; readonly view: Omit<RodsBox, 'box'> }) {
  const { ringPx, fromPx, spanPx } = view
  const { form, heightPx } = rod
  const lines = Math.max(1, rod.allergy.length + (rod.isNameBelow ? 1 : 0))
  const topPx = form === 'above' ? lines * view.namePx : 0
  const ringsPx = heightPx - topPx
  const namePx = form === 'above' ? view.namePx : heightPx
  return (
    <section class="wall-made-rod" style={{ height: `${heightPx}px` }} aria-label={`${rod.total} ${rod.name}`}>
      {rod.allergy.slice(0, rod.isNameBelow ? undefined : -1).map((line) => (
        <div key={line} class="wall-made-name" style={{ height: `${namePx}px`, lineHeight: `${namePx}px` }}>
          <strong class="wall-allergy">{line}</strong>
        </div>
      ))}
      <div class={`wall-made-name wall-made-${form}`} style={{ height: `${namePx}px`, lineHeight: `${namePx}px` }}>
        {!rod.isNameBelow && rod.allergy.length > 0 && (
          <strong class="wall-allergy">{rod.allergy[rod.allergy.length - 1]}</strong>
        )}
        <strong>{rod.name}</strong>
      </div>
      <div
        class="wall-made-line"
        style={{ top: `${topPx + ringsPx / 2}px`, left: `${fromPx}px`, width: `${spanPx}px` }}
      />
      {rod.rings.map((ring) => (
        <RingOfMade key={ring.key} ring={ring} topPx={topPx} heightPx={ringsPx} ringPx={ringPx} />
      ))}
      {rod.more !== '' && (
        <div
          class="wall-made-more"
          style={{ top: `${topPx}px`, left: `${fromPx + spanPx}px`, lineHeight: `${ringsPx}px` }}
        >
          {rod.more}
        </div>
      )}
      <div
        class="wall-title wall-made-total"
        style={{ top: `${topPx}px`, height: `${ringsPx}px`, lineHeight: `${ringsPx}px` }}
      >
        {rod.total}
      </div>
    </section>
  )
}

interface RingOfMadeProps {
  readonly ring: MadeRing
  readonly topPx: number
  readonly heightPx: number
  readonly ringPx: number
}

function RingOfMade({ ring: { mark, leftPx, tone, isAllergy, ring }, topPx, heightPx, ringPx }: RingOfMadeProps) {
  return (
    <div
      class={`wall-made-ring wall-made-${tone}`}
      data-block={tone === 'plain' ? undefined : tone}
      style={{ left: `${leftPx}px`, top: `${topPx}px`, height: `${heightPx}px` }}
    >
      <OrderRing {...ring} mark="" size={ringPx} isAllergy={isAllergy} />
      <strong>{mark}</strong>
    </div>
  )
}

/** The oven's places: a ring for what went in together, with what is to be done with it next. */
export const OvenOfMade = paintedByView(({ view }: { readonly view: Omit<OvenBox, 'box'> }) => {
  const { heading, note, set, nothing } = view
  return (
    <>
      <h2 class="wall-heading">
        {heading}
        {note !== '' && <span class="wall-heading-note">{note}</span>}
      </h2>
      {nothing === '' ? <OvenPane view={set} /> : <div class="wall-nothing wall-quiet">{nothing}</div>}
    </>
  )
})
