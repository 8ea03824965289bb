import type { Figure, Note } from './sound-figures.ts'

/** Plays figures on one screen, one at a time. */
export interface SoundPlayer {
  /** Browsers stay silent until somebody has touched the page: then the screen says so and asks for a touch. */
  readonly needsTouch: () => boolean
  /** Call in any touch or key press. */
  readonly wake: () => void
  readonly play: (figure: Figure, volume: number) => void
  /** Silent within a few hundredths of a second, without a click. */
  readonly stop: () => void
}

/** AudioContext works on plain http, where AudioWorklet does not. */
export function soundPlayer(context: AudioContext): SoundPlayer {
  let voice: Voice | null = null
  const stop = () => {
    voice?.stop()
    voice = null
  }
  const play = (figure: Figure, volume: number) => {
    stop()
    // What is scheduled on a sleeping context would all sound at once when it wakes.
    if (context.state === 'running') voice = sing(context, figure, volume)
  }
  return { needsTouch: () => context.state !== 'running', wake: () => void context.resume(), play, stop }
}

export interface Voice {
  readonly stop: () => void
}

const FILTER_HZ = 4_000
/** The filter overshoots a square's edges; at full height they would be clipped, and rasp. */
const HEIGHT = 0.8
/** Edges of a note: without them each would begin and end with a click. */
const EDGE_S = 0.008
const STOP_S = 0.03

/**
 * Schedules a figure from now on: a square wave, whose overtones carry through a loud room better than a sine, under a
 * filter that keeps them below 4 kHz, where a small speaker only rasps.
 * @param volume 0 to 1
 */
export function sing(context: BaseAudioContext, figure: Figure, volume: number): Voice {
  const oscillator = context.createOscillator()
  const gain = context.createGain()
  const filter = context.createBiquadFilter()
  oscillator.type = 'square'
  filter.type = 'lowpass'
  filter.frequency.value = FILTER_HZ
  gain.gain.value = 0
  oscillator.connect(gain).connect(filter).connect(context.destination)
  oscillator.onended = () => filter.disconnect()
  const beginS = context.currentTime
  for (const note of figure) schedule(note, { oscillator, gain, beginS, height: HEIGHT * volume })
  oscillator.start(beginS)
  const last = figure[figure.length - 1]
  oscillator.stop(beginS + (last === undefined ? 0 : (last.fromMs + last.lengthMs) / 1000 + EDGE_S))
  const stop = () => {
    gain.gain.cancelScheduledValues(context.currentTime)
    gain.gain.setTargetAtTime(0, context.currentTime, STOP_S / 4)
    oscillator.stop(context.currentTime + STOP_S)
  }
  return { stop }
}

interface Score {
  readonly oscillator: OscillatorNode
  readonly gain: GainNode
  readonly beginS: number
  readonly height: number
}

function schedule({ hz, fromMs, lengthMs }: Note, { oscillator, gain, beginS, height }: Score) {
  const fromS = beginS + fromMs / 1000
  const toS = fromS + lengthMs / 1000
  oscillator.frequency.setValueAtTime(hz, fromS)
  gain.gain.setValueAtTime(0, fromS)
  gain.gain.linearRampToValueAtTime(height, fromS + EDGE_S)
  gain.gain.setValueAtTime(height, toS - EDGE_S)
  gain.gain.linearRampToValueAtTime(0, toS)
}
