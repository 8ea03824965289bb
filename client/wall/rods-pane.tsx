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
  const { rods, rodPx, gapPx, others, text, lines } = view
  return (
    <div class={rods.length > 0 ? 'wall-rods wall-rods-drawn' : 'wall-rods'}>
      {text !== '' && <div class="wall-rods-text">{text}</div>}
      {rods.map((rod) => (
        <div
          key={rod.key}
          class={rod.isTrouble ? 'wall-rod wall-rod-short' : 'wall-rod'}
          style={{ marginRight: `${gapPx}px` }}
        >
          <Rod
            pieces={rod.pieces}
            onTheWay={rod.onTheWay}
            isPlanned={rod.isPlanned}
            kept={rod.kept}
            maxRings={RINGS}
            height={rodPx.height}
            width={rodPx.width}
            name={rod.spoken}
          />
          <RodWords rod={rod} lines={lines} />
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

/** Lines that say nothing keep their height, so that the counts of all rods stand in one line. */
function RodWords({ rod, lines }: { readonly rod: RodView; readonly lines: number }) {
  const { nameLines, detail, more, onTheWay, isTrouble, pieces } = rod
  const moreKind = onTheWay > 0 ? 'wall-coming' : 'wall-trouble'
  const said = [
    { kind: 'wall-quiet', text: detail },
    { kind: moreKind, text: more },
  ].filter(({ text }) => text !== '')
  const blank = Math.max(0, lines - nameLines.length - said.length)
  return (
    <div class={isTrouble ? 'wall-rod-words wall-rod-trouble' : 'wall-rod-words'}>
      {nameLines.map((line) => (
        <div key={line} class="wall-rod-name">
          {line}
        </div>
      ))}
      <div class="wall-rod-count">{pieces}</div>
      {said.map(({ kind, text }) => (
        <div key={kind} class={kind}>
          {text}
        </div>
      ))}
      <div class="wall-rod-blank" style={{ height: `${blank * 1.2}em` }} />
    </div>
  )
}
