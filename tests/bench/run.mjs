// Times of the hot loops and of starts, as ratios: npm run build && npm run bench
// -- --fleet adds a thousand houses that differ in roof, use and price too, plain and with a chimney, a tree and a neighbour;
// -- --growth a thousand and ten thousand plain ones, with the memory along the way (Linux).
import { spawn, spawnSync } from 'node:child_process'
import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { FLEET_STAGES, workOut } from '../../dist/fleet/index.js'
import { parseEpw, siteClimate } from '../../dist/climate/index.js'
import { SOLAR_CONSTANT_W_M2 } from '../../dist/sun/index.js'
import { Worksheet } from '../../dist/worksheet/index.js'
import { dayTypeSteps, hourlySteps, runYield } from '../../dist/yield/index.js'
import { runTyped } from '../run-typed.mjs'
import { SHADE } from './shade.mjs'

const root = fileURLToPath(new URL('../..', import.meta.url))
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]

/** Wall time of a process, ms. */
function startMs(args) {
  const begin = performance.now()
  spawnSync(process.execPath, args, { cwd: root, stdio: 'ignore' })
  return performance.now() - begin
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

const starts = {
  '--version': ['--version'],
  'estimate-yield, built-in climate': ['estimate-yield', 'tests/bench/plain-house.yaml'],
  'estimate-yield, built-in climate, as JSON': ['estimate-yield', 'tests/bench/plain-house.yaml', '--json'],
  'estimate-yield, 20 modules with shade': ['estimate-yield', 'examples/lark-hollow.yaml'],
  'check-project': ['check-project', 'tests/bench/plain-house.yaml'],
  'check-project, the demo house': ['check-project', 'examples/lark-hollow.yaml'],
}
console.log('| start | ms | of node -e 0 | least |\n|---|---|---|---|')
// In turns, so that what else the machine does falls on all alike.
const times = Object.fromEntries(['node -e 0', ...Object.keys(starts)].map((name) => [name, []]))
for (let run = 0; run < 20; run += 1) {
  for (const name of Object.keys(times)) {
    times[name].push(startMs(name in starts ? ['bin/gablewatt.js', ...starts[name]] : ['-e', '0']))
  }
}
const bare = times['node -e 0']
for (const [name, own] of Object.entries(times)) {
  const least = Math.min(...own) / Math.min(...bare)
  const ms = median(own)
  console.log(`| ${name} | ${ms.toFixed(0)} | ${(ms / median(bare)).toFixed(2)} | ${least.toFixed(2)} |`)
}

/** A start on a table of ten years of five minutes: processor time, s, and most memory, MB. */
function longTable() {
  const folder = mkdtempSync(join(tmpdir(), 'bench-long-'))
  const rows = ['time,kWh']
  for (let at = 0; at < 3650 * 288; at += 1) {
    const ms = Date.UTC(2016, 0, 1) + at * 300_000
    const kwh = Math.max(0, 0.4 * Math.cos((((ms / 3_600_000) % 24) / 12 - 1) * Math.PI))
    rows.push(
      `${new Date(ms).toISOString().slice(0, 16).replace('T', ' ')},${(kwh * (0.5 + 0.5 * Math.abs(Math.sin(at / 900)))).toFixed(4)}`,
    )
  }
  writeFileSync(join(folder, 'p.csv'), rows.join('\n'))
  writeFileSync(
    join(folder, 'told.cjs'),
    "process.on('exit', () => { const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage(); process.stderr.write(`told ${userCPUTime + systemCPUTime} ${maxRSS}`) })",
  )
  const args = ['-r', join(folder, 'told.cjs'), 'bin/gablewatt.js', 'review-output', 'examples/lark-hollow.yaml']
  const { stderr } = spawnSync(process.execPath, [...args, join(folder, 'p.csv')], { cwd: root, encoding: 'utf8' })
  rmSync(folder, { recursive: true })
  const [, microseconds, kilobytes] = /told (\d+) (\d+)/u.exec(stderr)
  return { seconds: microseconds / 1e6, megabytes: kilobytes / 1000 }
}
const long = longTable()
console.log(
  `\nreview-output, ten years of five minutes: ${long.seconds.toFixed(1)} s of processor time (aim 3), ${long.megabytes.toFixed(0)} MB (aim 300)\n`,
)

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
/** Arguments of a run of so many houses. */
const fleetOf = (file, headings, row, count, more = []) => {
  const rows = Array.from({ length: count }, (_, index) => [`h${index}`, ...row(index)].join(','))
  writeFileSync(join(scratch, 'houses.csv'), `id,${headings}\n${rows.join('\n')}\n`)
  const args = ['run-fleet', file, '--table', join(scratch, 'houses.csv'), '--jobs', '2', '--jsonl', '--quiet', ...more]
  return ['bin/gablewatt.js', ...args]
}
const runFleet = (says, file, headings, row, more = []) => {
  console.log(`| 1000 houses, ${says}, 2 workers | ${startMs(fleetOf(file, headings, row, 1000, more)).toFixed(0)} |`)
}
/** A run, with its memory about twenty times along the way, MB. */
const watched = async (args) => {
  const begin = performance.now()
  const child = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] })
  let lines = 0
  child.stdout.on('data', (chunk) => (lines += chunk.toString().split('\n').length - 1))
  const seen = []
  const clock = setInterval(() => {
    try {
      const [, kilobytes] = /VmRSS:\s+(\d+)/u.exec(readFileSync(`/proc/${child.pid}/status`, 'utf8'))
      seen.push([lines, Number(kilobytes) / 1000])
    } catch {
      // It has just ended.
    }
  }, 500)
  await new Promise((resolve) => child.on('close', resolve))
  clearInterval(clock)
  const step = Math.max(1, Math.floor(seen.length / 20))
  return { seconds: (performance.now() - begin) / 1000, curve: seen.filter((_, index) => index % step === 0) }
}
const place = (index) => [(39 + (index % 50) / 25).toFixed(2), (-90 + (index % 37) / 20).toFixed(2)]
const places = 'site.latitude_deg,site.longitude_deg'
runFleet('all stages', template, places, place)
runFleet('yield and wiring', template, places, place, ['--stages', 'yield,wire'])
const FIELDS = `${places},roof_planes.south.azimuth_deg,roof_planes.south.pitch_in_12,arrays.main.modules,usage.annual_kwh,finance.installed_cost_usd`
const fields = (i) => [
  ...place(i),
  165 + (i % 30),
  5 + (i % 4),
  10 + (i % 5),
  8000 + 4 * (i % 1000),
  13000 + 5 * (i % 1000),
]
const folder = fileURLToPath(new URL('../../examples/fleet', import.meta.url))
for (const name of ['equipment.yaml', 'letter-rafters.pdf']) copyFileSync(join(folder, name), join(scratch, name))
const plain = readFileSync(template, 'utf8')
writeFileSync(join(scratch, 'plain.yaml'), plain)
if (process.argv.includes('--fleet')) {
  const shaded = plain
    .replace(/^ {2}elevation_ft: .*$/mu, `$&\n${SHADE.tree}`)
    .replace(/^ {4}edge_clearance_in: .*$/mu, `$&\n${SHADE.chimney}`)
  writeFileSync(join(scratch, 'shaded.yaml'), `${shaded}${SHADE.neighbour}`)
  for (const name of ['plain', 'shaded'])
    runFleet(`all stages, roofs, use and prices differ, ${name}`, join(scratch, `${name}.yaml`), FIELDS, fields)
}
if (process.argv.includes('--growth')) {
  const seconds = []
  for (const count of [1000, 10_000]) {
    const run = await watched(fleetOf(join(scratch, 'plain.yaml'), FIELDS, fields, count))
    seconds.push(run.seconds)
    const curve = run.curve.map(([houses, megabytes]) => `${houses}: ${megabytes.toFixed(0)}`).join(', ')
    console.log(`| ${count} houses, 2 workers | ${(1000 * run.seconds).toFixed(0)} |`)
    console.log(`\nmemory, houses done: MB: ${curve}\n`)
  }
  console.log(`\ngrowth from 1000 to 10000 houses: ${(seconds[1] / seconds[0]).toFixed(2)} times\n`)
}
rmSync(scratch, { recursive: true })

process.exitCode = await runTyped(fileURLToPath(new URL('kernel.ts', import.meta.url)), [])
