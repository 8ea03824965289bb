import '../../../client/theme/theme.css'
import type { ComponentChildren } from 'preact'
import { render } from 'preact'
import { Key } from '../../../client/parts/key.tsx'
import type { Panel } from '../../../client/parts/legibility.ts'
import { Ring } from '../../../client/parts/ring.tsx'
import type { RulerProps } from '../../../client/parts/ruler.tsx'
import { Ruler } from '../../../client/parts/ruler.tsx'
import { ScreenSize } from '../../../client/parts/screen-size.tsx'
import { figureOf } from '../../../client/parts/sound-figures.ts'
import { sing } from '../../../client/parts/sound-player.ts'
import { Stepper } from '../../../client/parts/stepper.tsx'
import type { Weight } from '../../../client/parts/text-width.ts'
import { textWidthPx } from '../../../client/parts/text-width.ts'

/** What a test in the browser can ask of the page. */
export interface PartsPage {
  readonly keys: (panel: Panel) => void
  readonly pressed: string[]
  readonly rings: (labels: readonly string[]) => void
  readonly ring: (fraction: number) => void
  readonly ruler: (props: Omit<RulerProps, 'clockText' | 'offsetAtMs' | 'moreText'>) => void
  readonly widths: (texts: readonly string[], weight: Weight) => { readonly told: number; readonly real: number }[]
  readonly lift: (stopAtS: number | null) => Promise<number[]>
}

declare global {
  interface Window {
    parts: PartsPage
  }
}

const WALL: Panel = { diagonalInch: 43, widthPx: 1920, heightPx: 1080 }
const pressed: string[] = []

function place(): HTMLElement {
  const found = document.getElementById('page')
  if (found === null) throw new Error('the page has no place for parts')
  return found
}

function show(content: ComponentChildren, { panel = WALL, distanceM = 3 } = {}) {
  render(
    <ScreenSize panel={panel} distanceM={distanceM} theme="light">
      {content}
    </ScreenSize>,
    place(),
  )
}

window.parts = {
  pressed,
  keys: (panel) => {
    // A new glass, which remembers no touch of the test before.
    render(null, place())
    show(
      <div class="key-group">
        <Key label="1" onPress={() => pressed.push('one')} />
        <Key label="Load 2" detail="Plain 48" onPress={() => pressed.push('two')} />
        <Key label="Load 3" refusal="no rye is ready" onPress={() => pressed.push('three')} />
        <Stepper
          name="Sesame"
          value={12}
          min={0}
          max={12}
          steps={[6]}
          lessName={(step) => `${step} fewer`}
          moreName={(step) => `${step} more`}
          limitWords={{ least: 'least', most: 'most' }}
          onChange={(value) => pressed.push(`to ${value}`)}
        />
      </div>,
      { panel, distanceM: 0.5 },
    )
  },
  rings: (labels) =>
    show(labels.map((label) => <Ring key={label} fraction={0.5} state="running" label={label} size={200} />)),
  ring: (fraction) => show(<Ring fraction={fraction} state="running" size={200} />),
  ruler: (props) =>
    show(
      <Ruler
        {...props}
        clockText={(ms) => `${Math.floor(ms / 3_600_000) % 24}:00`}
        offsetAtMs={() => 0}
        moreText={(count) => `+${count}`}
      />,
    ),
  widths: (texts, weight) => {
    const pen = document.createElement('canvas').getContext('2d')
    if (pen === null) throw new Error('no canvas')
    pen.font = `${weight === 'strong' ? 700 : 400} 100px 'Atkinson Hyperlegible Next Variable'`
    return texts.map((text) => ({ told: textWidthPx(text, 100, weight), real: pen.measureText(text).width }))
  },
  lift: async (stopAtS) => {
    const context = new OfflineAudioContext(1, 44_100 * 2, 44_100)
    const voice = sing(context, figureOf('lift', false), 1)
    if (stopAtS !== null) {
      void context.suspend(stopAtS).then(() => {
        voice.stop()
        return context.resume()
      })
    }
    return [...(await context.startRendering()).getChannelData(0)]
  },
}
