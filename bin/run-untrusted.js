const { spawn } = require('node:child_process')
const { realpathSync, statSync } = require('node:fs')
const path = require('node:path')

/** Memory for objects of the program, MB: the demo house takes under 100. Time, s: a house takes under one, a large packet ten. */
const BOUNDS = { memoryMb: 512, seconds: 60 }
/** What the confined program may know of where it runs. */
const ENVIRONMENT = ['TERM', 'COLUMNS', 'NO_COLOR', 'LANG', 'TZ']

const USAGE = 2
const UNREADABLE = 3
const DEFECT = 70

/**
 * Runs a subcommand on a project file of a stranger: a start of Node of its own, which the engine lets read only the program and
 * the folder of the project, write only what `--out` names, and start neither a process nor a thread, with bounds of memory
 * and time. The program, told by GABLEWATT_UNTRUSTED, reads smaller files only and follows no path that leads out of the folder.
 *
 * @param {string[]} args What stands after the program's name, `--untrusted` among it.
 * @param {{ memoryMb: number, seconds: number }} bounds
 * @returns {Promise<number>} The exit code.
 */
async function runUntrusted(args, bounds = BOUNDS) {
  const rest = args.filter((arg) => arg !== '--untrusted')
  const refused = refusal(rest)
  if (refused !== undefined) return refuse(refused)
  const project = realPath(rest[1])
  if (project === undefined) return refuse(`${rest[1]} cannot be read: no such file, or no permission`, UNREADABLE)
  const folder = realPath(path.dirname(rest[1]))
  if (!statSync(project).isFile()) return refuse(`${rest[1]} is not a regular file`, UNREADABLE)
  if (path.dirname(project) !== folder) return refuse(`${rest[1]} is a link that leads out of its folder`, UNREADABLE)
  const out = outOf(rest)
  if (out !== undefined && realPath(path.dirname(out)) !== folder)
    return refuse(`with --untrusted the file of --out stands in the folder of the project: ${folder}`)
  // The engine takes the name of a folder for all that lies in it.
  if (out !== undefined && isFolder(out)) return refuse(`--out ${out} is a folder; name a file in ${folder}`)
  const flags = [
    process.allowedNodeEnvironmentFlags.has('--permission') ? '--permission' : '--experimental-permission',
    '--no-warnings',
    `--max-old-space-size=${bounds.memoryMb}`,
    ...readable(folder).map((place) => `--allow-fs-read=${place}`),
    ...(out === undefined ? [] : writable(folder, out).map((place) => `--allow-fs-write=${place}`)),
  ]
  const child = spawn(
    process.execPath,
    [...flags, path.join(__dirname, 'gablewatt.js'), rest[0], project, ...rest.slice(2)],
    {
      stdio: ['ignore', 'inherit', 'pipe'],
      env: { ...Object.fromEntries(ENVIRONMENT.map((name) => [name, process.env[name]])), GABLEWATT_UNTRUSTED: '1' },
    },
  )
  return ended(child, bounds)
}

/** Why the arguments do not go together with `--untrusted`; undefined when they do. */
function refusal(args) {
  if (args.length < 2 || args[0].startsWith('-') || args[1].startsWith('-'))
    return '--untrusted works on a project file: give the subcommand, then the file, then the options; stdin is not read'
  if (args[0] === 'run-fleet') return 'run-fleet has workers, which --untrusted forbids: run the houses one by one'
  if (args.includes('--allow-outside')) return '--allow-outside and --untrusted contradict each other'
  if (args.some((arg) => arg.includes('\0'))) return 'an argument holds a NUL character'
  const out = outOf(args)
  // The engine takes a star at the end for anything, and splits at commas.
  const bad = [args[1], out ?? ''].find((name) => /[*,]/u.test(path.resolve(name)))
  return bad === undefined ? undefined : `--untrusted takes no path with '*' or ',': ${bad}`
}

/** The path with its links followed; undefined when nothing is there. */
function realPath(name) {
  try {
    return realpathSync(name)
  } catch {
    return undefined
  }
}

/** Whether it is a folder, also by a link. */
function isFolder(name) {
  return statSync(name, { throwIfNoEntry: false })?.isDirectory() === true
}

/** The program with what it needs of its packages, and the folder of the project. */
function readable(folder) {
  const root = path.join(__dirname, '..')
  return [...new Set([root, realpathSync(root), realpathSync(path.join(root, 'node_modules')), folder])]
}

/** The value of `--out`; undefined when there is none, or when it is stdout. */
function outOf(args) {
  for (const [index, arg] of args.entries()) {
    const value =
      /^(?:--out=|-o=?)(.+)$/su.exec(arg)?.[1] ?? (arg === '--out' || arg === '-o' ? args[index + 1] : undefined)
    if (value !== undefined) return value === '-' ? undefined : value
  }
  return undefined
}

/** A file, and what stands for it until it is whole (`src/files/left-over.ts`). */
function writable(folder, out) {
  const name = path.basename(out)
  return [path.join(folder, name), path.join(folder, `.${name.slice(0, 100)}.*`)]
}

/** Waits for the end of a confined program and tells when it was stopped at a bound. */
function ended(child, { memoryMb, seconds }) {
  return new Promise((resolve) => {
    let said = ''
    child.stderr.on('data', (chunk) => (said += chunk))
    const clock = setTimeout(() => child.kill('SIGKILL'), 1000 * seconds)
    child.on('close', (code, signal) => {
      clearTimeout(clock)
      if (code === null && signal === 'SIGKILL')
        return resolve(refuse(`stopped after ${seconds} s, the bound of --untrusted`))
      if (code === null || /heap out of memory/u.test(said))
        return resolve(refuse(`stopped at ${memoryMb} MB of memory, the bound of --untrusted`))
      process.stderr.write(said)
      resolve(code)
    })
    child.on('error', (error) => resolve(refuse(`cannot be started: ${error.message}`, DEFECT)))
  })
}

function refuse(says, exitCode = USAGE) {
  // oxlint-disable-next-line no-control-regex
  process.stderr.write(`gablewatt: ${says.replaceAll(/[\x00-\x1f\x7f-\x9f]/gu, '?')}\n`)
  return exitCode
}

module.exports = { runUntrusted }
