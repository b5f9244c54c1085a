import { fork, spawnSync, type ChildProcess } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { execa, type Options, type Result } from 'execa'

export const ROOT = new URL('../..', import.meta.url).pathname
export const BINARY = join(ROOT, 'bin/gablewatt.js')

const LOCK = join(ROOT, 'node_modules/.gablewatt-build-lock')

function newest(folder: string): number {
  return Math.max(
    ...readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs),
  )
}

function isFresh(): boolean {
  const built = join(ROOT, 'dist/program/main.cjs')
  return existsSync(built) && !existsSync(LOCK) && statSync(built).mtimeMs > newest(join(ROOT, 'src'))
}

/** Builds dist once when a source is newer. Test files run side by side, so the builder holds a lock. */
export function ensureBuilt(): void {
  const deadline = Date.now() + 240_000
  while (!isFresh()) {
    try {
      mkdirSync(LOCK)
    } catch {
      // A lock that outlives any build was left by a run that was killed.
      const age = Date.now() - (statSync(LOCK, { throwIfNoEntry: false })?.mtimeMs ?? Date.now())
      if (age > 180_000) rmSync(LOCK, { recursive: true, force: true })
      if (Date.now() > deadline) throw new Error(`dist is being built for too long; remove ${LOCK}`)
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100)
      continue
    }
    try {
      // The types are `npm run typecheck`'s business; here only the programs matter.
      const tsc = join(ROOT, 'node_modules/typescript/bin/tsc')
      const build = spawnSync(process.execPath, [tsc, '-p', 'tsconfig.json'], { cwd: ROOT, encoding: 'utf8' })
      const bundle = spawnSync('npm', ['run', '--silent', 'bundle'], { cwd: ROOT, encoding: 'utf8' })
      if (bundle.status !== 0 || !existsSync(join(ROOT, 'dist/program/main.cjs')))
        throw new Error(`the build failed:\n${build.stdout}${build.stderr}${bundle.stderr}`)
      return
    } finally {
      rmSync(LOCK, { recursive: true, force: true })
    }
  }
}

/** Runs the real program as a child, in a clean environment; a failing exit code is a result, not an error. */
export function gablewatt(
  args: readonly string[],
  options: Options = {},
): Promise<Result<{ reject: false; stripFinalNewline: false; encoding: 'utf8' }>> {
  return execa(process.execPath, [BINARY, ...args], {
    reject: false,
    stripFinalNewline: false,
    extendEnv: false,
    stdin: 'ignore',
    ...options,
    env: { PATH: process.env['PATH'], HOME: process.env['HOME'], ...options.env },
  }) as never
}

const done = new Map<string, ReturnType<typeof gablewatt>>()

/** As `gablewatt`, started once in a test file for the same arguments. For runs that write no file, of files that stay as they are. */
export function gablewattOnce(...args: Parameters<typeof gablewatt>): ReturnType<typeof gablewatt> {
  const key = JSON.stringify(args)
  const run = done.get(key) ?? gablewatt(...args)
  done.set(key, run)
  return run
}

/** What a test looks at of a run. */
export type WarmRun = Pick<Awaited<ReturnType<typeof gablewatt>>, 'exitCode' | 'stdout' | 'stderr'>

let warm: ChildProcess | undefined
let queue: Promise<unknown> = Promise.resolve()

/**
 * The bundled program, as `gablewatt` runs it, in a child that has it loaded already: a tenth of the time. For tests in which neither
 * the start of the process nor its end plays a part. One run at a time; stdin is empty and no stream is a terminal.
 */
export function gablewattWarm(
  args: readonly string[],
  options: { readonly cwd?: string; readonly env?: Readonly<Record<string, string>> } = {},
): Promise<WarmRun> {
  const request = {
    args,
    cwd: options.cwd ?? ROOT,
    env: { PATH: process.env['PATH'], HOME: process.env['HOME'], ...options.env },
  }
  const run = queue.then(() => {
    if (warm === undefined) {
      warm = fork(join(ROOT, 'tests/cli/warm-program.cjs'), { stdio: ['ignore', 'inherit', 'inherit', 'ipc'] })
      // It must not keep the tests from ending.
      warm.unref()
      warm.channel?.unref()
    }
    const child = warm
    return new Promise<WarmRun>((resolve, reject) => {
      child.channel?.ref()
      const settle = (finish: () => void) => (): void => {
        child.off('message', answered)
        child.off('exit', ended)
        child.channel?.unref()
        finish()
      }
      const answered = (result: unknown): void => settle(() => resolve(result as WarmRun))()
      const ended = (): void => {
        warm = undefined
        settle(() => reject(new Error(`the program ended its process: gablewatt ${args.join(' ')}`)))()
      }
      child.once('message', answered)
      child.once('exit', ended)
      child.send(request)
    })
  })
  queue = run.catch(() => undefined)
  return run
}

const warmOnce = new Map<string, Promise<WarmRun>>()

/** As `gablewattWarm`, run once for the same arguments. For runs that write no file, of files that stay as they are. */
export function gablewattWarmOnce(...args: Parameters<typeof gablewattWarm>): Promise<WarmRun> {
  const key = JSON.stringify(args)
  const run = warmOnce.get(key) ?? gablewattWarm(...args)
  warmOnce.set(key, run)
  return run
}
