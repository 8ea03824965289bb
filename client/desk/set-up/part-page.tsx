import type { ComponentType } from 'preact'
import type { SetUpPart } from '../../words/set-up.ts'
import { BakingPart } from './parts/baking-part.tsx'
import { CounterPart } from './parts/counter-part.tsx'
import { DoughRoomPart } from './parts/dough-room-part.tsx'
import { DoughsPart } from './parts/doughs-part.tsx'
import { FilePart } from './parts/file-part.tsx'
import { FormulasPart } from './parts/formulas-part.tsx'
import { HoursPart } from './parts/hours-part.tsx'
import { IngredientsPart } from './parts/ingredients-part.tsx'
import { BoardsPart, KettlePart } from './parts/kettle-part.tsx'
import { KitchenPart } from './parts/kitchen-part.tsx'
import { MenuPart } from './parts/menu-part.tsx'
import { OrdersPart } from './parts/orders-part.tsx'
import { OvenPart } from './parts/oven-part.tsx'
import { PeoplePart } from './parts/people-part.tsx'
import { PreparationsPart } from './parts/preparations-part.tsx'
import { RoomPart } from './parts/room-part.tsx'
import { RunsPart } from './parts/runs-part.tsx'
import { SavePart } from './parts/save-part.tsx'
import { ScreensPart } from './parts/screens-part.tsx'
import { ShopPart } from './parts/shop-part.tsx'
import { SpecialDaysPart } from './parts/special-days-part.tsx'
import { StationsPart } from './parts/stations-part.tsx'
import { StepsPart } from './parts/steps-part.tsx'
import { ToppingsPart } from './parts/toppings-part.tsx'
import { UsualPart } from './parts/usual-part.tsx'
import { VarietiesPart } from './parts/varieties-part.tsx'
import { VersionsPart } from './parts/versions-part.tsx'
import { WindowsPart } from './parts/windows-part.tsx'
import { WorthPart } from './parts/worth-part.tsx'
import { hashOf } from './route.ts'
import type { SetUpProps } from './set-up-parts.ts'

export interface PartPageProps extends SetUpProps {
  readonly part: SetUpPart
}

/** One part of the set-up on a page of its own. */
export function PartPage({ part, ...props }: PartPageProps) {
  const { say } = props
  const Shown = PAGES[part]
  return (
    <section class="setup-sheet" tabIndex={-1} aria-label={say.parts[part]}>
      <a class="setup-up" href={hashOf({ kind: 'overview' })}>
        ← {say.overview}
      </a>
      <h2>{say.parts[part]}</h2>
      <p class="setup-hint">{say.about[part]}</p>
      <Shown key={part} {...props} />
    </section>
  )
}

const PAGES: { readonly [part in SetUpPart]: ComponentType<SetUpProps> } = {
  shop: ShopPart,
  hours: HoursPart,
  people: PeoplePart,
  counter: CounterPart,
  oven: OvenPart,
  kettle: KettlePart,
  boards: BoardsPart,
  room: RoomPart,
  formulas: FormulasPart,
  preparations: PreparationsPart,
  ingredients: IngredientsPart,
  doughRoom: DoughRoomPart,
  doughs: DoughsPart,
  toppings: ToppingsPart,
  varieties: VarietiesPart,
  baking: BakingPart,
  worth: WorthPart,
  usual: UsualPart,
  specialDays: SpecialDaysPart,
  orders: OrdersPart,
  runs: RunsPart,
  kitchen: KitchenPart,
  menu: MenuPart,
  windows: WindowsPart,
  steps: StepsPart,
  stations: StationsPart,
  screens: ScreensPart,
  save: SavePart,
  versions: VersionsPart,
  file: FilePart,
}
