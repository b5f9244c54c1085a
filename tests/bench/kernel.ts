/** The hourly kernel, sun to AC, against the same equations in C, where there is a C compiler. Best of many, as C's. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseEpw } from '../../src/climate/index.js'
import type { Project } from '../../src/project/index.js'
import { buildScene } from '../../src/scene/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../src/sun/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { arrayDc } from '../../src/yield/array-dc.js'
import { arrayLight } from '../../src/yield/array-light.js'
import { planArray } from '../../src/yield/array-plan.js'
import { cellTemperatureModel, inverterModels, moduleModel } from '../../src/yield/equipment-models.js'
import { hourlySteps } from '../../src/yield/index.js'
import { seriesCurve } from '../../src/yield/series/index.js'
import { lossSettings, modelSettings } from '../../src/yield/settings.js'
import { skyLight } from '../../src/yield/sky-light.js'
import { systemAc } from '../../src/yield/system-ac.js'

const WEATHER = 'examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw'
const RUNS = 300

/** The house of yardstick.c (invented). */
const house: Project = {
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

const { climate } = parseEpw(readFileSync(WEATHER, 'utf8'))
const sheet = new Worksheet()
const settings = modelSettings(house, sheet)
const losses = lossSettings(house.losses, 'module_level', 0, sheet)
const plan = planArray(house, 'a', [], buildScene(house, []))
const models = {
  settings,
  losses,
  module: moduleModel(plan, sheet),
  temperature: cellTemperatureModel(house, plan, 'by_mounting', sheet),
  comparedRiseKPerWM2: 0.03,
  snow: undefined,
  curve: seriesCurve(plan.module, 'equipment.modules.m', sheet),
}
const inverters = inverterModels(house, [plan], sheet)
let kernelMs = Infinity
for (let run = 0; run < RUNS; run += 1) {
  const begin = performance.now()
  const steps = hourlySteps(climate, SOLAR_CONSTANT_W_M2)
  const lit = arrayLight(steps, skyLight(steps, settings.sky), plan, settings)
  systemAc(steps, [arrayDc(steps, lit, models)], inverters, settings, losses)
  kernelMs = Math.min(kernelMs, performance.now() - begin)
}
console.log(`| the hourly kernel, sun to AC (best of ${RUNS}) | ${kernelMs.toFixed(2)} |`)

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-bench-'))
const built = spawnSync('cc', ['-O2', '-o', join(folder, 'yardstick'), 'tests/bench/yardstick.c', '-lm'])
if (built.status === 0) {
  const { stdout } = spawnSync(join(folder, 'yardstick'), [WEATHER], { encoding: 'utf8' })
  const yardMs = Number(stdout.split(' ')[0])
  console.log(`| the same in C, -O2 (best of 200) | ${yardMs.toFixed(2)} |\n`)
  console.log(`kernel over C: ${(kernelMs / yardMs).toFixed(2)}`)
} else console.log('\nno C compiler, no yardstick')
rmSync(folder, { recursive: true })
