/**
 * Throws damaged and made-up inputs at the program: `node tests/fuzz/run.mjs [--count N] [--seed N] [--only INDEX] [--jobs N] [--binary N] [--damaged-forms N] [--kinds earlier,journal] [--save FOLDER] [--light]`.
 * `--light` leaves the permit packet out, which takes as long as thirty other runs, and makes slow kinds less often.
 * Nothing may end with another code than 0, 1, 2 or 3, show a stack, print NaN, leave half a file, take more than 5 s of CPU (a packet 15) or grow without end.
 */
import { fork, spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { makeCase, SOUND } from './cases.mjs'
import { startDamaged } from './damaged-forms.mjs'
import { judge } from './judge.mjs'
import { lay, written } from './lay.mjs'
import { doorsOf, openedBy } from './opened.mjs'
import { HERE, JOURNAL_RUN, JOURNAL_TABLE, journalIn } from './written.mjs'

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '2000' },
    seed: { type: 'string', default: String(Date.now() % 1_000_000) },
    only: { type: 'string' },
    jobs: { type: 'string', default: '2' },
    binary: { type: 'string', default: '0' },
    'damaged-forms': { type: 'string', default: '0' },
    kinds: { type: 'string' },
    save: { type: 'string' },
    light: { type: 'boolean', default: false },
  },
})
const seed = Number(values.seed)
const root = fileURLToPath(new URL('../..', import.meta.url))
const work = realpathSync(mkdtempSync(join(tmpdir(), 'gablewatt-fuzz-')))
const saved = values.save ?? join(tmpdir(), `gablewatt-fuzz-failures-${seed}`)
const CHUNK = 25
const MOST_WALL_MS = 180_000
const HEAP_MB = 600
const MOST_RSS_MB = 1000

// A copy, so that a build beside it changes nothing half-way.
const stage = join(work, 'stage')
for (const part of ['bin', 'dist', 'schemas', 'package.json'])
  cpSync(join(root, part), join(stage, part), { recursive: true })
symlinkSync(join(root, 'node_modules'), join(stage, 'node_modules'))
const binary = join(stage, 'bin/gablewatt.js')

// They need nothing of what follows, and most of what follows keeps one core busy.
const damagedStarts =
  values.only === undefined
    ? startDamaged({ count: Number(values['damaged-forms']), seed, stage, folder: join(work, 'damaged') })
    : undefined

process.env.FUZZ_WRITTEN = join(work, 'written.json')
const helper = startChild()
const ask = (...args) =>
  new Promise((resolve, reject) => {
    const answered = ({ answer, loose }) => {
      if (answer === undefined && loose === undefined) return
      helper.off('message', answered)
      if (loose === undefined) resolve(answer)
      else reject(new Error(loose))
    }
    helper.on('message', answered)
    helper.send({ ask: args, folder: join(work, 'sound') })
  })
lay(join(work, 'sound'), SOUND[0])
const names = [...(await ask('help')).stdout.matchAll(/^ {2}([a-z]+(?:-[a-z]+)*) {2,}/gmu)].map((match) => match[1])
const helps = new Map()
for (const name of names) if (name !== 'help') helps.set(name, (await ask('help', name)).stdout)
const known = {
  kinds: values.kinds?.split(','),
  light: values.light,
  subcommands: [...helps.keys()].filter(
    (name) =>
      /^Usage: .*<project\.yaml>/mu.test(helps.get(name)) &&
      !['review-output', 'check-bill', ...(values.light ? ['draw-permit'] : [])].includes(name),
  ),
  takesResults: [...helps.keys()].filter((name) => helps.get(name).includes('--use ')),
}
const doors = [...helps].flatMap(([name, help]) => doorsOf(name, help))
const opened = new Map(doors.map((door) => [door, 0]))
const explained = JSON.parse((await ask('explain', '--json')).stdout).values.findings.map((one) => one.id)

// Damaged inputs say little when the sound ones fail already, for instance because a file is missing that they name.
for (const files of SOUND) {
  lay(join(work, 'sound'), files)
  const run = await ask('check-project', 'project.yaml')
  if (run.exitCode !== 0) throw new Error(`a sound project ends with ${run.exitCode}: ${run.stderr}${run.stdout}`)
}
writeFileSync(process.env.FUZZ_WRITTEN, JSON.stringify(await writtenBefore()))

const tally = { inputs: 0, kinds: {}, codes: {}, spent: {}, cpuMs: 0, slowestMs: 0, rssMb: 0 }
const failures = new Map()
console.log(
  `seed ${seed}, ${values.only === undefined ? `${values.count} inputs` : `input ${values.only}`}, subcommands: ${known.subcommands.join(' ')}`,
)
const began = performance.now()
// Ctrl-C ends a long search with what it has found so far.
process.on('SIGINT', () => {
  report()
  rmSync(work, { recursive: true, force: true })
  process.exit(failures.size === 0 ? 130 : 1)
})

