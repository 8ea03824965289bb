import { useEffect } from 'preact/hooks'
import type { JoinedDevice } from '../../shared-core/live/devices.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { DEVICE_HASH } from '../live/device-page.ts'
import type { SavedText } from '../live/saved-text.ts'
import { shownName } from '../live/unnamed.ts'
import { CHOOSER_WORDS } from '../words/chooser.ts'
import { DOOR_WORDS } from '../words/door.ts'
import { CodeForm } from './code-form.tsx'
import { JoinedDeviceLine } from './joined-device.tsx'
import { forgetIds, savedName, unsentTaps } from './kept-here.ts'
import { ScreenList } from './screen-list.tsx'
import type { Joined } from './use-joining.ts'
import { useJoining } from './use-joining.ts'

interface MiddleProps {
  readonly saved: SavedText
  readonly language: Language
}

/** What this device may do here: choose a screen, join with a code, or go where it belongs. */
export function Middle({ saved, language }: MiddleProps) {
  const joining = useJoining(savedName(saved), () => forgetIds(saved))
  const { seen, isJoining, onLeave } = joining
  const door = DOOR_WORDS[language]
  if (seen.kind !== 'known') {
    const text = isJoining ? door.join.joining : seen.kind === 'asking' ? door.asking : door.noContact
    return <Told text={text} />
  }
  const { standing } = seen
  switch (standing.kind) {
    case 'open':
      return <Choice language={language} />
    case 'joined':
      return <Known device={standing.device} {...{ saved, language, isJoining, onLeave }} />
    default:
      return <Newcomer joining={joining} language={language} why={standing.kind === 'unknown' ? standing.why : null} />
  }
}

function Told({ text }: { readonly text: string }) {
  return (
    <div role="status">
      <h1>{text}</h1>
    </div>
  )
}

function Choice({ language }: { readonly language: Language }) {
  const say = CHOOSER_WORDS[language]
  return (
    <>
      <h1>{say.title}</h1>
      <p>{say.lead}</p>
      <ScreenList screens={say.screens} />
    </>
  )
}

interface NewcomerProps {
  readonly joining: Joined
  readonly language: Language
  /** Null: nobody has joined yet, and whoever is first becomes the desk. */
  readonly why: keyof (typeof DOOR_WORDS)['en']['join']['why'] | null
}

function Newcomer({ joining, language, why }: NewcomerProps) {
  const { join: say } = DOOR_WORDS[language]
  const { claimTitle, claimLead, claimHow, title, lead } = say
  return why === null ? (
    <CodeForm
      {...joining}
      title={claimTitle}
      lead={claimLead}
      more={claimHow}
      say={{ ...say, wrong: say.claimWrong }}
    />
  ) : (
    <CodeForm {...joining} title={title} lead={lead} more={say.why[why]} say={say} />
  )
}

interface KnownProps extends MiddleProps, Pick<Joined, 'isJoining' | 'onLeave'> {
  readonly device: JoinedDevice
}

/** A desk may open any screen; the others go straight to their own. */
function Known({ device, saved, language, isJoining, onLeave }: KnownProps) {
  const { joined: say } = DOOR_WORDS[language]
  const { screens } = CHOOSER_WORDS[language]
  const { role } = device
  const isDesk = role === 'desk'
  const isStaying = isDesk || window.location.hash === DEVICE_HASH
  useEffect(() => {
    if (!isStaying && !isJoining) window.location.replace(`/${role}`)
  }, [isStaying, isJoining, role])
  if (!isStaying) return <Told text={say.going} />
  return (
    <>
      {isDesk ? (
        <Choice language={language} />
      ) : (
        <>
          <h1>{screens[role].name}</h1>
          <p>
            <a class="chooser-key" href={`/${role}`}>
              {say.open}
            </a>
          </p>
        </>
      )}
      <JoinedDeviceLine
        name={shownName(device, screens[role].name)}
        say={say}
        unsent={unsentTaps(saved)}
        onLeave={onLeave}
      />
    </>
  )
}
