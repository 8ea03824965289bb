import type { GuidePart, OpenWords } from './desk-open.ts'

export function enOpen(): OpenWords {
  return {
    connected: 'Screens of this shop',
    title: 'Open a screen',
    lead: 'Choose what it is and what it is called; then point the camera of a tablet or a phone at the code.',
    which: 'What it is',
    name: 'What it is called',
    nameHint: {
      wall: 'e.g. Boiler wall',
      bench: 'e.g. Oven bench',
      counter: 'e.g. Front counter',
      desk: 'e.g. Office',
    },
    address: 'Address of this shop',
    addressKind: { name: 'by name', address: 'by number' },
    here: 'as this page was opened',
    hereHint: 'A name goes on working when the number changes. A device that does not find the name takes the number.',
    scan: 'Point the camera here',
    code: (address) => `Code for ${address}`,
    openHere: 'Open it on this device',
    copy: 'Copy the address',
    copied: 'Copied',
    thisScreen: 'This screen',
    guides: {
      kiosk: { link: 'A tablet or a computer that shows nothing else', title: 'A machine that shows one screen' },
      pedals: { link: 'Foot pedals and one-key pads', title: 'Foot pedals and one-key pads' },
      https: { link: 'Trusting this shop’s https', title: 'Trusting this shop’s https' },
    },
    guidesTitle: 'Setting one up for good',
    back: 'Screens',
    kiosk: KIOSK,
    pedals: PEDALS,
    https: HTTPS,
    example: 'The address for such a screen, with its name in it:',
    pedalColumns: { key: 'key', station: 'station', acts: 'does' },
  }
}

const KIOSK: readonly GuidePart[] = [
  {
    title: 'Before it is hung',
    isCaution: true,
    lines: [
      'Hot water, steam and hot decks: hang it where nobody reaches over the kettle or past the oven door to touch it, and out of the steam.',
      'Electric devices near water: use a device, a power supply and a cable made for wet rooms, on a circuit with a residual-current protection. Whoever is licensed for it decides and connects.',
      'No cable across the floor or over an edge where trays pass. A mount that holds a push with a full tray.',
      'The board is an aid, not a safety device: nothing depends on it that can hurt somebody when the screen is dark.',
    ],
  },
  {
    title: 'The address that it starts with',
    hasAddress: true,
    lines: [
      'In a shop that lets devices in by codes, join once in that browser with a code from the desk; from then on it comes in by itself.',
      'Give it a fixed address with the name in it: each time it starts with that address, it calls itself so.',
      'Whatever else is set on it (station, size, sounds, pedals) stays on the device.',
    ],
  },
  {
    title: 'A computer or a small board computer',
    lines: [
      'Let the system log on by itself and start a browser full-screen with the address. Browsers of the Chromium family take “--kiosk ADDRESS” for that, browsers of the Firefox family “--kiosk ADDRESS” too; put the line into what the system starts after log-on.',
      'On Linux that is a desktop entry in ~/.config/autostart or a user service of systemd; on other systems the list of programs that start after log-on.',
      'Sounds need one touch or key after the start, as browsers keep pages silent until somebody has touched them. Chromium-family browsers take “--autoplay-policy=no-user-gesture-required” to leave that out.',
      'Switch off the screen saver, the standby of the screen and of the computer, notices of the system, and updates that start it anew in the morning.',
    ],
  },
  {
    title: 'A tablet',
    lines: [
      'Open the address in its browser and put it on the home screen: opened from there it has no address bar.',
      'Pin the browser to the screen: systems call it screen pinning, app pinning, guided or single-app use; it is under security or accessibility in the settings. Leave it with the code that you set.',
      'Set the screen to “never off” while it charges, and the brightness by hand: automatic brightness goes dark in the dark shop.',
      'Let it charge from a supply that is meant to stay connected, and look at the battery now and then: a bulging one goes out of the shop at once.',
    ],
  },
  {
    title: 'Screen sleep and brightness',
    lines: [
      'Over plain http a page may not keep the screen awake: that is a setting of the device.',
      'Light or dark, by the clock or as the device has it, and the size of print are set on each screen itself, under its settings.',
      'Before dawn choose a brightness at which the next act can be read from where people stand, and no more; a wall is read at 2 to 6 m.',
    ],
  },
  {
    title: 'Cleaning the glass',
    lines: [
      'Touch “Wipe the glass” first: for 15 seconds the screen takes no touches, and ends that by itself.',
      'A damp cloth with a mild cleaner; nothing sprayed onto the device, no scraper, no abrasive.',
      'Wash hands before the line again: a screen that was touched with egg or sesame on the hands passes it on.',
    ],
  },
]

const PEDALS: readonly GuidePart[] = [
  {
    title: 'Before you step on one',
    isCaution: true,
    lines: [
      'Stand clear of the hot water and of the oven door when you step on it: both feet are needed near either.',
      'Put it where nobody trips and no cart rolls over it. A pedal and a cable made for wet floors, out of the steam; a wireless one has no cable to trip over, and a battery to look after.',
      'A pedal says that something was done. It moves nothing, switches nothing, and is no emergency stop.',
    ],
  },
  {
    title: 'What works',
    lines: [
      'Any pedal, button or one-key pad that acts as a keyboard (a USB or Bluetooth “human interface device”) works, without a program of its own.',
      'Set each to a key that no one types: F13 to F24 are best; a letter works as well. Most pedals are set once with a tool of their maker and keep it.',
      'One pedal for each station: the kettle’s does kettle acts only, so that a foot in the wrong place moves nothing elsewhere.',
    ],
  },
  {
    title: 'Tie it to its station',
    hasStations: true,
    lines: [
      'Connect it to the device that shows the wall or the bench. There, under settings, “Pedals and one-key pads”: choose the station, “Learn a key”, and press the pedal once.',
      'A press does the act that its station shows, once it has been on show for half a second. Held down it acts once, and a second press within a quarter of a second is the same press.',
      '“Coming” may have a key too: it quiets the sound for a moment and does nothing else.',
    ],
  },
  {
    title: 'When it does nothing',
    lines: [
      'Nothing may be on show for its station: the bar says so when you press it.',
      'A settings page or a list that lies over the line holds pedals back: what they would do cannot be read then.',
      'The page must have the keyboard: touch it once after the start, or let the machine start as a kiosk.',
      'What was done by mistake is taken back at the bench or here under Today.',
    ],
  },
]

const HTTPS: readonly GuidePart[] = [
  {
    title: 'What it is for',
    lines: [
      'Over https nobody on the network can read along or pretend to be this shop. The server has made a certificate of the shop’s own: each device is told once to trust it, and then it warns no more.',
      'It holds for ten years. A server that was set up anew makes another: then do this again.',
    ],
  },
  {
    title: 'On each device, once',
    hasAuthority: true,
    lines: [
      'Open the address below on the device, which warns this once, or bring the file on a stick.',
      'Android: Settings, Security, Encryption and credentials, Install a certificate, CA certificate.',
      'iPad and iPhone: install the profile, then Settings, General, About, Certificate Trust Settings, and switch it on.',
      'Windows: open the file, Install, Local machine, Trusted Root Certification Authorities. macOS: open it in Keychain Access, System, Always Trust.',
      'Linux: browsers have a list of their own: Settings, Certificates, Authorities, Import.',
      'Open the shop’s address again: it warns no more.',
    ],
  },
  {
    title: 'When to change over',
    isCaution: true,
    lines: [
      'To a browser https is another address: each screen joins and is set up once more.',
      'Change over when no tap waits. Taps that waited under the old address lie there until plain http is back.',
    ],
  },
]
