import type { LearntTime } from '../../../shared-core/line/learnt-times.ts'
import { takenOver } from '../../../shared-core/line/take-over.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { LearntTimesWords } from '../../words/desk-learnt.ts'
import { Cell } from '../panel.tsx'
import { Sideways } from '../sideways.tsx'

interface TimesTableProps {
  readonly told: LearntTimesWords
  readonly words: DeskWords
  readonly shop: Shop
  readonly times: readonly LearntTime[]
  readonly onTakeOver: (time: LearntTime) => void
}

/** Each time with what the set-up has, and one touch to take it over where it is another. */
export function TimesTable({ told, words, shop, times, onTakeOver }: TimesTableProps) {
  const say = told.times
  const { columns } = say
  return (
    <Sideways name={say.title}>
      <table class="desk-cards">
        <thead>
          <tr>
            <th>{columns.what}</th>
            <th class="desk-number">{columns.median}</th>
            <th class="desk-number">{columns.most}</th>
            <th class="desk-number">{columns.setUp}</th>
            <th class="desk-number">{columns.taps}</th>
            <th />
          </tr>
        </thead>
        <tbody>
          {times.map((time) => {
            const name = time.varietyId === null ? null : (shop.varieties.get(time.varietyId)?.name ?? time.varietyId)
            return (
              <tr key={`${time.what} ${time.varietyId ?? ''}`}>
                <th>{name === null ? say.what[time.what] : `${say.what[time.what]}, ${name}`}</th>
                <Cell label={columns.median} value={spanText(time.medianMs)} strong />
                <Cell label={columns.most} value={`${spanText(time.quarterMs)}–${spanText(time.threeQuartersMs)}`} />
                <Cell label={columns.setUp} value={time.setUpMs === null ? '–' : spanText(time.setUpMs)} />
                <Cell label={columns.taps} value={say.taps(time.taps, time.days)} />
                <td>
                  {time.isOther && takenOver(shop, time) !== null ? (
                    <button
                      type="button"
                      onClick={() => onTakeOver(time)}
                      aria-label={`${say.takeOver}: ${say.what[time.what]}${name === null ? '' : `, ${name}`}`}
                    >
                      {say.takeOver}
                    </button>
                  ) : (
                    <span class="desk-quiet">{say.asSetUp}</span>
                  )}
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </Sideways>
  )
  function spanText(ms: number): string {
    const { s, min } = words.times.units
    return ms < 120_000 ? `${Math.round(ms / 1_000)} ${s}` : `${Math.round(ms / 6_000) / 10} ${min}`
  }
}
