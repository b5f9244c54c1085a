import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { globalOfPlane } from '../../src/climate/series/plane-to-global.js'
import { rowSun } from '../../src/climate/series/row-sun.js'
import { productionLimits, readProduction, weatherOfDays } from '../../src/fieldwork/index.js'
import type { Project, StationTable } from '../../src/project/index.js'
import { perez1990 } from '../../src/sun/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { planeLight } from '../../src/yield/plane-light.js'
import { modelSettings } from '../../src/yield/settings.js'
import { skyLight } from '../../src/yield/sky-light.js'
import { runYield } from '../../src/yield/index.js'
import { files, project as house } from './synthetic.js'

const SITE = { latitude_deg: 47.45, longitude_deg: -122.3, utc_offset_h: -8, elevation_m: 122 }
/** The demo house in Seattle with its south array alone: 6 in 12 (26.57 deg) towards 184 deg. */
const project: Project = { ...house, site: SITE, arrays: { south: house.arrays['south']! } }
const [TILT, AZIMUTH] = [(Math.atan(0.5) * 180) / Math.PI, 184]
const epw = readFileSync('examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', 'utf8')
const rows = epw
  .split('\n')
  .slice(8)
  .filter((line) => line.trim() !== '')
  .map((line) => line.split(','))
const settings = modelSettings(project, new Worksheet(), false)
const measured = runYield({ ...project, site: { ...SITE, climate: { epw: 'w' } } }, new Map([...files, ['w', epw]]))
const two = (text: string | number): string => String(text).padStart(2, '0')

/** What a sensor of this tilt and direction reads in the weather of the file: direct and diffuse were measured there. */
function sensorTable(tiltDeg: number, azimuthDeg: number): string {
  const { steps } = measured
  const light = planeLight(steps, skyLight(steps, perez1990), tiltDeg, azimuthDeg, settings).all
  const byRow = new Float64Array(rows.length)
  for (let step = 0; step < steps.length; step += 1) {
    // A step is the sunlit part of its hour.
    byRow[steps.fileRow![step]!] = light[step]! * (steps.hours[step]! > 0 ? 1 : 0)
  }
  const lines = rows.map(
    (cells, row) =>
      `2025-${two(cells[1]!)}-${two(cells[2]!)} ${two(Number(cells[3]) - 1)}:00,${byRow[row]!.toFixed(2)},${cells[6]},${cells[21]}`,
  )
  return `time,poa,temp,wind\n${lines.join('\n')}\n`
}
const tableOf = (tilt_deg: number, azimuth_deg: number): StationTable => ({
  stamp_columns: ['time'],
  stamp_format: 'YYYY-MM-DD HH:mm',
  stamps_mark: 'beginning',
  clock: 'standard',
  header_line: 1,
  columns: {
    plane: { column: 'poa', unit: 'w_m2', tilt_deg, azimuth_deg },
    air_temperature: { column: 'temp', unit: 'c' },
    wind: { column: 'wind', unit: 'm_s' },
  },
})
const series = (() => {
  const lines = Array.from({ length: 365 }, (_, at) => {
    const day = new Date(Date.UTC(2025, 0, 1) + at * 86_400_000).toISOString().slice(0, 10)
    return `${day},5`
  })
  const read = readProduction('p.csv', `date,kWh\n${lines.join('\n')}\n`, {}, productionLimits(project, measured))
  if (read.series === undefined) throw new Error(read.problems[0]?.message)
  return read.series
})()
/** Modelled energy of each day from direct and diffuse as they were measured, kWh. */
const daily = (() => {
  const kwh = new Float64Array(365)
  const { steps, system } = measured
  for (let step = 0; step < steps.length; step += 1) {
    const { month, day = 1 } = steps.label(step)
    const number = (Date.UTC(2025, month - 1, day) - Date.UTC(2025, 0, 1)) / 86_400_000
    kwh[number] = kwh[number]! + (system.acW[step]! * steps.hours[step]!) / 1000
  }
  return kwh
})()

describe('a sensor in a plane as weather', () => {
  it('lying flat it reads global radiation: nothing else comes out', () => {
    const year = {
      length: 24,
      stepH: 1,
      dayOfYear: new Uint16Array(24).fill(150),
      middleH: Float64Array.from({ length: 24 }, (_, hour) => hour + 0.5),
      isLeap: false,
    }
    const sun = rowSun(year, { latitudeDeg: 40, longitudeDeg: -105, utcOffsetH: -7 })
    const ghi = sun.levelWM2.map((above) => 0.6 * above)
    const found = globalOfPlane(ghi, { tiltDeg: 0, azimuthDeg: 180 }, sun)
    const high = Array.from(sun.cosZenith.keys()).filter((row) => sun.cosZenith[row]! > 0.09)
    expect(high.length).toBeGreaterThan(10)
    for (const row of high) expect(found[row]).toBeCloseTo(ghi[row]!, 3)
  })
  it('in the plane of the modules gives the energy of each day as direct and diffuse do, within 2 %, and of the year within 0.5 %', () => {
    const { kwhByDay } = weatherOfDays(project, 'w', sensorTable(TILT, AZIMUTH), series, tableOf(TILT, AZIMUTH))
    expect(kwhByDay.size).toBe(365)
    let [sum, known, off] = [0, 0, 0]
    const first = Date.UTC(2025, 0, 1) / 86_400_000
    daily.forEach((kwh, at) => {
      const own = kwhByDay.get(first + at) as number
      sum += own
      known += kwh
      off = Math.max(off, Math.abs(own - kwh) / Math.max(3, kwh))
    })
    expect(Math.abs(sum / known - 1)).toBeLessThan(0.005)
    expect(off).toBeLessThan(0.02)
  })
  it('of another direction than stated looks like a wrong clock, and is refused', () => {
    const wrong = (): unknown => weatherOfDays(project, 'w', sensorTable(TILT, 90), series, tableOf(TILT, AZIMUTH))
    expect(wrong).toThrow(/stamps look 1\.\d+ h too early/)
    expect(wrong).toThrow(
      expect.objectContaining({ fix: expect.stringContaining('azimuth_deg of its sensor') as string }),
    )
  })
  it('says nothing of a day on which it read nothing', () => {
    const text = sensorTable(TILT, AZIMUTH).replaceAll(/^(2025-06-10 \d\d:00),[^,]*,/gmu, '$1,,')
    const { kwhByDay } = weatherOfDays(project, 'w', text, series, tableOf(TILT, AZIMUTH))
    expect(kwhByDay.size).toBe(364)
    expect(kwhByDay.has(Date.UTC(2025, 5, 10) / 86_400_000)).toBe(false)
  })
})
