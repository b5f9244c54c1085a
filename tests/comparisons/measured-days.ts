// Runs the review of measured production on a measured plant: against the weather of these very hours, and against kinds of
// day. The measurements carry no licence and are not part of this project.
// Usage: node tests/comparisons/run.mjs measured-days FOLDER   with FOLDER/reunion_roof1_hourly.csv, columns as in its header:
// time at the END of the hour (UTC+4), dni_wm2, dhi_wm2, tamb_c, wind10m_ms, inv1_ac_w, inv2_ac_w.
//
// The plant: see measured-plant.ts. Source of the data: Laboratoire PIMENT, University of La Reunion, EU project TwInSolar.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { monthlyExtraterrestrialWhM2Day, type HourlyClimate, type MonthlyClimate } from '../../src/climate/index.js'
import { productionLimits, readProduction, reviewProduction, type ReviewRequest } from '../../src/fieldwork/index.js'
import type { Project } from '../../src/project/index.js'
import { cosDeg, SOLAR_CONSTANT_W_M2, sunPosition } from '../../src/sun/index.js'
import { AGE_TERM, dayTypeSteps, hourlySteps, runYield, type YieldRun } from '../../src/yield/index.js'

const folder = process.argv[2]
if (folder === undefined) {
  console.error('usage: node tests/comparisons/run.mjs measured-days FOLDER')
  process.exit(2)
}
const PLACE = { latitudeDeg: -(21 + 20 / 60), longitudeDeg: 55 + 29 / 60, elevationM: 75, utcOffsetH: 4 }
const FIRST_DAY = Date.UTC(2022, 9, 1) / 86_400_000
const DAY_OF_YEAR = 274

const [header = '', ...lines] = readFileSync(join(folder, 'reunion_roof1_hourly.csv'), 'utf8').trim().split(/\r?\n/u)
const names = header.split(',')
const column = (name: string): number[] => lines.map((line) => Number(line.split(',')[names.indexOf(name)]))
const [dni, dhi, ambient, wind] = ['dni_wm2', 'dhi_wm2', 'tamb_c', 'wind10m_ms'].map(column) as [
  number[],
  number[],
  number[],
  number[],
]
const ends = lines.map((line) => Date.parse(`${line.slice(0, 16)}:00Z`))
const begins = ends.map((end) => end - 3_600_000)
const level = dni.map((value, at) => {
  const { zenithDeg } = sunPosition(
    (begins[at] as number) + 1_800_000 - PLACE.utcOffsetH * 3_600_000,
    PLACE.latitudeDeg,
    PLACE.longitudeDeg,
  )
  return value * Math.max(0, cosDeg(zenithDeg)) + (dhi[at] as number)
})

const hours: HourlyClimate = {
  kind: 'hourly',
  name: 'measured hours',
  ...PLACE,
  length: lines.length,
  month: Uint8Array.from(begins, () => 10),
  day: Uint8Array.from(begins, (ms) => new Date(ms).getUTCDate()),
  hour: Uint8Array.from(begins, (ms) => new Date(ms).getUTCHours() + 1),
  dayOfYear: Uint16Array.from(begins, (ms) => DAY_OF_YEAR + new Date(ms).getUTCDate() - 1),
  ghiWM2: Float64Array.from(level),
  dniWM2: Float64Array.from(dni),
  dhiWM2: Float64Array.from(dhi),
  dryBulbC: Float64Array.from(ambient),
  windMs: Float64Array.from(wind),
  snowDepthCm: new Float64Array(lines.length).fill(-1),
}

/** The fortnight's own means for every month: the only "long term" at hand, so that only the spread of days is tested. */
function fortnightAsMonth(): MonthlyClimate {
  const days = lines.length / 24
  const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value)
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length
  const byDay = (pick: (...values: number[]) => number): number =>
    mean(Array.from({ length: Math.floor(days) }, (_, day) => pick(...ambient.slice(24 * day, 24 * day + 24))))
  const ghi = (24 * mean(level) * lines.length) / (24 * days)
  const outside = monthlyExtraterrestrialWhM2Day(PLACE.latitudeDeg)
  return {
    kind: 'monthly',
    name: 'means of the fortnight',
    ...PLACE,
    ghiWhM2Day: twelve(ghi),
    dhiWhM2Day: twelve(24 * mean(dhi)),
    clearness: outside.map((value) => ghi / value),
    meanC: twelve(mean(ambient)),
    meanMaxC: twelve(byDay(Math.max)),
    meanMinC: twelve(byDay(Math.min)),
    windMs: twelve(mean(wind)),
    spreadRel: 0,
    leftOutRel: 0,
    sites: [],
  }
}

