import type { LearntTimesWords } from './desk-learnt.ts'
import type { Words } from './words.ts'

export function enLearnt({ times }: Words): LearntTimesWords {
  return {
    times: {
      title: 'The line’s times as they really are',
      hint: (days) =>
        `From what was tapped on the line on ${days === 1 ? 'one day' : `the last ${days} days`}. What the board presumed teaches nothing. Nothing changes until you take a time over.`,
      none: 'Too little was tapped so far: a time is told from eight taps on.',
      columns: { what: 'Time', median: 'Really', most: 'Half of them', setUp: 'Set-up', taps: 'From' },
      what: {
        boil: 'Boil, from dip to lift',
        cycle: 'From one dip to the next',
        boarding: 'From the lift to the load',
        between: 'From an out to the next load',
        firstSide: 'First side',
        bake: 'Bake',
      },
      taps: (taps, days) => `${taps} taps on ${days === 1 ? 'one day' : `${days} days`}`,
      takeOver: 'Take over',
      taken: (what) => `${what}: taken over into the set-up.`,
      asSetUp: 'as set up',
    },
    heat: {
      title: 'The oven’s heat',
      hint: 'From readings typed at the bench or sent by a thermometer.',
      caution:
        'An estimate from readings. The board does not see or steer the oven: whoever stands at it decides when it is hot.',
      basis: {
        readings: 'Told from today’s readings.',
        past: 'No readings of this heat-up yet: told from this oven’s earlier ones.',
        kind: 'No readings yet: told from ovens of its kind, so take it as a rough guess. Two or three readings a heat-up make it this oven’s own.',
      },
      noTarget: 'Nobody has said at what the oven bakes bagels and the second menu: the set-up, under Oven.',
      second: (degrees, early, likely, late, wanted) =>
        `${degrees} for the second menu: about ${times.clock(likely)}, between ${times.clock(early)} and ${times.clock(late)} eight times in ten. It is wanted ${times.at(wanted)}.`,
      never: (degrees) => `As it heats now, ${degrees} for the second menu is not reached.`,
      turnOn: (by, likely, ready) =>
        `To be ready ${times.at(ready)}: on ${times.by(by)} to be in time nine mornings in ten; half of them ${times.clock(likely)} would do.`,
      wait: (now, wanted, until) =>
        `Now ${now}, bagels bake at ${wanted}: better wait with the next load until about ${times.clock(until)}.`,
      hot: (now) => `Now ${now}: the next load need not wait.`,
      course: (isHeating, tau, limit) =>
        `${isHeating ? 'Heating' : 'Cooling'} towards ${limit}; two thirds of the way in ${tau} min.`,
      heldBack: (held, degrees) =>
        `Of ${held.heatUps} earlier heat-ups, told from their first two thirds, the rest was off by ${degrees} and ${held.minutes} min on average.`,
      noReadings: 'No readings today.',
      plot: 'Readings, and what is expected',
      spoken: (readings) =>
        `${readings} readings of the oven today, with the course that is expected and how sure it is.`,
    },
  }
}
