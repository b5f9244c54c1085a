/** Pen widths on paper, points; a small set so that a copy in black and white still tells lines apart. */
export const PEN_PT = { hair: 0.25, thin: 0.45, medium: 0.8, heavy: 1.4 } as const

export type Pen = keyof typeof PEN_PT

/** Lengths of dash and gap on paper, points. */
export const DASH_PT = {
  solid: [],
  dashed: [5, 2.5],
  hidden: [2.5, 1.8],
  center: [10, 2, 2, 2],
  dotted: [0.8, 1.8],
} as const satisfies Readonly<Record<string, readonly number[]>>

export type Dash = keyof typeof DASH_PT

/** Colours; all but those of the labels and of papers for customers are greys, and no meaning hangs on a colour alone. */
export const COLORS = {
  black: '#000000',
  white: '#ffffff',
  grey: '#555555',
  light: '#ededed',
  mid: '#d2d2d2',
  red: '#c8102e',
  orange: '#ff8200',
  yellow: '#ffd100',
  pine: '#1d5a52',
  sage: '#a9cbc2',
  mist: '#e6f0ed',
  clay: '#b4562a',
  sand: '#f6ebdf',
} as const

export type Color = keyof typeof COLORS
