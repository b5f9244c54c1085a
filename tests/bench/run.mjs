// Times of the hot loops and of starts, as ratios: npm run build && npm run bench
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseEpw, siteClimate } from '../../dist/climate/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../dist/sun/index.js'
import { Worksheet } from '../../dist/worksheet/index.js'
import { dayTypeSteps, hourlySteps, runYield } from '../../dist/yield/index.js'

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
  format: 'gablewatt/1',
  title: 'bench',
  site: { latitude_deg: 47.46, longitude_deg: -122.31 },
  roof_planes: { p: { azimuth_deg: 200, tilt_deg: 30 } },
  arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 12, mounting: 'close_roof', standoff_in: 4 } },
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
