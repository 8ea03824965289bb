import type { DoorWords } from './door.ts'

const taps = (count: number) => `${count} ${count === 1 ? 'tap was' : 'taps were'} not sent`

export const enDoor: DoorWords = {
  outside: {
    title: {
      'no-token': 'This screen has not joined this shop',
      forged: 'This shop does not know this screen',
      revoked: 'The desk has shown this screen out',
      expired: 'This screen was away for too long',
      moved: 'This screen is another one now',
    },
    how: 'It joins with six digits that the desk shows under Screens.',
    unsent: (count) => `${taps(count)}. They stay on this device and go out once it has joined again.`,
    join: 'Join with a code',
    again: 'It looks by itself every half minute whether it is let in.',
  },
  join: {
    claimTitle: 'Whose shop is this?',
    claimLead: 'No desk has joined yet. Type the six digits from the server’s terminal: this device becomes the desk.',
    claimHow:
      'They stand in the window in which the shop was started. The desk lets all other screens in, and sees who tried.',
    title: 'Join this shop',
    lead: 'Type the six digits that the desk shows under Screens, or point this device’s camera at its code.',
    why: {
      'no-token': '',
      forged: 'This shop does not know this device.',
      revoked: 'The desk has shown this device out.',
      expired: 'This device was away for so long that it has to join again.',
    },
    code: 'Six digits',
    key: 'Join',
    joining: 'Joining…',
    wrong:
      'That code is wrong, used up or too old. Each holds for a few minutes and for one device: have the desk make a new one.',
    claimWrong: 'That code is wrong or too old. Type the newest one from the window in which the shop was started.',
    tooMany: (waitS) =>
      `Too many wrong codes came from here. Try again ${waitS === null ? 'in some minutes' : within(waitS)}.`,
    noContact: 'No contact with the shop. Is this device on the shop’s network? Nothing was lost: try again.',
    failed: 'That did not work.',
  },
  joined: {
    is: (name) => `This device is ${name}`,
    going: 'Opening its page…',
    open: 'Open its page',
    leave: 'Leave this shop',
    leaveHow: 'It gives its key back; to come in again it needs a new code from the desk.',
    unsent: (count) => `${taps(count)} yet; they stay on this device.`,
    leaveYes: 'Leave',
    leaveNo: 'Stay',
  },
  noContact: 'No contact with the shop. Looking again…',
  asking: 'Looking for the shop…',
}

function within(seconds: number): string {
  return seconds < 100 ? `in ${seconds} s` : `in ${Math.ceil(seconds / 60)} min`
}