function projectOf(modules: number): Project {
  return {
    format: 'gablewatt/2',
    title: 'measured plant',
    site: { latitude_deg: PLACE.latitudeDeg, longitude_deg: PLACE.longitudeDeg, utc_offset_h: 4 },
    roof_planes: { roof: { azimuth_deg: 14, tilt_deg: 9 } },
    arrays: {
      a: {
        roof_plane: 'roof',
        module: 'm',
        modules,
        mounting: 'free_rack',
        standoff_in: 12,
        strings: [{ modules, inverter_unit: 'u' }],
      },
    },
    inverter_units: { u: { inverter: 'i' } },
    equipment: {
      modules: { m: { pmax_w: 210, pmax_temp_coeff_pct_per_c: -0.45, technology: 'crystalline_silicon' } },
      inverters: { i: { kind: 'string', ac_power_w: 10_000, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0, in_use_years: 14, out_of_order_pct: 0 },
  }
}

function modelledDays(run: YieldRun): Map<number, number> {
  const sums = new Map<number, number>()
  for (let step = 0; step < run.steps.length; step += 1) {
    const day = FIRST_DAY + (run.steps.label(step).day ?? 1) - 1
    sums.set(day, (sums.get(day) ?? 0) + ((run.system.acW[step] as number) * (run.steps.hours[step] as number)) / 1000)
  }
  return sums
}

console.log(
  '| inverter | basis | days | measured kWh | modelled kWh | modelled/measured | 80 % range kWh | percentile |\n|---|---|---|---|---|---|---|---|',
)
for (const [name, modules] of [
  ['inv1_ac_w', 54],
  ['inv2_ac_w', 36],
] as const) {
  const project = projectOf(modules)
  const monthly = fortnightAsMonth()
  const run = runYield(project, new Map(), { climate: monthly, steps: dayTypeSteps(monthly, SOLAR_CONSTANT_W_M2) })
  const hourly = runYield(project, new Map(), { climate: hours, steps: hourlySteps(hours, SOLAR_CONSTANT_W_M2) })
  const terms = hourly.result.values.uncertainty.filter(({ term, lasts }) => lasts && term !== AGE_TERM)
  const spread = Math.sqrt(terms.reduce((sum, term) => sum + (term.percent / 100) ** 2, 0))
  const table = `time,ac_w\n${lines.map((line) => `${line.slice(0, 16)},${line.split(',')[names.indexOf(name)] ?? ''}`).join('\n')}\n`
  const read = readProduction(
    'reunion_roof1_hourly.csv',
    table,
    { clock: 'standard', stamps_mark: 'ending' },
    productionLimits(project, run),
  )
  if (read.series === undefined) throw new Error(read.problems.map((problem) => problem.message).join('\n'))
  const { series } = read
  const bases: readonly (readonly [string, Partial<ReviewRequest>])[] = [
    ['weather of these hours', { weather: { kwhByDay: modelledDays(hourly), spread, name: 'measured hours' } }],
    ['kinds of day of the fortnight', {}],
  ]
  for (const [basis, extra] of bases) {
    const { values, findings } = reviewProduction({ project, run, series, ...extra })
    const { expected, period } = values
    console.log(
      `| ${name} | ${basis} | ${period.days_counted} | ${values.measured_kwh.toFixed(1)} | ${expected.mean_kwh.toFixed(1)} | ${(expected.mean_kwh / values.measured_kwh).toFixed(3)} | ${expected.p10_kwh.toFixed(0)} to ${expected.p90_kwh.toFixed(0)} | ${values.percentile.toFixed(0)} |`,
    )
    for (const finding of findings) console.log(`|  | ${finding.id}: ${finding.message} |  |  |  |  |  |  |`)
  }
}
