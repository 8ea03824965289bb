import { useId } from 'preact/hooks'
import type { Country, NamedRegion } from '../../../../shared-core/live/holidays.ts'
import { useGot } from '../../use-got.ts'
import type { SetUpProps } from '../set-up-parts.ts'
import { changeTo } from '../set-up-parts.ts'

/** Whose public holidays count: a country, and a part of it where these differ. */
export function RegionField(props: SetUpProps) {
  const { draft, say, words } = props
  const regions = useGot<readonly Country[]>('/api/v1/holidays/regions')
  const id = useId()
  const set = changeTo(props, 'demand')
  const choose = (region: string | null) => set({ ...draft.demand, region })
  const { region } = draft.demand
  const { demand } = say
  if (regions.kind !== 'got') {
    const isWaiting = regions.kind === 'waiting' || regions.kind === 'not-yet'
    return <p class="setup-hint">{isWaiting ? demand.region.waiting : demand.region.noContact}</p>
  }
  const countries = regions.value
  const code = region?.slice(0, 2) ?? ''
  const country = countries.find((one) => one.code === code)
  const nameOf = (one: NamedRegion) => one[words.language]
  const options = (some: readonly NamedRegion[]) =>
    [...some]
      .sort((one, other) => nameOf(one).localeCompare(nameOf(other), words.language))
      .map((one) => (
        <option key={one.code} value={one.code}>
          {nameOf(one)}
        </option>
      ))
  return (
    <div class="setup-columns">
      <div class="setup-field">
        <label for={`${id}country`}>{demand.region.country}</label>
        <select
          id={`${id}country`}
          class="setup-unit-pick"
          value={code}
          onChange={(event) => choose(event.currentTarget.value === '' ? null : event.currentTarget.value)}
        >
          <option value="">{demand.region.notSaid}</option>
          {code !== '' && country === undefined && <option value={code}>{code}</option>}
          {options(countries)}
        </select>
      </div>
      {country !== undefined && country.parts.length > 0 && (
        <div class="setup-field">
          <label for={`${id}part`}>{demand.region.part}</label>
          <select
            id={`${id}part`}
            class="setup-unit-pick"
            value={region ?? code}
            onChange={(event) => choose(event.currentTarget.value)}
          >
            <option value={code}>{demand.region.wholeCountry}</option>
            {region !== null && region !== code && country.parts.every((part) => part.code !== region) && (
              <option value={region}>{region}</option>
            )}
            {options(country.parts)}
          </select>
        </div>
      )}
    </div>
  )
}
