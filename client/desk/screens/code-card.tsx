import type { ComponentChildren } from 'preact'
import type { JoinCode } from '../../../shared-core/live/devices.ts'
import { shownName } from '../../live/unnamed.ts'
import { Ring } from '../../parts/ring.tsx'
import type { DeskWords } from '../../words/desk.ts'
import type { LetInWords } from '../../words/desk-door.ts'
import type { LetInView } from './let-in-view.ts'
import { joinLink, spaced } from './let-in-view.ts'
import { QrCode } from './qr-code.tsx'

const CODE_PX = 220

interface CodeCardProps {
  readonly code: JoinCode
  readonly view: LetInView
  readonly base: string
  readonly words: DeskWords
  readonly say: LetInWords
  readonly onTakeBack: () => void
  readonly onAnother: () => void
  /** Where the device finds the shop. */
  readonly children: ComponentChildren
}

/** Six digits, large enough to be read out across the shop, and how long they hold. */
export function CodeCard({ code, view, base, words, say, onTakeBack, onAnother, children }: CodeCardProps) {
  if (view.kind !== 'holds') {
    return (
      <div class="desk-line" role="status">
        <p>
          <strong>
            {view.kind === 'over'
              ? say.over
              : say.joined(shownName(view.device, words.desk.screens.role[view.device.role]))}
          </strong>
        </p>
        <button type="button" class="desk-strong" onClick={onAnother}>
          {say.another}
        </button>
      </div>
    )
  }
  const link = joinLink(base, code.code)
  const left = words.times.left(view.leftMs)
  return (
    <div class="desk-columns">
      <div class="desk-grow">
        <h3>{say.onDevice}</h3>
        <p>{say.how(base)}</p>
        <div class="door-code">
          <strong class="door-digits door-large" role="img" aria-label={say.digits(code.code)}>
            {spaced(code.code)}
          </strong>
          <Ring fraction={view.fraction} state="running" label={left} size={104} />
        </div>
        <p>{[words.desk.screens.role[code.role], code.name].filter((text) => text !== '').join(' · ')}</p>
        {children}
        <p class="desk-line">
          <button type="button" onClick={onTakeBack}>
            {say.takeBack}
          </button>
        </p>
      </div>
      <figure class="desk-code">
        <QrCode text={link} name={say.how(link)} sizePx={CODE_PX} />
      </figure>
    </div>
  )
}