await (values.only === undefined ? runAll(Number(values.count), Number(values.jobs)) : runOnly(Number(values.only)))
if (values.only === undefined) {
  const { told, faults } = await damagedStarts
  if (told !== undefined) console.log(told)
  for (const { fault, index } of faults) fail(index, [fault])
  runBinary(Number(values.binary))
}
report()
rmSync(work, { recursive: true, force: true })
process.exitCode = failures.size === 0 ? 0 : 1

/** What the program itself writes and reads again. */
async function writtenBefore() {
  const folder = join(work, 'sound')
  lay(folder, { ...SOUND[0], 'houses.csv': JOURNAL_TABLE })
  const said = async (...args) => {
    const { stdout, stderr, exitCode } = await ask(...args)
    if (exitCode > 1) throw new Error(`${args.join(' ')} ends with ${exitCode}: ${stderr}`)
    return stdout
  }
  const results = {}
  for (const [stage, name] of Object.entries({
    yield: 'estimate-yield',
    wire: 'size-wire',
    mounts: 'space-mounts',
    bom: 'price-bom',
  }))
    results[stage] = await said(name, 'project.yaml', '--json')
  const lines = await said('run-fleet', 'project.yaml', '--jobs', '1', '--stages', 'yield,wire', '--jsonl')
  await said(
    'run-fleet',
    'project.yaml',
    '--jobs',
    '1',
    '--stages',
    'yield',
    '--baseline',
    'b.json',
    '--update-baseline',
  )
  await said('write-application', 'project.yaml', '--out', 'p.pdf')
  await said('draw-permit', 'project.yaml', '--draft', '--out', 'packet.pdf', '--result', 's.json')
  const kept = (name) => readFileSync(join(folder, name), 'utf8')
  await ask(...JOURNAL_RUN, '--journal', 'j.jsonl', '--fail-fast')
  const journal = kept('j.jsonl').replaceAll(folder, HERE)
  // A journal that is not taken would be tried in vain.
  writeFileSync(join(folder, 'j.jsonl'), journalIn(folder, journal))
  const resumed = await ask(...JOURNAL_RUN, '--journal', 'j.jsonl', '--resume')
  if (!/Taken from the interrupted run +2$/mu.test(resumed.stdout))
    throw new Error(`the sound journal is not taken: ${resumed.stderr}${resumed.stdout}`)
  return {
    results,
    lines,
    journal,
    baseline: kept('b.json'),
    record: kept('s.json'),
    paper: readFileSync(join(folder, 'p.pdf')).toString('base64'),
  }
}

async function runOnly(index) {
  await drive(0, function* () {
    yield [index]
  })
}

async function runAll(count, jobs) {
  let next = 0
  const chunks = function* () {
    while (next < count) {
      const from = next
      next = Math.min(count, next + CHUNK)
      yield Array.from({ length: next - from }, (_, offset) => from + offset)
    }
  }
  const shared = chunks()
  await Promise.all(Array.from({ length: jobs }, (_, job) => drive(job, () => shared)))
}

function startChild() {
  return fork(new URL('child.mjs', import.meta.url), [stage], {
    execArgv: [`--max-old-space-size=${HEAP_MB}`],
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  })
}

/**
 * Keeps one child busy; a child that dies or hangs is replaced and the input that did it is a failure. The first goes on with the
 * one that made what was asked for beforehand: its engine knows the program by then.
 */
function drive(job, chunksOf) {
  const chunks = chunksOf()
  const folder = join(work, `case-${job}`)
  return new Promise((resolve) => {
    let child
    let current
    let rest = []
    let watch
    const send = () => {
      if (rest.length === 0) rest = chunks.next().value ?? []
      if (rest.length === 0) {
        clearTimeout(watch)
        child.removeAllListeners('exit')
        child.kill('SIGKILL')
        resolve()
        return
      }
      child.send({ folder, seed, indexes: rest, known, explained, dry: values.only !== undefined })
    }
    const start = (ready) => {
      child = ready ?? startChild()
      const mine = child
      child.on('message', (message) => {
        if (mine !== child) return
        if (message.idle === true) send()
        if (message.loose !== undefined) fail(current, [`a promise was left alone: ${message.loose}`])
        if (message.start !== undefined) {
          current = message.start
          clearTimeout(watch)
          watch = setTimeout(() => {
            fail(current, [`hangs for more than ${MOST_WALL_MS / 1000} s`])
            mine.kill('SIGKILL')
          }, MOST_WALL_MS)
        }
        if (message.done !== undefined) {
          rest = rest.filter((index) => index !== message.done)
          count(message)
        }
      })
      child.on('exit', (code, signal) => {
        clearTimeout(watch)
        if (mine !== child) return
        if (signal !== 'SIGKILL')
          fail(current, [`the process ended (${signal ?? code}), memory of ${HEAP_MB} MB used up or a crash`])
        rest = rest.filter((index) => index !== current)
        start()
      })
      if (ready !== undefined) send()
    }
    start(job === 0 ? helper : undefined)
  })
}

