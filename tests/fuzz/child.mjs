/** Runs inputs one after the other inside one process, as the parent asks. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { makeCase } from './cases.mjs'
import { holes, judge } from './judge.mjs'
import { lay, written } from './lay.mjs'

const [stage] = process.argv.slice(2)
const { loadProgram } = await import(pathToFileURL(join(stage, 'bin/load-program.js')).href)
const money = await import(pathToFileURL(join(stage, 'dist/money/index.js')).href)
const projects = await import(pathToFileURL(join(stage, 'dist/project/index.js')).href)
const { main } = loadProgram()
// As the real program calls itself, so that it takes what it wrote.
const TOOL = `gablewatt ${JSON.parse(readFileSync(join(stage, 'package.json'), 'utf8')).version}`
const tell = process.send.bind(process)
/** A whole packet takes thirty times as long as another run: on a slow machine 6 s without any fault. */
const mostCpuMs = ([command]) => (command === 'draw-permit' ? 15_000 : 5000)

let out = []
let err = []
const keep = (list) => (chunk) => {
  list().push(Buffer.from(chunk))
  return true
}
process.stdout.write = keep(() => out)
process.stderr.write = keep(() => err)
process.exit = (code) => {
  throw new Error(`process.exit(${code})`)
}
// Nobody reads on: the parent was stopped.
process.on('disconnect', () => process.kill(process.pid, 'SIGKILL'))
process.on('unhandledRejection', (error) => tell({ loose: String(error) }))

process.on('message', async ({ ask, folder, seed, indexes, known, explained, dry }) => {
  if (ask !== undefined) {
    process.chdir(folder)
    tell({ answer: await runMain(ask) })
    return
  }
  const ids = new Set(explained)
  for (const index of indexes) {
    tell({ start: index })
    const input = makeCase(seed, index, known)
    let [run, faults] = await once(input, folder, ids)
    // A machine that does other things can be slow once, not twice.
    if (run.cpuMs > mostCpuMs(input.args)) [run, faults] = await once(input, folder, ids)
    if (run.cpuMs > mostCpuMs(input.args)) faults.push(`took ${(run.cpuMs / 1000).toFixed(1)} s of CPU`)
    const { kind, args } = input
    tell({
      done: index,
      kind,
      args,
      exitCode: run.exitCode,
      cpuMs: run.cpuMs,
      memory: process.memoryUsage(),
      faults,
      ...(dry ? { stdout: run.stdout, stderr: run.stderr } : {}),
    })
  }
  tell({ idle: true })
})
tell({ idle: true })

async function once(input, folder, ids) {
  const files = lay(folder, input.files)
  process.chdir(folder)
  const before = process.cpuUsage()
  const ran = await runMain(input.args)
  const faults = askLibrary(input, folder)
  const { user, system } = process.cpuUsage(before)
  const run = { ...ran, cpuMs: (user + system) / 1000, written: written(folder, files) }
  return [run, [...judge({ ...input, files }, run, ids), ...faults]]
}

async function runMain(args) {
  ;[out, err] = [[], []]
  const exitCode = await main(args, TOOL)
  process.stdout.removeAllListeners('error')
  process.stderr.removeAllListeners('error')
  process.exitCode = 0
  return { exitCode, stdout: Buffer.concat(out).toString(), stderr: Buffer.concat(err).toString() }
}

/** The readers of money files, which only some subcommands reach; of the slow stages one at a time. */
function askLibrary({ library, chance }, folder) {
  if (library === undefined) return []
  if (library.xml !== undefined) return attempt('readGreenButton', () => money.readGreenButton(library.xml))
  let loaded
  const faults = attempt(
    'loadProject',
    () => void (loaded = projects.loadProject({ path: join(folder, 'project.yaml') })),
  )
  if (loaded === undefined) return faults
  const name = chance.of(['billsOfProject', 'paybackOfProject', 'sizesOfProject'])
  return attempt(name, () => money[name](loaded.project, loaded.files).values)
}

function attempt(name, work) {
  try {
    return holes(work()).map((hole) => `${name}: ${hole}`)
  } catch (error) {
    const place =
      error.stack
        ?.split('\n')[1]
        ?.trim()
        .replace(/\(?file:.*\/dist\//u, '(') ?? ''
    return ['StageError', 'ProjectError'].includes(error.name)
      ? []
      : [`${name} throws ${error.name}: ${error.message} ${place}`]
  }
}
