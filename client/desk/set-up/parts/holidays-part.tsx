import { useState } from 'preact/hooks'
import type { HolidaysOf } from '../../../../shared-core/live/holidays.ts'
import type { Got } from '../../get-json.ts'
import type { Offer } from '../holidays.ts'
import { holidaysTaken, offersOf } from '../holidays.ts'
import { hasRoom, SPECIAL_DAYS } from '../lists.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { spanTold } from '../span-told.ts'

interface HolidaysPartProps {
  readonly parts: SetUpProps
  readonly holidays: Got<HolidaysOf>
  readonly today: string
}

/** The region's holidays of the coming year, to be taken with their past dates: public ones first, then others. */
export function HolidaysPart({ parts, holidays, today }: HolidaysPartProps) {
  const { draft, say, words, change } = parts
  const [isOpen, setOpen] = useState(false)
  const { region, holidays: told } = say.demand
  if (draft.demand.region === null) return <p class="setup-hint">{region.empty}</p>
  if (holidays.kind === 'unknown') return <p class="setup-hint">{told.none}</p>
  if (holidays.kind === 'no-contact') return <p class="setup-hint">{region.noContact}</p>
  if (holidays.kind !== 'got') return <p class="setup-hint">{region.waiting}</p>
  const offers = offersOf(holidays.value.holidays, draft, today)
  const isPublic = ({ holiday }: Offer) => holiday.isPublic
  const missing = offers.filter((offer) => isPublic(offer) && !offer.isThere)
  const take = (some: readonly Offer[]) => change(holidaysTaken(draft, some, words.language))
  if (offers.length === 0) return <p class="setup-hint">{told.none}</p>
  return (
    <>
      <h3>{told.title}</h3>
      <p class="setup-hint">{told.hint}</p>
      {missing.length > 1 && hasRoom(SPECIAL_DAYS, draft) && (
        <div class="setup-acts">
          <button type="button" onClick={() => take(missing)}>
            {told.addAll(missing.length)}
          </button>
        </div>
      )}
      <OfferList parts={parts} offers={offers.filter(isPublic)} onTake={take} />
      <details class="setup-fold" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{told.others}</summary>
        {isOpen && <OfferList parts={parts} offers={offers.filter((offer) => !isPublic(offer))} onTake={take} />}
      </details>
      <p class="setup-hint">{told.source}</p>
    </>
  )
}

interface OfferListProps {
  readonly parts: SetUpProps
  readonly offers: readonly Offer[]
  readonly onTake: (offers: readonly Offer[]) => void
}

function OfferList({ parts, offers, onTake }: OfferListProps) {
  const { draft, say, words } = parts
  const told = say.demand.holidays
  const isFull = !hasRoom(SPECIAL_DAYS, draft)
  return (
    <ul class="setup-offers">
      {offers.map((offer) => {
        const { holiday, next, past, isThere } = offer
        const name = holiday[words.language]
        return (
          <li key={holiday.id}>
            <span class="setup-row-name">{name}</span>
            <span class="setup-row-line">{told.line(spanTold(next, { ...parts, shop: draft }), past)}</span>
            {isThere ? (
              <span class="setup-hint">{told.have}</span>
            ) : (
              <button
                type="button"
                class="setup-inline"
                disabled={isFull}
                aria-label={`${told.add}: ${name}`}
                onClick={() => onTake([offer])}
              >
                + {told.add}
              </button>
            )}
          </li>
        )
      })}
    </ul>
  )
}
