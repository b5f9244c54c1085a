import type { Rule } from './rule.js'

/** A weather file is read as its kind says: keys that its kind does not use are mistakes. */
export const checkWeatherFile: Rule = ({ site: { climate } }, report) => {
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
  const { global, direct, diffuse } = table.columns
  if (global === undefined && (direct === undefined || diffuse === undefined))
    report([...path('table'), 'columns'], 'there is no radiation to work with: name global, or both direct and diffuse')
}
