import { parseEpw } from '../../src/climate/index.js'
import { seriesClimate } from '../../src/climate/series/series-climate.js'
import { rowSun } from '../../src/climate/series/row-sun.js'
import type { StationTable, WeatherFile } from '../../src/project/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { SEATTLE_EPW } from './epw-fixture.js'

/** The typical year of Seattle-Tacoma airport, from which files of other kinds are made. */
export const SEATTLE = parseEpw(SEATTLE_EPW).climate
export const HOUSE = { latitudeDeg: 47.47, longitudeDeg: -122.32, elevationM: 122, utcOffsetH: -8 }

export interface Row {
  /** Middle of the interval, ms of local standard time as if UTC. */
  ms: number
  ghi: number | string
  dni: number | string
  dhi: number | string
  temp: number | string
  wind: number | string
}

const MS_PER_HOUR = 3_600_000

/**
 * Rows of a year like Seattle's typical one. Shorter intervals have the direct and diffuse radiation of their hour under
 * the sun of their own middle, so that the three radiations agree.
 */
export function rowsOf(year: number, stepMin = 60): Row[] {
  const rows: Row[] = []
  const perHour = 60 / stepMin
  const leap = new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1
  const hours = leap ? 8784 : 8760
  const length = hours * perHour
  const middleH = Float64Array.from({ length }, (_, row) => ((row % (24 * perHour)) + 0.5) / perHour)
  const dayOfYear = Uint16Array.from({ length }, (_, row) => Math.floor(row / 24 / perHour) + 1)
  const sun = rowSun({ length, stepH: 1 / perHour, dayOfYear, middleH, isLeap: leap }, HOUSE)
  for (let row = 0; row < length; row++) {
    const day = dayOfYear[row]! - 1 - (leap && dayOfYear[row]! > 59 ? 1 : 0)
    const hour = day * 24 + Math.floor(middleH[row]!)
    const up = Math.max(0, sun.cosZenith[row]!)
    const [dni, dhi] = sun.sunlit[row]! > 0 ? [SEATTLE.dniWM2[hour]!, SEATTLE.dhiWM2[hour]!] : [0, 0]
    rows.push({
      ms: Date.UTC(year, 0, 1) + (row + 0.5) * stepMin * 60_000,
      ghi: Number((dni * up + dhi).toFixed(2)),
      dni,
      dhi,
      temp: SEATTLE.dryBulbC[hour]!,
      wind: SEATTLE.windMs[hour]!,
    })
  }
  return rows
}

export const TABLE: StationTable = {
  header_line: 1,
  stamp_columns: ['time'],
  stamp_format: 'YYYY-MM-DD HH:mm',
  stamps_mark: 'ending',
  clock: 'standard',
  columns: {
    global: { column: 'ghi', unit: 'w_m2' },
    direct: { column: 'dni', unit: 'w_m2' },
    diffuse: { column: 'dhi', unit: 'w_m2' },
    air_temperature: { column: 'temp', unit: 'c' },
    wind: { column: 'wind', unit: 'm_s' },
  },
}

export const GLOBAL_ONLY: StationTable = {
  ...TABLE,
  columns: { global: { column: 'ghi', unit: 'w_m2' }, air_temperature: { column: 'temp', unit: 'c' } },
}

/** Text of a station's table. @param moveH Hours from the middle of an interval to its stamp. */
export function stationText(rows: readonly Row[], moveH: number): string {
  const lines = rows.map(({ ms, ghi, dni, dhi, temp, wind }) => {
    const stamp = new Date(ms + moveH * MS_PER_HOUR).toISOString().slice(0, 16).replace('T', ' ')
    return `${stamp},${ghi},${dni},${dhi},${temp},${wind}`
  })
  return `time,ghi,dni,dhi,temp,wind\n${lines.join('\n')}\n`
}

export function climateOf(text: string, table: StationTable = TABLE, more: Partial<WeatherFile> = {}, house = HOUSE) {
  const worksheet = new Worksheet()
  const choice: WeatherFile = { file: 'station.csv', kind: 'station_csv', table, ...more }
  const climate = seriesClimate(choice, text, house, worksheet)
  const { findings, assumptions, worksheet: steps } = worksheet.result({})
  return { climate, findings, assumptions, steps, ids: findings.map(({ id }) => id) }
}

export const yearSum = (values: Float64Array, stepH: number): number =>
  values.reduce((sum, value) => sum + value * stepH, 0)
