import { makePaint, wantsColour, type Paint } from './colour.js'

/** How text is laid out on one stream. */
export interface Style {
  /** Columns, 40 to 200. */
  readonly width: number
  readonly paint: Paint
  /** Whether line-drawing characters may be used: on a terminal only, files and pipes get plain ASCII. */
  readonly lines: boolean
}

const FALLBACK_WIDTH = 100

/** Style of a stream. Width: the terminal's, else COLUMNS, else 100, held between 40 and 200. */
export async function streamStyle(
  stream: { readonly isTTY?: boolean; readonly columns?: number },
  env: Readonly<Record<string, string | undefined>>,
  colourAllowed: boolean,
): Promise<Style> {
  const stated = stream.columns ?? (/^\d+$/u.test(env['COLUMNS'] ?? '') ? Number(env['COLUMNS']) : FALLBACK_WIDTH)
  return {
    width: Math.min(200, Math.max(40, stated === 0 ? FALLBACK_WIDTH : stated)),
    paint: await makePaint(wantsColour(stream, env, colourAllowed)),
    lines: stream.isTTY === true && env['TERM'] !== 'dumb',
  }
}

/** Style of a file: plain, 100 columns, whatever the terminal is. */
export const FILE_STYLE: Style = { width: FALLBACK_WIDTH, paint: (_tone, text) => text, lines: false }
