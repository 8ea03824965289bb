import { allergensOfFormula } from '../../../shared-core/dough/allergens.ts'
import type { MixTemp } from '../../../shared-core/dough/mix.ts'
import { milliCelsiusOf } from '../../../shared-core/shop/temperature.ts'
import type { SheetProps } from './mix-sheet.tsx'

/** In the order in which they are taken. */
const TEMPS: readonly MixTemp[] = ['room', 'flour', 'preferment', 'tap', 'water', 'dough']
const MINUTE_MS = 60_000

/** Steps with their times, what it gives, temperatures to write down, allergens. */
export function SheetFoot({ shop, words, say, room, sheet }: SheetProps) {
  const { mix } = sheet
  const { formula } = mix
  const hasPreferment = mix.lines.some(({ preparationId }) => {
    return preparationId !== null && shop.preparations.get(preparationId)?.kind === 'preferment'
  })
  const temps = TEMPS.filter((temp) => temp !== 'preferment' || hasPreferment)
  const contains = allergensOfFormula(shop, formula).map(({ allergen }) => words.desk.today.kettle.allergen[allergen])
  return (
    <div class="dough-sheet-foot">
      <section>
        <h3>{say.sheets.steps}</h3>
        <ol>
          {stepsOf(formula, say, words.times.span).map((step) => (
            <li key={step}>
              <span class="dough-box" /> {step}
            </li>
          ))}
        </ol>
      </section>
      <section>
        <h3>{say.sheets.gives}</h3>
        <ul>
          {mix.gives.map(({ doughId, pieces, pieceMilligrams }) => {
            const dough = shop.doughs.get(doughId)
            const trays = words.line.trays(Math.ceil(pieces / (dough?.trayPieces ?? pieces)))
            const weight = pieceMilligrams === 0 ? null : room.weight(pieceMilligrams)
            return <li key={doughId}>{say.sheets.givesLine(pieces, words.names.dough(doughId), weight, trays)}</li>
          })}
        </ul>
        {contains.length > 0 && <p>{say.sheets.contains(contains)}</p>}
        <p class="desk-small">{say.sheets.containsHint}</p>
      </section>
      <section>
        <h3>{say.sheets.wished(room.degrees(milliCelsiusOf(formula.doughAt)))}</h3>
        <dl>
          {temps.map((temp) => {
            const read = mix.temps[temp]
            return (
              <div key={temp}>
                <dt>{say.sheets.temps[temp]}</dt>
                <dd>{read === null ? '______' : room.degrees(milliCelsiusOf(read))}</dd>
              </div>
            )
          })}
        </dl>
      </section>
      <p>{say.sheets.signed} ____________________</p>
    </div>
  )
}

type Formula = SheetProps['sheet']['mix']['formula']

function stepsOf({ mixMs, restMs, bulk }: Formula, say: SheetProps['say'], span: (ms: number) => string): string[] {
  const minutes = (ms: number) => Math.round((ms / MINUTE_MS) * 10) / 10
  const { sheets } = say
  return [
    sheets.mix(minutes(mixMs)),
    ...(restMs > 0 ? [sheets.rest(minutes(restMs))] : []),
    ...(bulk === null ? [] : [sheets.bulk(span(bulk.window.targetMs))]),
    ...(bulk?.foldsMs.map((ms, index) => sheets.fold(index + 1, span(ms))) ?? []),
    ...(bulk?.chill == null ? [] : [sheets.bulkChill(span(bulk.chill.targetMs))]),
  ]
}
