import type { ComponentChildren } from 'preact'
import { Rod } from '../parts/rod.tsx'
import type { ChooserWords } from '../words/chooser.ts'
import { BenchMark, DeskMark, WallMark } from './marks.tsx'

const MARK_PX = 96

/** The four screens, each drawn by what stands on it. */
export function ScreenList({ screens }: { readonly screens: ChooserWords['screens'] }) {
  return (
    <nav>
      <Screen address="/wall" {...screens.wall}>
        <WallMark size={MARK_PX} />
      </Screen>
      <Screen address="/bench" {...screens.bench}>
        <BenchMark size={MARK_PX} />
      </Screen>
      <Screen address="/counter" {...screens.counter}>
        <Rod pieces={22} onTheWay={12} maxRings={7} height={MARK_PX} width={MARK_PX * 0.62} />
      </Screen>
      <Screen address="/desk" {...screens.desk}>
        <DeskMark size={MARK_PX} />
      </Screen>
    </nav>
  )
}

interface ScreenProps {
  readonly address: string
  readonly name: string
  readonly use: string
  readonly children: ComponentChildren
}

function Screen({ address, name, use, children }: ScreenProps) {
  return (
    <a href={address}>
      <span class="chooser-mark">{children}</span>
      <span>
        <strong>{name}</strong>
        <span>{use}</span>
      </span>
    </a>
  )
}
