import { Rod } from '../parts/rod.tsx'
import type { RodsView, RodView } from './rods-view.ts'
import { paintedByView } from './same-view.tsx'

export interface RodsPaneProps {
  readonly view: RodsView
}

/** Places on a rod: five dozen, about what a screen's rod can still be counted in. */
const RINGS = 10

/** The rods that change a decision, standing on their board. */
export const RodsPane = paintedByView(({ view }: RodsPaneProps) => {
  const { rods, rodPx, gapPx, others, text } = view
  return (
    <div class={rods.length > 0 ? 'wall-rods wall-rods-drawn' : 'wall-rods'}>
      {text !== '' && <div class="wall-rods-text">{text}</div>}
      {rods.map((rod) => (
        <div key={rod.key} class="wall-rod" style={{ marginRight: `${gapPx}px` }}>
          <Rod
            pieces={rod.pieces}
            onTheWay={rod.onTheWay}
            kept={rod.kept}
            maxRings={RINGS}
            height={rodPx.height}
            width={rodPx.width}
            name={rod.spoken}
          />
          <RodWords rod={rod} />
        </div>
      ))}
      {others.length > 0 && (
        <div class="wall-others">
          {others.map((line) => (
            <div key={line}>{line}</div>
          ))}
        </div>
      )}
    </div>
  )
})

function RodWords({ rod }: { readonly rod: RodView }) {
  return (
    <div class={rod.isTrouble ? 'wall-rod-words wall-rod-trouble' : 'wall-rod-words'}>
      {rod.nameLines.map((line) => (
        <div key={line} class="wall-rod-name">
          {line}
        </div>
      ))}
      <div class="wall-rod-count">{rod.pieces}</div>
      {rod.detail !== '' && <div class="wall-quiet">{rod.detail}</div>}
      {rod.more !== '' && <div class={rod.onTheWay > 0 ? 'wall-coming' : 'wall-trouble'}>{rod.more}</div>}
    </div>
  )
}
