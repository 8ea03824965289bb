import type { ComponentChildren } from 'preact'
import type { NoteId } from '../../shared-core/ids.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { TextSizes } from '../parts/legibility.ts'
import { Ring } from '../parts/ring.tsx'
import { Ruler } from '../parts/ruler.tsx'
import { offsetMsAt } from '../parts/ruler-of-day.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import { AfternoonPane } from './afternoon-pane.tsx'
import { BarPane } from './bar-pane.tsx'
import type { StepsBeside } from './body-view.ts'
import { DoughPane } from './dough-pane.tsx'
import type { DoughView } from './dough-view.ts'
import { DipsPane, KettlePane } from './kettle-pane.tsx'
import type { Box } from './layout.ts'
import type { LineView } from './line-view.ts'
import { OvenOfMade, RodsOfMade } from './made-pane.tsx'
import type { MadeView } from './made-view.ts'
import { NotesPane } from './notes-pane.tsx'
import { OvenPane } from './oven-pane.tsx'
import { RodsPane } from './rods-pane.tsx'
import { paintedByView } from './same-view.tsx'
import { StandingPane } from './standing-pane.tsx'
import { StepsPane } from './steps-pane.tsx'
import type { WallView } from './view.ts'

export interface WallBoardProps {
  readonly view: WallView
  readonly localTime: (atMs: EpochMs) => string
  readonly shopClock: ShopClock | null
  readonly rulerName: string
  readonly settingsName: string
  /** The clock is touched: the settings of this screen. */
  readonly onClock: () => void
  readonly onClearNote: (noteId: NoteId) => void
}

/** The whole wall, painted from its view. */
export function WallBoard({
  view,
  localTime,
  shopClock,
  rulerName,
  settingsName,
  onClock,
  onClearNote,
}: WallBoardProps) {
  const { layout, clock, note, notes, status, ruler, rods, bar, sizes } = view
  return (
    <main class="wall" style={sizeStyle(sizes)}>
      <Placed box={layout.clock}>
        <button type="button" class="wall-clock" onClick={onClock} aria-label={`${clock} ${settingsName}`}>
          <span class="wall-time">{clock}</span>
          {note !== '' && <span class="wall-note">{note}</span>}
        </button>
      </Placed>
      {layout.ruler !== null && ruler !== null && shopClock !== null && (
        <Placed box={layout.ruler}>
          <Day
            day={ruler}
            clock={shopClock}
            localTime={localTime}
            fontPx={sizes.minPx}
            lines={layout.rulerLines}
            widthPx={layout.ruler.width}
            name={rulerName}
          />
        </Placed>
      )}
      {layout.status !== null && status !== null && (
        <Placed box={layout.status}>
          <div class={status.isTrouble ? 'wall-status wall-status-trouble' : 'wall-status'} role="alert">
            {status.text}
          </div>
        </Placed>
      )}
      <Body view={view} />
      {notes !== null && (
        <Placed box={notes.box}>
          <NotesPane view={notes} onClear={onClearNote} />
        </Placed>
      )}
      {layout.rods !== null && rods !== null && (
        <Placed box={layout.rods}>
          <RodsPane view={rods} />
        </Placed>
      )}
      <Placed box={layout.bar}>
        <BarPane view={withoutShow(bar)} />
      </Placed>
    </main>
  )
}

/** The view's own text sizes: they may be larger than the distance asks for. */
function sizeStyle({ headlinePx, countPx, actPx, labelPx, minPx }: TextSizes) {
  return {
    '--size-headline': `${headlinePx}px`,
    '--size-count': `${countPx}px`,
    '--size-act': `${actPx}px`,
    '--size-label': `${labelPx}px`,
    '--size-min': `${minPx}px`,
  }
}

