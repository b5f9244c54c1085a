// Prints how far the monthly method (day types) is from the hourly method on the same weather files: with a symmetric day and
// the diffuse light of the correlation alone, and with the month's own morning and diffuse light.
// Usage: npm run compare:methods -- FOLDER-WITH-EPW-FILES
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { monthlyFromHourly, parseEpw } from '../../src/climate/index.js'
import type { Project } from '../../src/project/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../src/sun/index.js'
import { dayTypeSteps, hourlySteps, runYield } from '../../src/yield/index.js'

interface Case {
  readonly file: string
  readonly tilt: number
  readonly azimuth: number
  readonly ratio: number
  /** Monthly less hourly method, percent of the year: with the month's own morning and diffuse light, and without. */
  readonly difference: number
  readonly symmetric: number
}

const folder = process.argv[2]
if (folder === undefined) {
  console.error('usage: npm run compare:methods -- FOLDER-WITH-EPW-FILES')
  process.exit(2)
}

function projectOf(tilt: number, azimuth: number, ratio: number): Project {
  return {
    format: 'gablewatt/2',
    title: 'comparison of methods',
    site: { latitude_deg: 40, longitude_deg: -100 },
    roof_planes: { p: { azimuth_deg: azimuth, tilt_deg: tilt } },
    arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 10, mounting: 'near_roof', standoff_in: 4 } },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 400 / ratio, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0 },
  }
}

const cases: Case[] = []
for (const file of readdirSync(folder)
  .filter((name) => name.endsWith('.epw'))
  .toSorted()) {
  const { climate } = parseEpw(readFileSync(join(folder, file), 'utf8'))
  const means = monthlyFromHourly(climate)
  const hours = { climate, steps: hourlySteps(climate, SOLAR_CONSTANT_W_M2) }
  const days = { climate: means, steps: dayTypeSteps(means, SOLAR_CONSTANT_W_M2) }
  const plain = { ...means, morning: undefined }
  const even = { climate: plain, steps: dayTypeSteps(plain, SOLAR_CONSTANT_W_M2, 'correlation') }
  for (const tilt of [0, 18, 34, 60]) {
    for (const azimuth of [90, 135, 180, 225, 270]) {
      for (const ratio of [1, 1.25, 1.5]) {
        const project = projectOf(tilt, azimuth, ratio)
        const hourly = runYield(project, new Map(), hours).result.values.annual.ac_kwh
        const monthly = runYield(project, new Map(), days).result.values.annual.ac_kwh
        const before = runYield(project, new Map(), even).result.values.annual.ac_kwh
        const [difference, symmetric] = [100 * (monthly / hourly - 1), 100 * (before / hourly - 1)]
        cases.push({ file, tilt, azimuth, ratio, difference, symmetric })
      }
    }
  }
}

const isSouth = (one: Case): boolean => one.azimuth >= 135 && one.azimuth <= 225
const groups: readonly (readonly [string, (one: Case) => boolean])[] = [
  ['azimuth 135 to 225, tilt <= 34', (one) => one.tilt <= 34 && isSouth(one)],
  ['azimuth 90 and 270, tilt 18 and 34', (one) => one.tilt > 0 && one.tilt <= 34 && !isSouth(one)],
  ['azimuth 135 to 225, tilt 60', (one) => one.tilt === 60 && isSouth(one)],
  ['azimuth 90 and 270, tilt 60', (one) => one.tilt === 60 && !isSouth(one)],
]
console.log('| group | cases | symmetric: bias % | RMS % | largest % | now: bias % | RMS % | largest % |')
console.log('|---|---|---|---|---|---|---|---|')
for (const [name, belongs] of groups) {
  const some = cases.filter(belongs)
  const figures = [some.map((one) => one.symmetric), some.map((one) => one.difference)].flatMap(summary)
  console.log(`| ${name} | ${some.length} | ${figures.join(' | ')} |`)
}
console.log('\n| file | tilt | azimuth | difference % at DC/AC 1.00 | 1.25 | 1.50 |\n|---|---|---|---|---|---|')
for (let index = 0; index < cases.length; index += 3) {
  const [one, two, three] = cases.slice(index, index + 3) as [Case, Case, Case]
  const name = one.file.slice(4, 28)
  const figures = [one, two, three].map((each) => each.difference.toFixed(2)).join(' | ')
  console.log(`| ${name} | ${one.tilt} | ${one.azimuth} | ${figures} |`)
}

/** Bias, root mean square and largest of some differences. */
function summary(differences: readonly number[]): string[] {
  const bias = differences.reduce((sum, value) => sum + value, 0) / differences.length
  const rms = Math.sqrt(differences.reduce((sum, value) => sum + value * value, 0) / differences.length)
  return [bias, rms, Math.max(...differences.map(Math.abs))].map((value) => value.toFixed(2))
}
