import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { SheetParts } from '../sheet.tsx'
import { Sheet } from '../sheet.tsx'

/**
 * Sheets that are opened a few times a day at most. They are fetched after the line stands, so that its first paint does
 * not wait for them, and before anybody asks, so that they are there without the server.
 */
const fetchChangeover = () => import('./changeover-sheet.tsx').then((part) => part.ChangeoverSheet)
const fetchDoughRoom = () => import('../dough-room/dough-room.tsx').then((part) => part.DoughRoom)
const fetchHeat = () => import('./heat-sheet.tsx').then((part) => part.HeatSheet)
const fetchKettle = () => import('./kettle-sheet.tsx').then((part) => part.KettleSheet)
const fetchKitchen = () => import('../kitchen/kitchen-room.tsx').then((part) => part.KitchenRoom)
const fetchNotes = () => import('./notes-page.tsx').then((part) => part.NotesPage)
const fetchOpening = () => import('./steps-sheet.tsx').then((part) => part.OpeningSheet)
const fetchChoices = () => import('./step-choices.tsx')
const fetchSettings = () => import('../settings/settings-sheet.tsx').then((part) => part.SettingsSheet)

/** One for each sheet; `later` fills it. */
const FETCHES: (() => Promise<void>)[] = []

export const ChangeoverLater = later(fetchChangeover)
export const DoughRoomLater = later(fetchDoughRoom)
export const HeatLater = later(fetchHeat)
export const KettleLater = later(fetchKettle)
export const KitchenLater = later(fetchKitchen)
export const NotesLater = later(fetchNotes)
export const OpeningLater = later(fetchOpening)
export const FloatLater = later(() => fetchChoices().then((part) => part.FloatSheet))
export const GiveLater = later(() => fetchChoices().then((part) => part.GiveSheet))
export const PersonLater = later(() => fetchChoices().then((part) => part.PersonSheet))
export const SettingsLater = later(fetchSettings)

/** What fails here is fetched when it is opened. */
export async function fetchLaterSheets(): Promise<void> {
  await Promise.allSettled(FETCHES.map((fetchSheet) => fetchSheet()))
}

/** A sheet that is there already stands at once, without an empty one before it. */
function later<Props extends SheetParts>(fetchSheet: () => Promise<ComponentType<Props>>): ComponentType<Props> {
  let Known: ComponentType<Props> | null = null
  const fetchKnown = async () => {
    Known = await fetchSheet()
  }
  FETCHES.push(fetchKnown)
  return function LaterSheet(props: Props) {
    const [isThere, setThere] = useState(Known !== null)
    const [hasFailed, setFailed] = useState(false)
    useEffect(() => {
      if (isThere) return
      fetchKnown().then(
        () => setThere(true),
        () => setFailed(true),
      )
    }, [isThere])
    if (isThere && Known !== null) return <Known {...props} />
    const { more } = props.words.bench
    return (
      <Sheet {...props} title={more.title} detail={hasFailed ? more.notFetched : undefined}>
        {null}
      </Sheet>
    )
  }
}