function Body({ view: { body, layout } }: { readonly view: WallView }) {
  if (body.kind === 'line')
    return <Line line={body.line} steps={body.steps} kettle={layout.kettle} oven={layout.oven} />
  if (body.kind === 'dough') return <Dough view={body.dough} />
  if (body.kind === 'kitchen') return <Made view={body.made} />
  return (
    <Placed box={body.box}>
      {body.kind === 'steps' ? (
        <StepsPane view={body.steps} />
      ) : body.kind === 'afternoon' ? (
        <AfternoonPane view={body.afternoon} />
      ) : body.kind === 'standing' ? (
        <StandingPane view={body.standing} />
      ) : (
        <div class="wall-empty">
          <Ring fraction={0} state="idle" size={body.ringPx} />
          <div>
            {body.title.map((text) => (
              <div key={text} class="wall-empty-title">
                {text}
              </div>
            ))}
            {body.text.map((text) => (
              <div key={text}>{text}</div>
            ))}
          </div>
        </div>
      )}
    </Placed>
  )
}

function Dough({ view: { mixes, trays } }: { readonly view: DoughView }) {
  return (
    <>
      <Placed box={mixes.box}>
        <DoughPane column={mixes} />
      </Placed>
      <Placed box={trays.box}>
        <DoughPane column={trays} />
      </Placed>
    </>
  )
}

function Made({ view: { rods, oven } }: { readonly view: MadeView }) {
  return (
    <>
      <Placed box={rods.box}>
        <RodsOfMade view={withoutBox(rods)} />
      </Placed>
      {oven !== null && (
        <Placed box={oven.box}>
          <OvenOfMade view={withoutBox(oven)} />
        </Placed>
      )}
    </>
  )
}

function withoutBox<View extends { readonly box: Box }>({ box, ...rest }: View): Omit<View, 'box'> {
  return rest
}

interface LineProps {
  readonly line: LineView
  readonly steps: StepsBeside | null
  readonly kettle: Box
  readonly oven: Box
}

function Line({ line, steps, kettle, oven }: LineProps) {
  return (
    <>
      <Placed box={kettle}>
        <h2 class="wall-heading">
          {line.kettleHeading}
          {line.kettleNote !== '' && (
            <span class={line.isCareNote ? 'wall-heading-note wall-care' : 'wall-heading-note'}>{line.kettleNote}</span>
          )}
        </h2>
        {steps?.place === 'kettle' ? (
          <StepsPane view={steps.view} />
        ) : line.kettle.form === 'ring' ? (
          <KettlePane view={line.kettle.view} />
        ) : (
          <DipsPane view={line.kettle.view} />
        )}
      </Placed>
      <Placed box={oven}>
        <h2 class="wall-heading">
          {line.ovenHeading}
          {line.ovenNotes.map(({ text, isTrouble }) => (
            <span key={text} class={isTrouble ? 'wall-heading-note wall-trouble' : 'wall-heading-note'}>
              {text}
            </span>
          ))}
        </h2>
        {steps?.place === 'oven' ? <StepsPane view={steps.view} /> : <OvenPane view={withoutShow(line.oven)} />}
      </Placed>
    </>
  )
}

interface DayProps {
  readonly day: RulerDay
  readonly clock: ShopClock
  readonly localTime: (atMs: EpochMs) => string
  readonly fontPx: number
  readonly lines: 1 | 2
  readonly widthPx: number
  readonly name: string
}

const Day = paintedByView(({ day, clock, localTime, ...size }: DayProps) => (
  <Ruler
    {...day}
    {...size}
    clockText={(ms) => localTime(epochMs(ms))}
    offsetAtMs={(ms) => offsetMsAt(clock, ms)}
    moreText={(count) => `+${count}`}
  />
))

function Placed({ box, children }: { readonly box: Box; readonly children: ComponentChildren }) {
  const style = { left: `${box.left}px`, top: `${box.top}px`, width: `${box.width}px`, height: `${box.height}px` }
  return (
    <div class="wall-place" style={style}>
      {children}
    </div>
  )
}

/** What is on show is for the pedals; a change of it alone paints nothing. */
function withoutShow<View extends { readonly onShow: unknown }>({ onShow, ...rest }: View): Omit<View, 'onShow'> {
  return rest
}
