import type { RefusedKind } from '../../shared-core/live/devices.ts'
import type { CopiesWords, DeskDoorWords, DevicesWords, LetInWords, RefusedWords, TokensWords } from './desk-door.ts'
import type { TimeWords, Words } from './words.ts'

export function enDeskDoor({ times }: Words): DeskDoorWords {
  return {
    open: 'Anybody on this network may choose a screen, and so may read and tap everything.',
    closeIt: 'To let in only devices that this desk lets in, start the shop without --open:',
    failed: 'That did not work.',
    refusals: {
      'last-desk': 'It is the only desk: nobody could let in another device then. Let another desk join first.',
      gone: 'It is not there any more: another desk was quicker, or its time was over.',
      'too-many': 'There are too many already. Take back codes or show out devices that are not needed.',
    },
    noContact: 'No contact with the shop. Nothing was changed.',
    devices: DEVICES,
    letIn: LET_IN,
    tokens: TOKENS,
    refused: refused(),
    copies: copies(times),
  }
}

const DEVICES: DevicesWords = {
  columns: { seen: 'state', ends: 'until' },
  linked: 'linked',
  notYet: 'not seen yet',
  endless: 'no end',
  calendar: 'Calendar of orders',
  change: 'Change',
  name: 'Name',
  role: 'What it is',
  station: 'Station',
  save: 'Save',
  cancel: 'Leave it',
  showOut: 'Show it out',
  showOutAsk: (name) =>
    `Show ${name} out? It stops at once. Taps that it has not sent stay on it; to come back it needs a new code.`,
  showOutYes: 'Show it out',
  showOutNo: 'Keep it',
  movedHint: 'It goes to its new page by itself. Taps that it has not sent stay on it as what it was.',
}

const LET_IN: LetInWords = {
  title: 'Let another screen in',
  lead: 'Choose what it is and what it is called. The code holds a few minutes and lets one device in.',
  make: 'Make a code',
  onDevice: 'On the new device',
  how: (address) => `Open ${address} and type these digits, or point its camera at the code.`,
  digits: (code) => `Code ${[...code].join(' ')}`,
  takeBack: 'Take the code back',
  over: 'This code is over: it was too old, or taken back.',
  joined: (name) => `${name} has joined.`,
  another: 'Let another one in',
  others: 'Other codes that still hold',
  there: 'Here each device is let in with a code of its own. The desk makes it under',
}

const TOKENS: TokensWords = {
  title: 'Tills, sensors and scripts',
  lead: 'What is no screen comes in with a token of its own, and may do what the screen of its role may. Give each device one, so that each can be shown out by itself.',
  name: 'What it is called',
  nameHint: 'e.g. Till',
  role: 'May do what this screen may',
  days: 'Holds for',
  daysChoice: (days) => (days === null ? 'no end' : `${days} days`),
  make: 'Make a token',
  once: (name) => `The token for ${name}. It is shown this once: copy it now.`,
  token: 'Token',
  example: 'For instance:',
  copy: 'Copy',
  copied: 'Copied',
  putAway: 'I have it: put it away',
}

const KINDS: { readonly [kind in RefusedKind]: readonly [one: string, many: string] } = {
  'no-token': ['try without having joined', 'tries without having joined'],
  forged: ['key that is none of ours', 'keys that are none of ours'],
  revoked: ['try by a device that was shown out', 'tries by devices that were shown out'],
  expired: ['try by a device that was away too long', 'tries by devices that were away too long'],
  'foreign-host': ['try under a name that is not this shop’s', 'tries under a name that is not this shop’s'],
  'foreign-origin': ['try by a page from elsewhere', 'tries by a page from elsewhere'],
  'wrong-code': ['wrong code', 'wrong codes'],
  'not-its-role': ['try at what its role may not do', 'tries at what a role may not do'],
  'too-many': ['request more than one device may make', 'requests more than one device may make'],
  flooding: ['screen cut off for sending too much', 'screens cut off for sending too much'],
  malformed: ['message that cannot be read', 'messages that cannot be read'],
}

function refused(): RefusedWords {
  return {
    title: 'Refused',
    none: 'Nothing was refused.',
    lead: 'A few are a mistyped code or an old tab. Many from an address that you do not know: look for that device, and change the password of the Wi-Fi.',
    since: (at) => `Counted since ${at}.`,
    columns: { what: 'what', last: 'last', from: 'from' },
    times: (kind, count) => `${count} ${KINDS[kind][count === 1 ? 0 : 1]}`,
  }
}

function copies(times: TimeWords): CopiesWords {
  return {
    title: 'Safe copies',
    none: 'There is no copy yet.',
    copied: (ms, missing) =>
      missing === 0
        ? `Copied ${times.span(ms)} ago, up to the last tap.`
        : `Copied ${times.span(ms)} ago; ${missing === 1 ? '1 act since is' : `${missing} acts since are`} not in it yet.`,
    folder: 'Copies lie in',
    sameDrive:
      'That is the drive that the shop itself is on: when it breaks, the copies break with it. A folder on another drive keeps them; start with it:',
    trouble: 'The last copy did not work:',
    archives: 'Kept by day',
    noArchives: 'None by day yet.',
    columns: { when: 'of', file: 'file', size: 'size', acts: 'acts' },
    bytes: bytesText,
    restoreTitle: 'To put one back',
    restore:
      'Stop the shop, give this command with the shop’s folder for FOLDER, and start it again. It takes the newest good copy, and keeps the present journal aside:',
    restoreOne: 'Or one of the daily ones:',
    exportIt: 'Everything that ever happened here, as a file (JSON Lines)',
  }
}

/** @example 4_200_000 → "4.2 MB" */
function bytesText(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1_000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`
}
