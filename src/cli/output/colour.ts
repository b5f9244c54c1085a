import type { ChalkInstance } from 'chalk'
import type { Tone } from '../../report/index.js'

export type Paint = (tone: Tone | 'heading', text: string) => string

/**
 * Whether a stream gets colour. Off wins: `--no-color`, a non-empty NO_COLOR, FORCE_COLOR=0; then FORCE_COLOR turns it on;
 * otherwise it needs a terminal that is not a `dumb` one. Asked for stdout and stderr separately.
 */
export function wantsColour(
  stream: { readonly isTTY?: boolean },
  env: Readonly<Record<string, string | undefined>>,
  optionAllows: boolean,
): boolean {
  if (!optionAllows || (env['NO_COLOR'] ?? '') !== '') return false
  const forced = env['FORCE_COLOR']
  if (forced === '0' || forced === 'false') return false
  if (forced !== undefined) return true
  return stream.isTTY === true && env['TERM'] !== 'dumb'
}

/** The only place that makes escape sequences; only a stream with colour loads the package for it. It keeps to the 16 colours that every terminal theme defines. */
export async function makePaint(colour: boolean): Promise<Paint> {
  if (!colour) return (_tone, text) => text
  const { Chalk } = await import('chalk')
  const chalk = new Chalk({ level: 1 })
  const styles: Record<Tone | 'heading', ChalkInstance> = {
    good: chalk.green,
    bad: chalk.red.bold,
    warn: chalk.yellow,
    dim: chalk.dim,
    strong: chalk.bold,
    heading: chalk.bold,
  }
  return (tone, text) => styles[tone](text)
}
