// Times of the hot loops and of starts, as ratios: npm run build && npm run bench
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { FLEET_STAGES, workOut } from '../../dist/fleet/index.js'
import { parseEpw, siteClimate } from '../../dist/climate/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../dist/sun/index.js'
import { Worksheet } from '../../dist/worksheet/index.js'
import { arrayDc } from '../../dist/yield/array-dc.js'
import { arrayLight } from '../../dist/yield/array-light.js'
import { planArray } from '../../dist/yield/array-plan.js'
import { cellTemperatureModel, inverterModels, moduleModel } from '../../dist/yield/equipment-models.js'
import { buildScene } from '../../dist/scene/index.js'
import { seriesCurve } from '../../dist/yield/series/index.js'
import { dayTypeSteps, hourlySteps, runYield } from '../../dist/yield/index.js'
import { lossSettings, modelSettings } from '../../dist/yield/settings.js'
import { skyLight } from '../../dist/yield/sky-light.js'
import { systemAc } from '../../dist/yield/system-ac.js'

const root = fileURLToPath(new URL('../..', import.meta.url))
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]

/** Wall time of a process, ms: median of `runs`. */
function startMs(args, runs = 20) {
  const times = Array.from({ length: runs + 1 }, () => {
    const begin = performance.now()
    spawnSync(process.execPath, args, { cwd: root, stdio: 'ignore' })
    return performance.now() - begin
  })
  return median(times.slice(1))
}

/** Time of a call when warm, ms: median of `runs`. */
function warmMs(work, runs = 60) {
  for (let run = 0; run < 20; run += 1) work()
  return median(
    Array.from({ length: runs }, () => {
      const begin = performance.now()
      work()
      return performance.now() - begin
    }),
  )
}

const bare = startMs(['-e', '0'])
const starts = {
  '--version': ['--version'],
  'estimate-yield, built-in climate': ['estimate-yield', 'tests/bench/plain-house.yaml'],
  'estimate-yield, built-in climate, as JSON': ['estimate-yield', 'tests/bench/plain-house.yaml', '--json'],
  'estimate-yield, 20 modules with shade': ['estimate-yield', 'examples/lark-hollow.yaml'],
  'check-project': ['check-project', 'tests/bench/plain-house.yaml'],
}
console.log('| start | ms | of node -e 0 |\n|---|---|---|')
console.log(`| node -e 0 | ${bare.toFixed(0)} | 1.00 |`)
for (const [name, args] of Object.entries(starts)) {
  const ms = startMs(['bin/gablewatt.js', ...args])
  console.log(`| ${name} | ${ms.toFixed(0)} | ${(ms / bare).toFixed(2)} |`)
}

const house = {
  format: 'gablewatt/2',
  title: 'bench',
  site: { latitude_deg: 47.46, longitude_deg: -122.31 },
  roof_planes: { p: { azimuth_deg: 200, tilt_deg: 30 } },
  arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 12, mounting: 'near_roof', standoff_in: 4 } },
  equipment: {
    modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, efficiency_at_200_pct: 97 } },
    inverters: { i: { kind: 'module_level', ac_power_w: 350, weighted_efficiency_pct: 97 } },
  },
  losses: { snow_pct: 0 },
}
const text = readFileSync(
  new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url),
  'utf8',
)
const { climate } = parseEpw(text)
const hours = { climate, steps: hourlySteps(climate, SOLAR_CONSTANT_W_M2) }
const table = siteClimate(house.site, undefined, new Worksheet())
const days = { climate: table, steps: dayTypeSteps(table, SOLAR_CONSTANT_W_M2) }
console.log('\n| work, warm | ms |\n|---|---|')
for (const [name, work] of Object.entries({
  'read a weather file of 8760 hours': () => parseEpw(text),
  'sun of 8760 hours': () => hourlySteps(climate, SOLAR_CONSTANT_W_M2),
  'estimate of a year of hours, one plane': () => runYield(house, new Map(), hours),
  'built-in climate and its day types': () => dayTypeSteps(siteClimate(house.site, undefined, new Worksheet()), 1361.1),
  'estimate of day types, one plane': () => runYield(house, new Map(), days),
})) {
  console.log(`| ${name} | ${warmMs(work).toFixed(2)} |`)
}