function count({ done, kind, args, exitCode, cpuMs, memory, faults, stdout, stderr }) {
  const rssMb = memory.rss / 1e6
  for (const door of openedBy(args, doors)) opened.set(door, opened.get(door) + 1)
  tally.inputs++
  tally.kinds[kind] = (tally.kinds[kind] ?? 0) + 1
  const key = `${kind} ${exitCode}`
  tally.codes[key] = (tally.codes[key] ?? 0) + 1
  tally.cpuMs += cpuMs
  const spent = (tally.spent[`${kind} ${args[0]?.slice(0, 20)}`] ??= { times: 0, cpuMs: 0 })
  spent.times++
  spent.cpuMs += cpuMs
  tally.slowestMs = Math.max(tally.slowestMs, cpuMs)
  tally.rssMb = Math.max(tally.rssMb, rssMb)
  if (rssMb > MOST_RSS_MB) {
    const parts = [memory.heapUsed, memory.heapTotal, memory.external, memory.arrayBuffers].map((bytes) =>
      (bytes / 1e6).toFixed(0),
    )
    faults.push(
      `memory is at ${rssMb.toFixed(0)} MB (heap used, heap total, external, buffers: ${parts.join(', ')} MB)`,
    )
  }
  if (values.only !== undefined) console.log(`${args.join(' ')}\nexit ${exitCode}\n${stdout}${stderr}`)
  if (faults.length > 0) fail(done, faults)
}

/** Equal faults are told once; the first input of each is saved whole. */
function fail(index, faults) {
  for (const fault of faults) {
    const shape = fault
      .replace(/\d+(?:\.\d+)?(?:e[+-]?\d+)?/gu, '#')
      .replace(/'[^']*'/gu, "'...'")
      .slice(0, 140)
    const before = failures.get(shape)
    if (before !== undefined) {
      before.times++
      continue
    }
    failures.set(shape, { fault, index, times: 1 })
    if (index === undefined || index < 0) continue
    const { files, args, kind } = makeCase(seed, index, known)
    const folder = join(saved, String(index))
    lay(folder, files)
    writeFileSync(join(folder, 'arguments.json'), `${JSON.stringify({ seed, index, kind, args, faults }, null, 2)}\n`)
    console.log(`FAULT in input ${index} (${kind}: ${args.join(' ').slice(0, 200)}): ${fault.slice(0, 400)}`)
  }
}

/** The same kinds of input through the real program, a process each. */
function runBinary(count) {
  for (let index = 0; index < count; index++) {
    const made = makeCase(seed, 10_000_000 + index, known)
    const folder = join(work, 'binary')
    const input = { ...made, files: lay(folder, made.files) }
    const started = performance.now()
    const run = spawnSync(process.execPath, [binary, ...input.args], {
      cwd: folder,
      encoding: 'utf8',
      timeout: 20_000,
      input: '',
      maxBuffer: 1e9,
    })
    const tookMs = performance.now() - started
    const faults = judge(
      input,
      { exitCode: run.status ?? -1, stdout: run.stdout, stderr: run.stderr, written: written(folder, input.files) },
      new Set(explained),
    )
    if (tookMs > 5000) faults.push(`the program took ${(tookMs / 1000).toFixed(1)} s`)
    if (faults.length > 0) fail(10_000_000 + index, faults)
  }
  if (count > 0) console.log(`${count} inputs through the real program`)
}

function report() {
  const seconds = (performance.now() - began) / 1000
  for (const [kind, total] of Object.entries(tally.kinds).toSorted(([a], [b]) => a.localeCompare(b))) {
    const codes = [0, 1, 2, 3, 70].map((code) => `${code}: ${tally.codes[`${kind} ${code}`] ?? 0}`).join('  ')
    console.log(`  ${kind.padEnd(16)} ${String(total).padStart(7)}   by exit code  ${codes}`)
  }
  console.log(
    `${tally.inputs} inputs in ${seconds.toFixed(1)} s; mean ${(tally.cpuMs / Math.max(1, tally.inputs)).toFixed(1)} ms, slowest ${(tally.slowestMs / 1000).toFixed(2)} s of CPU; memory at most ${tally.rssMb.toFixed(0)} MB`,
  )
  const slow = Object.entries(tally.spent)
    .toSorted(([, a], [, b]) => b.cpuMs - a.cpuMs)
    .slice(0, 8)
  console.log(
    `most time in: ${slow.map(([name, { times, cpuMs }]) => `${name} ${times} x ${(cpuMs / times).toFixed(0)} ms`).join(', ')}`,
  )
  for (const { fault, index, times } of [...failures.values()].toSorted((a, b) => b.times - a.times))
    console.log(`FAULT x${times}, first in input ${index}: ${fault.slice(0, 300)}`)
  const closed = doors.filter((door) => opened.get(door) === 0)
  console.log(
    `doors opened: ${doors.length - closed.length} of ${doors.length}${closed.length === 0 ? '' : `; not: ${closed.join('; ')}`}`,
  )
  console.log(
    failures.size === 0
      ? 'no fault'
      : `${failures.size} kinds of fault; inputs saved in ${saved}; again with --seed ${seed} --only INDEX`,
  )
}
