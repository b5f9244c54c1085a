import { seriesError } from './series-error.js'
import type { WeatherFile } from '../../project/index.js'

export type FileKind = WeatherFile['kind']

/** The kind of weather file that a text looks like by its first lines; undefined when it is none of the known. */
export function kindOfText(text: string): FileKind | undefined {
  const [first = '', second = '', third = ''] = text.slice(0, 20_000).split('\n', 3)
  if (/^\uFEFF?LOCATION,/iu.test(first)) return 'epw'
  if (/^"?Date \(MM\/DD\/YYYY\)/iu.test(second)) return 'tmy3_csv'
  if (/^Year,Month,Day,Hour,Minute\b/iu.test(third)) return 'us_solar_database_csv'
  return undefined
}

/** @throws StageError when a file is plainly of another kind than the project says. */
export function checkKind(text: string, kind: FileKind): void {
  const found = kindOfText(text)
  if (found === undefined || found === kind || kind === 'station_csv') return
  throw seriesError(
    1,
    undefined,
    `the project calls it ${kind}, but it begins as ${found} does`,
    `write kind: ${found}, or name another file`,
  )
}
