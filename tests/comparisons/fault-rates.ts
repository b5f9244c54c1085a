// How often the review of measured production finds simulated faults, and how often it finds some in healthy years.
// Usage: npm run compare:faults -- [--count 2000] [--faults 100] [--seed 1] [--weather 0] [FILE.epw ...]
// Weather: hourly files (examples/weather when none is named), years by drawing blocks of their days anew, see simulated-year.ts; the
// review knows only the kinds of day of the built-in climate.
import { readdirSync } from 'node:fs'
import { simulatedFaults } from '../fieldwork/simulated-faults.js'
import {
  daySums,
  modelledHours,
  plantOf,
  seriesOfHours,
  simulatedYears,
  type SimulatedFault,
} from '../fieldwork/simulated-year.js'
import { signsOf } from '../fieldwork/review-simulated.js'

const options = new Map([
  ['--count', 2000],
  ['--faults', 100],
  ['--seed', 1],
  // 1: the review also has the weather of the very days, with errors.
  ['--weather', 0],
])
const named: string[] = []
for (let at = 2; at < process.argv.length; at += 1) {
  const word = process.argv[at] as string
  const value = Number(process.argv[at + 1])
  if (!options.has(word)) named.push(word)
  else if (Number.isInteger(value) && value >= 0) options.set(word, (at += 1) && value)
  else {
    console.error(`${word} wants a whole number, not ${process.argv[at + 1] ?? 'nothing'}`)
    process.exit(2)
  }
}
const count = options.get('--count') as number
const faults = options.get('--faults') as number
const seed = options.get('--seed') as number
const isWeatherKnown = options.get('--weather') === 1
const files =
  named.length > 0
    ? named
    : readdirSync('examples/weather')
        .filter((name) => name.endsWith('.epw'))
        .map((name) => `examples/weather/${name}`)

/** Data slips and limits as designed are no alarm of a fault; snow says itself that it may be snow. */
const HARMLESS = new Set(['snow', 'clipping'])

for (const file of files) {
  const plant = plantOf(file, 'examples/lark-hollow.yaml')
  const signs = signsOf(plant)
  const look = (own: number, resolution: 'interval' | 'day', fault?: SimulatedFault) => {
    const { hourKwh, weatherKwh } = simulatedYears(plant, 1, own)
    const modelled = isWeatherKnown ? daySums(modelledHours(weatherKwh, 7_000_000 + own)) : undefined
    return signs(seriesOfHours(hourKwh, resolution, fault), modelled).signs
  }
  console.log(`\n## ${plant.name}, seed ${seed}, weather of the days ${isWeatherKnown ? 'known' : 'not known'}\n`)
  const alarms = new Map<string, number>()
  let [any, sure] = [0, 0]
  for (let year = 0; year < count; year += 1) {
    const found = look(seed + year, 'interval').filter(({ kind }) => !HARMLESS.has(kind))
    if (found.length > 0) any += 1
    if (found.some(({ probability }) => probability >= 0.99)) sure += 1
    for (const kind of new Set(found.map((each) => each.kind))) alarms.set(kind, (alarms.get(kind) ?? 0) + 1)
    if (process.env['SHOW'] !== undefined)
      for (const each of found)
        console.log(year, each.kind, each.fromDay - 20089, each.toDay - 20089, each.probability.toFixed(3), each.says)
  }
  const share = (part: number, whole: number): string => `${((100 * part) / Math.max(1, whole)).toFixed(2)} %`
  console.log('| healthy years | with a sign | with a sure one | by kind |\n|---|---|---|---|')
  const kinds = [...alarms].map(([kind, times]) => `${kind} ${share(times, count)}`).join(', ')
  console.log(`| ${count} | ${share(any, count)} | ${share(sure, count)} | ${kinds} |`)
  console.log('\n| fault | size | readings | found | sure | as |\n|---|---|---|---|---|---|')
  for (const [place, { kind, size, needs, finds }] of simulatedFaults(0).entries()) {
    const as = new Map<string, number>()
    let [hits, sureHits] = [0, 0]
    for (let at = 0; at < faults; at += 1) {
      const start = 5 + Math.floor((at * 245) / Math.max(1, faults - 1))
      const fault = simulatedFaults(start)[place]!
      const found = look(100_000 + seed + at, needs, fault)
      const fitting = found.filter((sign) => finds.includes(sign.kind))
      if (fitting.length > 0) hits += 1
      if (fitting.some(({ probability }) => probability >= 0.99)) sureHits += 1
      for (const one of new Set(fitting.map((sign) => sign.kind))) as.set(one, (as.get(one) ?? 0) + 1)
    }
    console.log(
      `| ${kind} | ${size} | ${needs === 'day' ? 'days' : 'hours'} | ${share(hits, faults)} | ${share(sureHits, faults)} | ${[...as].map(([one, times]) => `${one} ${times}`).join(', ')} |`,
    )
  }
}
