/**
 * The colours of every screen, by what they mean. Two hues carry a meaning (running, coming) and one marks trouble; all
 * else is neutral, so that a colour seen from across the room always says something. `act…` are the same words on an
 * inverted block, which is what must be acted on: paper-white on the dark wall, ink on the light bench and counter.
 *
 * Why not one hue per stage or a scale from green to red: people who tell red from green badly are one in twelve men,
 * and a board of many colours says nothing from five metres. `tests/reference/contrast.test.ts` holds the ratios.
 */
export const THEMES = {
  dark: {
    ground: '#10151a',
    surface: '#182028',
    text: '#f7f2e8',
    quiet: '#b9c3cb',
    line: '#687682',
    track: '#35414b',
    trackEdge: '#46535e',
    running: '#fbc94b',
    coming: '#6dbdf2',
    trouble: '#ff8a66',
    crust: '#dccbae',
    crumb: '#8f8068',
    pole: '#4c5964',
    wood: '#75624e',
    past: '#6e6961',
    actGround: '#f7f2e8',
    actSurface: '#fffdf8',
    actText: '#15120d',
    actQuiet: '#4b4338',
    actLine: '#7d7466',
    actTrack: '#d6cebf',
    actTrackEdge: '#b3a998',
    actRunning: '#15120d',
    actComing: '#114f7a',
    actTrouble: '#8f2f00',
  },
  light: {
    ground: '#f3ecdf',
    surface: '#fffdf8',
    text: '#1a1611',
    quiet: '#5b5246',
    line: '#8a7d68',
    track: '#efe8da',
    trackEdge: '#c9bca4',
    running: '#b67500',
    coming: '#1f6399',
    trouble: '#b03a00',
    crust: '#94764d',
    crumb: '#5f4a2e',
    pole: '#cdbfa6',
    wood: '#b59a73',
    past: '#b7a17e',
    actGround: '#1a1611',
    actSurface: '#2b251d',
    actText: '#fffdf8',
    actQuiet: '#d9d0c2',
    actLine: '#8f8471',
    actTrack: '#4a4236',
    actTrackEdge: '#63594a',
    actRunning: '#fbc94b',
    actComing: '#7cc4f5',
    actTrouble: '#ff8a66',
  },
} as const satisfies Record<string, Readonly<Record<string, `#${string}`>>>

export type ThemeName = keyof typeof THEMES
export type TokenName = keyof (typeof THEMES)['dark'] & keyof (typeof THEMES)['light']

/**
 * The text of `tokens.css`, which is kept in the repository so that the build needs no step of its own.
 * A test holds the two together; after a change here, write the file anew with what the test prints.
 */
export function tokensCss(): string {
  const blocks = Object.entries(THEMES).map(([theme, tokens]) => {
    const lines = Object.entries(tokens).map(([name, hex]) => `  ${cssName(name)}: ${hex};\n`)
    return `[data-theme='${theme}'] {\n${lines.join('')}}\n`
  })
  return `/* From tokens.ts; see there. */\n${blocks.join('\n')}`
}

/** @example cssName('actGround') // '--act-ground' */
export function cssName(token: string): string {
  return `--${token.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`)}`
}
