// Puts small faults into the program, one at a time, and counts which of them the tests of their room notice:
// npm run build && npm run mutants -- [--count 300] [--seed 1] [--room NAME] [--workers 2] [--out REPORT.json] [--list]
import { spawn } from 'node:child_process'
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { drawSites, groupBy } from './draw.mjs'
import { findSchemaSites } from './find-schema-sites.mjs'
import { findSites, lineOf, withFault } from './find-sites.mjs'
import { importGraph, loads } from './import-graph.mjs'
import { ROOMS, roomOf, STARTS_PROGRAM, WORDED } from './rooms.mjs'

const root = fileURLToPath(new URL('../..', import.meta.url))
const { values: options } = parseArgs({
  options: {
    count: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    room: { type: 'string' },
    workers: { type: 'string', default: '2' },
    out: { type: 'string' },
    list: { type: 'boolean', default: false },
  },
})

const equivalents = JSON.parse(readFileSync(new URL('equivalents.json', import.meta.url), 'utf8'))
const isEquivalent = (site) =>
  equivalents.some((known) => known.file === site.file && known.before === site.before && known.after === site.after)

const filesIn = (folders, pattern) =>
  folders
    .flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' }).map((file) => `${folder}/${file}`),
    )
    .filter((file) => pattern.test(file))
    .toSorted()

const testFiles = filesIn(['tests'], /\.test\.ts$/)
const graph = importGraph(root, filesIn(['src', 'tests'], /\.ts$/))

function allSites() {
  const rooms = new Map()
  for (const file of filesIn(['src', 'bin', 'schemas/parts'], /\.(ts|js|yaml)$/)) {
    const room = roomOf(file)
    if (room === undefined || (options.room !== undefined && room !== options.room)) continue
    const source = readFileSync(join(root, file), 'utf8')
    const find = file.endsWith('.yaml') ? findSchemaSites : findSites
    const sites = find(file, source)
      .filter((site) => site.kind !== 'words' || WORDED.some((folder) => file.startsWith(folder)))
      .map((site) => ({ ...site, ...lineOf(source, site) }))
    rooms.set(room, [...(rooms.get(room) ?? []), ...sites.filter((site) => !isEquivalent(site))])
  }
  return rooms
}

/** A copy of the checkout in which faults can stand without harm. */
function makeCopy() {
  const copy = mkdtempSync(join(tmpdir(), 'mutants-'))
  for (const entry of [
    'src',
    'tests',
    'schemas',
    'examples',
    'bin',
    'dist',
    'package.json',
    'tsconfig.json',
    'README.md',
    'DEVELOPERS.md',
  ])
    cpSync(join(root, entry), join(copy, entry), { recursive: true })
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'))
  return copy
}

/** Runs a command to its end or to its time limit. @returns {Promise<'passed' | 'failed' | 'timed out'>} */
function run(copy, command, args, limitMs, env = {}) {
  return new Promise((done) => {
    const child = spawn(command, args, {
      cwd: copy,
      stdio: 'ignore',
      env: { ...process.env, CI: 'true', ...env },
      detached: true,
    })
    const timer = setTimeout(() => {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL')
      done('timed out')
    }, limitMs)
    child.on('close', (code) => {
      clearTimeout(timer)
      done(code === 0 ? 'passed' : 'failed')
    })
  })
}

const npm = (script) => ['npm', ['run', '--silent', script]]

/** Runs test files one after the other, until one fails. */
const runTests = (copy, files, limitMs, report = []) =>
  run(
    copy,
    join(copy, 'node_modules/.bin/vitest'),
    ['run', '--config', 'tests/mutants/vitest.config.mjs', '--bail=1', ...report, ...files],
    limitMs,
    { TEST_FILES_IN_ORDER: JSON.stringify(files) },
  )

/** Test files of a room with the time that each took without any fault, quickest first. */
const testsOf = new Map()

/** Runs all tests of a room without a fault: they must pass, and their times tell the order and the time limit. */
async function measure(copy, room) {
  const { tests, program, generate } = ROOMS[room]
  const files = testFiles.filter((file) => tests.some((start) => file.startsWith(start)))
  for (const script of [generate === true ? 'generate' : undefined, program === true ? 'bundle' : undefined])
    if (script !== undefined && (await run(copy, ...npm(script), 600_000)) !== 'passed') return false
  const report = join(copy, 'report.json')
  if ((await runTests(copy, files, 600_000, ['--reporter=json', `--outputFile=${report}`])) !== 'passed') return false
  const { testResults } = JSON.parse(readFileSync(report, 'utf8'))
  const timed = testResults.map(({ name, startTime, endTime }) => ({
    file: relative(realpathSync(copy), name),
    ms: endTime - startTime,
  }))
  testsOf.set(
    room,
    timed.toSorted((a, b) => a.ms - b.ms),
  )
  return true
}

