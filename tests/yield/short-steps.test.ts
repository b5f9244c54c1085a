import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { loadProject, type Project, type ProjectError } from '../../src/project/index.js'
import { expectedHours, runYield, stepTable } from '../../src/yield/index.js'
import { rowsOf, stationText, TABLE } from '../climate/series-fixture.js'

const project = (nightW = 0): Project => ({
  format: 'gablewatt/2',
  title: 'short steps',
  site: {
    latitude_deg: 47.47,
    longitude_deg: -122.32,
    elevation_ft: 400,
    utc_offset_h: -8,
    climate: { file: 'w.csv', kind: 'station_csv', table: TABLE },
  },
  roof_planes: { p: { azimuth_deg: 135, tilt_deg: 30 } },
  arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 10, mounting: 'near_roof', standoff_in: 4 } },
  equipment: {
    modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
    inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97, night_w: nightW } },
  },
})
const total = (values: Iterable<number>): number => [...values].reduce((sum, value) => sum + value, 0)
const runOf = (stepMin: number, year: number, nightW = 0) =>
  runYield(project(nightW), new Map([['w.csv', stationText(rowsOf(year, stepMin), stepMin / 120)]]))

describe('an estimate from short steps', () => {
  const hourly = runOf(60, 2025)
  const short = runOf(10, 2024, 1)

  it('is that of the hours that they were made from', () => {
    const [one, other] = [hourly.result.values.annual, short.result.values.annual]
    // A year with a 29 February and night consumption, both below half a percent.
    expect(other.poa_kwh_m2 / one.poa_kwh_m2).toBeCloseTo(1, 2)
    expect(other.dc_kwh / one.dc_kwh).toBeCloseTo(1, 2)
    expect(short.climate.kind === 'hourly' && short.climate.length).toBe(366 * 144)
    expect(total(short.steps.hours) + total(short.steps.nightHours)).toBeCloseTo(8784, 6)
    expect(Math.max(...short.steps.spanH)).toBeCloseTo(1 / 6, 12)
  })

  it('gives 8760 hours whose months are those of the estimate, and a row for each step', () => {
    const { kwh, leapDayKwh } = expectedHours(short)
    expect(kwh).toHaveLength(8760)
    expect(total(kwh) + leapDayKwh).toBeCloseTo(short.result.values.annual.ac_kwh, 6)
    expect(total(kwh.subarray(0, 31 * 24))).toBeCloseTo(short.result.values.monthly[0]!.ac_kwh, 6)
    // Dark at midnight: 10 W of ten inverters for an hour.
    expect(kwh[0]).toBeCloseTo(-0.01, 9)
    const table = stepTable(short)
    expect(table.rows).toHaveLength(366 * 144)
    expect(Number(table.rows[1]![2])).toBeCloseTo(1 / 3, 12)
    const acAt = table.headings.indexOf('ac_w')
    expect(total(table.rows.map((row) => Number(row[acAt]))) / 6000).toBeCloseTo(short.result.values.annual.ac_kwh, 6)
  })
})

describe('a project that names a weather series', () => {
  const folder = mkdtempSync(join(tmpdir(), 'weather-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  const load = (climate: unknown) => {
    writeFileSync(join(folder, 'p.json'), JSON.stringify({ ...project(), site: { ...project().site, climate } }))
    return loadProject({ path: join(folder, 'p.json') })
  }
  writeFileSync(join(folder, 'w.csv'), stationText(rowsOf(2025), 0.5))

  it('is loaded with the text of the file', () => {
    const { files, project: loaded } = load(project().site.climate)
    expect(runYield(loaded, files).result.values.climate).toMatchObject({ kind: 'hourly', name: 'w.csv' })
  })

  it.each([
    [{ file: 'w.csv', kind: 'station_csv' }, 'site.climate.table'],
    [{ file: 'w.csv', kind: 'tmy3_csv', table: TABLE }, 'site.climate.table'],
    [{ file: 'w.csv', kind: 'tmy3_csv', year: 2025 }, 'site.climate.year'],
    [{ file: 'w.csv', kind: 'station_csv', table: TABLE, stamps_mark: 'ending' }, 'site.climate.stamps_mark'],
    [{ file: 'gone.csv', kind: 'tmy3_csv' }, 'site.climate.file'],
    [
      {
        file: 'w.csv',
        kind: 'station_csv',
        table: { ...TABLE, columns: { air_temperature: { column: 't', unit: 'c' } } },
      },
      'site.climate.table.columns',
    ],
  ])('refuses %j', (climate, path) => {
    try {
      load(climate)
    } catch (error) {
      expect((error as ProjectError).problems.map((problem) => problem.path)).toContain(path)
      return
    }
    throw new Error('taken')
  })
})
