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

/** Files of networks that measure radiation, which hold a day or a month of minutes, by their first lines. */
const NETWORK_FILES = [
  // @source README of the US surface radiation network, read: name; latitude, longitude, elevation m, version
  {
    what: 'a daily file of minutes of the US surface radiation network',
    holds: 'one day',
    is: (first: string, second: string) =>
      /^\s*[A-Z]/iu.test(first) && /^\s*-?\d+(?:\.\d+)?\s+-?\d+(?:\.\d+)?\s+-?\d+\s*m\s+version\b/iu.test(second),
  },
  // @source reader of a public solar data library, secondary: blocks that begin *C or *U and four digits
  {
    what: 'a monthly file of minutes of the baseline surface radiation network',
    holds: 'one month',
    is: (first: string) => /^\uFEFF?\*[CU]\d{4}/u.test(first),
  },
] as const

/** @throws StageError when it holds a day or a month of minutes: no single one of them is a year. */
function refuseNetworkFile(text: string): void {
  const [first = '', second = ''] = text.slice(0, 20_000).split('\n', 2)
  const found = NETWORK_FILES.find(({ is }) => is(first, second))
  if (found === undefined) return
  throw seriesError(
    1,
    undefined,
    `this is ${found.what}, which holds ${found.holds}; the estimate needs a year in one file`,
    'join the files of a year into one table of 5 to 60 min means (stamp, GHI, DNI, DHI, air temperature, stamps in UTC) and read it as kind: station_csv, or take an hourly EPW file or one of the US solar radiation database',
  )
}

/** @throws StageError when a file is plainly of another kind than the project says. */
export function checkKind(text: string, kind: FileKind): void {
  refuseNetworkFile(text)
  const found = kindOfText(text)
  if (found === undefined || found === kind || kind === 'station_csv') return
  throw seriesError(
    1,
    undefined,
    `the project calls it ${kind}, but it begins as ${found} does`,
    `write kind: ${found}, or name another file`,
  )
}