/**
 * What the tests of a room say of the copy with a fault in it: first the test files that load the faulty file, then, with
 * the program built anew, those that start the program.
 */
async function judge(copy, { room, file: faulty }) {
  const { program, generate } = ROOMS[room]
  const timed = testsOf.get(room)
  const limitMs = 20_000 + 6 * timed.reduce((sum, { ms }) => sum + ms, 0)
  if (generate === true && (await run(copy, ...npm('generate'), limitMs)) !== 'passed') return 'failed'
  const all = timed.map(({ file }) => file)
  const starting = program === true ? all.filter((file) => loads(graph, file, STARTS_PROGRAM)) : []
  const others = all.filter((file) => !starting.includes(file) && (!graph.has(faulty) || loads(graph, file, faulty)))
  const said = others.length === 0 ? 'passed' : await runTests(copy, others, limitMs)
  if (said !== 'passed' || starting.length === 0) return said
  if ((await run(copy, ...npm('bundle'), limitMs)) !== 'passed') return 'failed'
  return runTests(copy, starting, limitMs)
}

const types = (copy) =>
  run(copy, join(copy, 'node_modules/.bin/tsc'), ['-p', 'tests/tsconfig.json', '--noEmit'], 120_000)

/** One fault, from putting it in to taking it out. */
async function tryFault(copy, site) {
  const path = join(copy, site.file)
  const source = readFileSync(path, 'utf8')
  writeFileSync(path, withFault(source, site))
  const said = await judge(copy, site)
  const outcome =
    said !== 'passed' ? 'tests' : site.file.endsWith('.ts') && (await types(copy)) !== 'passed' ? 'types' : 'unnoticed'
  writeFileSync(path, source)
  if (ROOMS[site.room].generate === true) await run(copy, ...npm('generate'), 120_000)
  return { ...site, outcome }
}

const sites = drawSites(allSites(), { seed: options.seed, count: Number(options.count) })
if (options.list) {
  for (const site of sites)
    console.log(`${site.room} ${site.file}:${site.line} ${site.kind}\n  - ${site.before}\n  + ${site.after}`)
  process.exit(0)
}

const copies = Array.from({ length: Number(options.workers) }, makeCopy)
const results = []
try {
  for (const room of new Set(sites.map((site) => site.room))) {
    if (!(await measure(copies[0], room))) throw new Error(`the tests of ${room} fail without any fault`)
  }
  const queue = [...sites]
  await Promise.all(
    copies.map(async (copy) => {
      for (let site = queue.shift(); site !== undefined; site = queue.shift()) {
        const result = await tryFault(copy, site)
        results.push(result)
        process.stderr.write(`${results.length} of ${sites.length}\r`)
        if (result.outcome === 'unnoticed')
          console.log(`unnoticed: ${site.file}:${site.line} (${site.kind})\n  - ${site.before}\n  + ${site.after}`)
      }
    }),
  )
} finally {
  for (const copy of copies) rmSync(copy, { recursive: true, force: true })
}

const noticedOf = (group) => group.filter((result) => result.outcome !== 'unnoticed').length
console.log('\nroom         faults  noticed  share (%)')
for (const [room, group] of groupBy(
  results.toSorted((a, b) => (a.room < b.room ? -1 : 1)),
  (result) => result.room,
))
  console.log(
    `${room.padEnd(12)} ${String(group.length).padStart(6)}  ${String(noticedOf(group)).padStart(7)}  ${((100 * noticedOf(group)) / group.length).toFixed(0).padStart(9)}`,
  )
console.log(
  `${'all'.padEnd(12)} ${String(results.length).padStart(6)}  ${String(noticedOf(results)).padStart(7)}  ${((100 * noticedOf(results)) / results.length).toFixed(0).padStart(9)}`,
)
if (options.out !== undefined)
  writeFileSync(
    options.out,
    JSON.stringify(
      results.map((result) => ({ ...result, rank: undefined })),
      null,
      1,
    ),
  )
