import { Ring } from '../parts/ring.tsx'
import type { BelowLine } from './below-lines.ts'
import type { DipsView } from './dips-view.ts'
import type { KettleView, TitleView } from './kettle-view.ts'
import { paintedByView } from './same-view.tsx'

export interface KettlePaneProps {
  readonly view: KettleView
}

/** The kettle: a ring that counts, what is in it, and what its pieces become. */
export const KettlePane = paintedByView(({ view }: KettlePaneProps) => {
  const { ring, state, lead, calls, title, when, becomes, below } = view
  const style = { '--wall-round': `${Math.round(ring.px / 2)}px` }
  return (
    <>
      <div class={`wall-kettle wall-kettle-${state}`} style={style} data-block={state === 'plain' ? undefined : state}>
        <Ring fraction={ring.fraction} state={ring.state} label={ring.label ?? undefined} size={ring.px} />
        <div class="wall-beside">
          {lead !== '' && <div class="wall-lead">{lead}</div>}
          {calls.map(({ strong, rest }) => (
            <div key={strong === '' ? 'time' : 'act'} class="wall-calls">
              {strong !== '' && <strong>{strong}</strong>}
              {strong !== '' && rest !== '' && ' '}
              {rest}
            </div>
          ))}
          <Title {...title} />
          {when !== '' && <div class="wall-when">{when}</div>}
          <div class="wall-becomes">
            {becomes.map((line) => (
              <div key={line}>{line}</div>
            ))}
          </div>
        </div>
      </div>
      <div class="wall-below">
        {below.map((line) => (
          <Below key={`${line.lead} ${line.rest}`} {...line} />
        ))}
      </div>
    </>
  )
})

/** "Plain 36", or a long name above its count. */
export function Title({ nameLines, count, isOneLine }: TitleView) {
  if (isOneLine) {
    return (
      <div class="wall-title">
        {nameLines[0]} {count}
      </div>
    )
  }
  return (
    <>
      {nameLines.map((line) => (
        <div key={line} class="wall-title-name">
          {line}
        </div>
      ))}
      {count !== '' && <div class="wall-title">{count}</div>}
    </>
  )
}

function Below({ lead, strong, rest, isTrouble }: BelowLine) {
  return (
    <div class={isTrouble ? 'wall-trouble' : undefined}>
      {lead !== '' && <span class={isTrouble ? undefined : 'wall-quiet'}>{`${lead} `}</span>}
      {strong !== '' && <strong>{`${strong} `}</strong>}
      {rest}
    </div>
  )
}

export interface DipsPaneProps {
  readonly view: DipsView
}

/** The dips of the plan, for a kettle that nobody taps. */
export const DipsPane = paintedByView(({ view }: DipsPaneProps) => (
  <div class="wall-dips">
    {view.none !== '' && <div class="wall-quiet">{view.none}</div>}
    {view.why !== '' && <div class="wall-quiet wall-dips-why">{view.why}</div>}
    {view.dips.map(({ key, title, becomes }) => (
      <div key={key} class="wall-dip">
        <Title {...title} />
        <div class="wall-becomes">{becomes}</div>
      </div>
    ))}
  </div>
))
