import type { StationTable } from '../project-types.generated.js'
import type { Report, Rule } from './rule.js'

/** A weather file is read as its kind says: keys that its kind does not use are mistakes. */
export const checkWeatherFile: Rule = ({ site: { climate }, production }, report) => {
  if (production?.weather_table !== undefined)
    checkRadiation(production.weather_table, ['production', 'weather_table'], report)
  if (typeof climate !== 'object' || !('file' in climate)) return
  const { kind, table, year, stamps_mark: mark } = climate
  const path = (key: string) => ['site', 'climate', key]
  if (kind === 'station_csv' && table === undefined)
    report(path('table'), 'missing; kind: station_csv wants to know how the table is to be read', 'parent')
  if (kind !== 'station_csv' && table !== undefined)
    report(path('table'), `${kind} has a layout of its own; table belongs to kind: station_csv`, 'key')
  if (kind !== 'us_solar_database_csv' && mark !== undefined)
    report(
      path('stamps_mark'),
      kind === 'station_csv' ? 'belongs under table' : `the stamps of ${kind} end their interval; leave it out`,
      'key',
    )
  if (year !== undefined && (kind === 'epw' || kind === 'tmy3_csv'))
    report(path('year'), `${kind} holds one year; leave it out`, 'key')
  if (table === undefined) return
  checkRadiation(table, path('table'), report)
}

/** The radiations that a table needs, and those that would not be looked at beside a sensor in a plane. */
function checkRadiation({ columns }: StationTable, path: readonly string[], report: Report): void {
  const { global, direct, diffuse, plane } = columns
  const others = [global, direct, diffuse].filter((column) => column !== undefined)
  if (plane !== undefined && others.length > 0)
    report(
      [...path, 'columns', 'plane'],
      'stands beside radiation on the level or of the sun, from which that on a plane follows: leave one of the two out',
      'key',
    )
  if (plane === undefined && global === undefined && (direct === undefined || diffuse === undefined))
    report(
      [...path, 'columns'],
      'there is no radiation to work with: name global, or both direct and diffuse, or that on a plane',
    )
}
