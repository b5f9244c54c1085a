// Puts small faults into the program, one at a time, and counts which of them the tests of their room notice:
// npm run build && npm run mutants -- [--count 300] [--seed 1] [--room NAME] [--workers 2] [--out REPORT.json] [--list]
//   [--timed VITEST.json]: durations of a run of all tests that passed, instead of running them first
//   [--least PERCENT]: fail when a smaller share is noticed
import { fork, spawn } from 'node:child_process'
import { once } from 'node:events'
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
    timed: { type: 'string' },
    least: { type: 'string', default: '0' },
  },
})

/** Durations of a run of all tests, by file, ms. */
const known =
  options.timed === undefined
    ? undefined
    : new Map(
        JSON.parse(readFileSync(options.timed, 'utf8')).testResults.map(({ name, startTime, endTime }) => [
          relative(root, name),
          endTime - startTime,
        ]),
      )

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
  const copy = realpathSync(mkdtempSync(join(tmpdir(), 'mutants-')))
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

/** The runner that is kept alive for a copy, by the copy. */
const runners = new Map()

async function runnerOf(copy) {
  const kept = runners.get(copy)
  if (kept !== undefined) return kept
  const child = fork(join(copy, 'tests/mutants/kept-vitest.mjs'), {
    cwd: copy,
    stdio: 'ignore',
    env: { ...process.env, CI: 'true' },
    detached: true,
  })
  await once(child, 'message')
  runners.set(copy, child)
  return child
}

function endRunner(copy) {
  const child = runners.get(copy)
  runners.delete(copy)
  if (child?.pid !== undefined) process.kill(-child.pid, 'SIGKILL')
}

/** Files of a copy that were written since its runner last looked. */
const changedIn = new Map()

/** Runs test files one after the other, until one fails. */
async function runTests(copy, files, limitMs) {
  const child = await runnerOf(copy)
  const ended = new AbortController()
  const timer = setTimeout(() => ended.abort(), limitMs)
  try {
    child.send({ files, changed: [...(changedIn.get(copy) ?? [])] })
    changedIn.delete(copy)
    const [{ passed, times }] = await once(child, 'message', { signal: ended.signal })
    return { said: passed ? 'passed' : 'failed', times }
  } catch (error) {
    if (!ended.signal.aborted) throw error
    endRunner(copy)
    return { said: 'timed out', times: [] }
  } finally {
    clearTimeout(timer)
  }
}

function writeIn(copy, file, text) {
  writeFileSync(join(copy, file), text)
  changedIn.set(copy, (changedIn.get(copy) ?? new Set()).add(file))
}

/** Test files of a room with the time that each took without any fault, quickest first. */
const testsOf = new Map()

/** Runs all tests of a room without a fault: they must pass, and their times tell the order and the time limit. */
async function measure(copy, room) {
  const { tests, program, generate } = ROOMS[room]
  const files = testFiles.filter((file) => tests.some((start) => file.startsWith(start)))
  if (known !== undefined) {
    testsOf.set(
      room,
      files.map((file) => ({ file, ms: known.get(file) ?? 60_000 })).toSorted((a, b) => a.ms - b.ms),
    )
    return true
  }
  for (const script of [generate === true ? 'generate' : undefined, program === true ? 'bundle' : undefined])
    if (script !== undefined && (await run(copy, ...npm(script), 600_000)) !== 'passed') return false
  // The first run loads everything; the second tells what a fault will cost.
  await runTests(copy, files, 600_000)
  const { said, times: timed } = await runTests(copy, files, 600_000)
  if (said !== 'passed') return false
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
  // What was generated anew is many files: a new runner reads them all.
  if (generate === true) endRunner(copy)
  const all = timed.map(({ file }) => file)
  const starting = program === true ? all.filter((file) => loads(graph, file, STARTS_PROGRAM)) : []
  const others = all.filter((file) => !starting.includes(file) && (!graph.has(faulty) || loads(graph, file, faulty)))
  const said = others.length === 0 ? 'passed' : (await runTests(copy, others, limitMs)).said
  if (said !== 'passed' || starting.length === 0) return said
  if ((await run(copy, ...npm('bundle'), limitMs)) !== 'passed') return 'failed'
  return (await runTests(copy, starting, limitMs)).said
}

const types = (copy) =>
  run(copy, join(copy, 'node_modules/.bin/tsc'), ['-p', 'tests/tsconfig.json', '--noEmit'], 120_000)

/** One fault, from putting it in to taking it out. */
async function tryFault(copy, site) {
  const source = readFileSync(join(copy, site.file), 'utf8')
  writeIn(copy, site.file, withFault(source, site))
  const said = await judge(copy, site)
  const outcome =
    said !== 'passed' ? 'tests' : site.file.endsWith('.ts') && (await types(copy)) !== 'passed' ? 'types' : 'unnoticed'
  writeIn(copy, site.file, source)
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
  for (const copy of copies) endRunner(copy)
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

const sharePct = (100 * noticedOf(results)) / results.length
if (sharePct < Number(options.least)) {
  console.log(`\n${sharePct.toFixed(0)} % noticed, less than ${options.least} %`)
  process.exitCode = 1
}