// All stages of a house that differs from the last in its place, as a fleet works them out, and many of them.
const template = join(root, 'examples/fleet/template.yaml')
const plan = { tool: 'bench', stages: undefined, allowOutside: false, outputFolder: undefined, write: [], force: false }
const spent = {}
for (const stage of FLEET_STAGES) {
  const { run } = stage
  stage.run = async (...args) => {
    const begin = performance.now()
    const report = await run(...args)
    ;(spent[stage.name] ??= []).push(performance.now() - begin)
    return report
  }
}
const whole = []
for (let index = 0; index < 150; index += 1) {
  const overrides = [`site.latitude_deg=${(37 + index / 50).toFixed(2)}`]
  const begin = performance.now()
  await workOut({ index, name: `house-${index}`, path: template, overrides }, plan)
  whole.push(performance.now() - begin)
}
const late = (times) => median(times.slice(75)).toFixed(1)
const parts = Object.entries(spent).map(([name, times]) => `${name} ${late(times)}`)
console.log(`| all stages of a house (${parts.join(', ')}) | ${late(whole)} |`)
const scratch = mkdtempSync(join(tmpdir(), 'gablewatt-bench-'))
const rows = Array.from(
  { length: 1000 },
  (_, i) => `h${i},${(39 + (i % 50) / 25).toFixed(2)},${(-90 + (i % 37) / 20).toFixed(2)}`,
)
writeFileSync(join(scratch, 'houses.csv'), `id,site.latitude_deg,site.longitude_deg\n${rows.join('\n')}\n`)
const fleet = ['run-fleet', template, '--table', join(scratch, 'houses.csv'), '--jobs', '2', '--jsonl']
const fleets = { 'all stages': [], 'yield and wiring': ['--stages', 'yield,wire'] }
for (const [says, more] of Object.entries(fleets)) {
  const begin = performance.now()
  spawnSync(process.execPath, ['bin/gablewatt.js', ...fleet, ...more, '--quiet'], { cwd: root, stdio: 'ignore' })
  console.log(`| 1000 houses, ${says}, 2 workers | ${(performance.now() - begin).toFixed(0)} |`)
}
rmSync(scratch, { recursive: true })

// The hourly kernel, sun to AC, against the same equations in C, where there is a C compiler. Best of many, as C's.
const sheet = new Worksheet()
const settings = modelSettings(house, sheet)
const losses = lossSettings(house.losses, 'module_level', sheet)
const arrayPlan = planArray(house, 'a', [], buildScene(house, []))
const models = {
  settings,
  losses,
  module: moduleModel(arrayPlan, sheet),
  temperature: cellTemperatureModel(house, arrayPlan, 'by_mounting', sheet),
  comparedRiseKPerWM2: 0.03,
  snow: undefined,
  curve: seriesCurve(arrayPlan.module, 'equipment.modules.m', sheet),
}
const inverters = inverterModels(house, [arrayPlan], sheet)
let kernelMs = Infinity
for (let run = 0; run < 300; run += 1) {
  const begin = performance.now()
  const steps = hourlySteps(climate, SOLAR_CONSTANT_W_M2)
  const lit = arrayLight(steps, skyLight(steps, settings.sky), arrayPlan, settings)
  systemAc(steps, [arrayDc(steps, lit, models)], inverters, settings, losses)
  kernelMs = Math.min(kernelMs, performance.now() - begin)
}
console.log(`| the hourly kernel, sun to AC (best of 300) | ${kernelMs.toFixed(2)} |`)
const folder = mkdtempSync(join(tmpdir(), 'gablewatt-bench-'))
const built = spawnSync('cc', ['-O2', '-o', join(folder, 'yardstick'), 'tests/bench/yardstick.c', '-lm'], { cwd: root })
if (built.status === 0) {
  const file = 'examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw'
  const { stdout } = spawnSync(join(folder, 'yardstick'), [file], { cwd: root, encoding: 'utf8' })
  const yardMs = Number(stdout.split(' ')[0])
  console.log(
    `| the same in C, -O2 (best of 200) | ${yardMs.toFixed(2)} |\n\nkernel over C: ${(kernelMs / yardMs).toFixed(2)}`,
  )
} else console.log('\nno C compiler, no yardstick')
rmSync(folder, { recursive: true })
