import { describe, expect, it } from 'vitest'
import { loadText, STARTER } from './support.js'

/** All that is said about a weather table with these columns; nothing when it is taken. */
function said(columns: string, at: 'site' | 'production'): string {
  const table = `{ header_line: 1, stamp_columns: [t], stamp_format: iso, stamps_mark: ending, clock: utc, columns: { air_temperature: { column: T, unit: c }, ${columns} } }`
  const text =
    at === 'production'
      ? `${STARTER}\nproduction: { weather_table: ${table} }\n`
      : STARTER.replace(/^ {2}climate:.*$/mu, `  climate: { file: w.csv, kind: station_csv, table: ${table} }`)
  try {
    loadText(text)
    return ''
  } catch (error) {
    return (error as Error).message
  }
}
const PLANE = 'plane: { column: P, unit: w_m2, tilt_deg: 22, azimuth_deg: 180 }'
const GLOBAL = 'global: { column: G, unit: w_m2 }'

describe.each(['site', 'production'] as const)('radiation of a weather table under %s', (at) => {
  it('is global, or direct and diffuse, or that on a plane', () => {
    for (const few of ['wind: { column: W, unit: m_s }', 'direct: { column: D, unit: w_m2 }'])
      expect(said(few, at)).toMatch(/no radiation to work with: name global, .* or that on a plane/u)
    for (const fine of [PLANE, GLOBAL]) expect(said(fine, at)).not.toContain('radiation')
  })
  it('on a plane stands for the others, so that beside them nobody would look at it', () => {
    expect(said(`${PLANE}, ${GLOBAL}`, at)).toContain('stands beside radiation on the level')
  })
})
