// Prints how far the monthly method (day types) is from the hourly method on the same weather files: with a symmetric day and
// the diffuse light of the correlation alone, and with the month's own morning and diffuse light.
// Usage: npm run compare:methods -- FOLDER-WITH-EPW-FILES
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseEpw } from '../../src/climate/index.js'
import { GROUPS, methodCases, summary } from './method-cases.js'

const folder = process.argv[2]
if (folder === undefined) {
  console.error('usage: npm run compare:methods -- FOLDER-WITH-EPW-FILES')
  process.exit(2)
}
const cases = readdirSync(folder)
  .filter((name) => name.endsWith('.epw'))
  .toSorted()
  .flatMap((file) => methodCases(file, parseEpw(readFileSync(join(folder, file), 'utf8')).climate, [1, 1.25, 1.5]))

console.log('| group | cases | symmetric: bias % | RMS % | largest % | now: bias % | RMS % | largest % |')
console.log('|---|---|---|---|---|---|---|---|')
for (const { name, belongs } of GROUPS) {
  const some = cases.filter(belongs)
  const figures = [some.map((one) => one.symmetric), some.map((one) => one.difference)]
    .map(summary)
    .flatMap(({ bias, rms, largest }) => [bias, rms, largest].map((value) => value.toFixed(2)))
  console.log(`| ${name} | ${some.length} | ${figures.join(' | ')} |`)
}
console.log('\n| file | tilt | azimuth | difference % at DC/AC 1.00 | 1.25 | 1.50 |\n|---|---|---|---|---|---|')
for (let index = 0; index < cases.length; index += 3) {
  const three = cases.slice(index, index + 3)
  const figures = three.map((each) => each.difference.toFixed(2)).join(' | ')
  console.log(`| ${three[0]!.file.slice(4, 28)} | ${three[0]!.tilt} | ${three[0]!.azimuth} | ${figures} |`)
}
