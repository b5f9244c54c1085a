import { execFileSync, spawnSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { hostname, tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { BINARY, ensureBuilt, gablewatt, ROOT } from '../cli/binary.js'

// Written for: the engine of a cluster that Debian has (slurmctld, slurmd, slurm-client, munge; version 22.05), one node of it here.
const NEEDED = ['munged', 'slurmctld', 'slurmd', 'sbatch', 'runuser']
const missing = NEEDED.filter((name) => spawnSync('which', [name]).status !== 0)
const canRun = missing.length === 0 && process.getuid?.() === 0

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-cluster-'))
const parts = join(folder, 'parts')
const program = `${process.execPath} ${BINARY}`
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The houses of a part hold a processor for some seconds, so that a task can be killed in the middle. */
const HOUSES = 60

beforeAll(() => {
  ensureBuilt()
  mkdirSync(parts)
  for (const name of ['template.yaml', 'equipment.yaml', 'letter-rafters.pdf'])
    copyFileSync(join(ROOT, 'examples/fleet', name), join(folder, name))
  const rows = Array.from({ length: HOUSES }, (_, index) => `h${index},${39 + index / 100},${8000 + 10 * index}`)
  writeFileSync(join(folder, 'customers.csv'), `id,site.latitude_deg,usage.annual_kwh\n${rows.join('\n')}\n`)
})

const read = (name: string): string => readFileSync(join(folder, name), 'utf8')
const until = async (what: () => boolean, seconds = 120): Promise<void> => {
  for (const end = Date.now() + 1000 * seconds; !what();) {
    if (Date.now() > end) throw new Error(`waited ${seconds} s for ${String(what)}`)
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
}

describe.skipIf(!canRun)(`a fleet on a cluster (skipped as other than root, or without ${NEEDED.join(', ')})`, () => {
  const engine = join(folder, 'engine')
  const env = { PATH: process.env['PATH'], SLURM_CONF: join(engine, 'slurm.conf') }
  const started: string[] = []

  beforeAll(async () => {
    for (const name of ['state', 'spool', 'munge']) mkdirSync(join(engine, name), { recursive: true })
    chmodSync(folder, 0o755)
    const munge = join(engine, 'munge')
    writeFileSync(join(munge, 'key'), randomBytes(1024), { mode: 0o400 })
    execFileSync('chown', ['-R', 'munge', munge])
    const places = ['key-file=key', 'socket=socket', 'pid-file=pid', 'log-file=log', 'seed-file=seed']
    const flags = places.map((place) => `--${place.replace('=', `=${munge}/`)}`)
    execFileSync('runuser', ['-u', 'munge', '--', 'munged', '--force', ...flags])
    started.push(join(munge, 'pid'))
    const host = hostname().split('.')[0] ?? ''
    writeFileSync(env.SLURM_CONF, slurmConf(engine, host))
    execFileSync('slurmctld', [], { env })
    started.push(join(engine, 'ctld.pid'))
    execFileSync('slurmd', [], { env })
    started.push(join(engine, 'd.pid'))
    await until(() => execFileSync('sinfo', ['-h', '-o', '%T'], { env, encoding: 'utf8' }).trim() === 'idle', 60)
  }, 90_000)

  afterAll(() => {
    for (const file of started.toReversed())
      if (existsSync(file)) spawnSync('kill', [readFileSync(file, 'utf8').trim()])
  })

  const submit = (script: string, ...more: string[]): string => {
    const exported = `--export=ALL,PARTS=3,TEMPLATE=template.yaml,TABLE=customers.csv,GABLEWATT=${program}`
    const args = ['--parsable', exported, ...more, join(ROOT, 'examples/cluster', script)]
    return execFileSync('sbatch', args, { env, cwd: folder, encoding: 'utf8' }).trim()
  }
  const stateOf = (job: string): string =>
    execFileSync('squeue', ['-h', '-t', 'all', '-j', job, '-o', '%K %T'], { env, encoding: 'utf8' })
  const ended = (job: string) => () => !/PENDING|RUNNING|COMPLETING|CONFIGURING/u.test(stateOf(job))
  const linesOf = (name: string): number => (existsSync(join(folder, name)) ? read(name).split('\n').length - 1 : 0)

  test(
    'parts, one killed on the way and sent again, join to what one run gives, byte for byte',
    { timeout: 300_000 },
    async () => {
      const startMs = performance.now()
      const array = submit('fleet-array.sh', '--array=1-3')
      await until(() => linesOf('parts/part-3.journal') > 4 && !existsSync(join(parts, 'part-3.jsonl')))
      execFileSync('scancel', ['--signal=KILL', '--full', `${array}_3`], { env })
      await until(ended(array))
      expect(stateOf(array)).toMatch(/3 (?:FAILED|CANCELLED)/u)
      expect([1, 2, 3].map((part) => existsSync(join(parts, `part-${part}.jsonl`)))).toEqual([true, true, false])
      const kept = linesOf('parts/part-3.journal')
      expect(kept).toBeGreaterThan(4)
      expect(kept).toBeLessThan(HOUSES / 3 + 1)

      const early = submit('fleet-merge.sh')
      await until(ended(early))
      expect(existsSync(join(folder, 'fleet.jsonl'))).toBe(false)
      expect(read('parts/merge.log')).toContain('missing')

      const again = submit('fleet-array.sh', '--array=3')
      const merge = submit('fleet-merge.sh', `--dependency=afterany:${again}`)
      await until(ended(merge))
      const whole = await gablewatt(['run-fleet', 'template.yaml', '--table', 'customers.csv', '--jsonl', '--quiet'], {
        cwd: folder,
      })
      expect(read('fleet.jsonl') === whole.stdout).toBe(true)
      expect(linesOf('fleet.jsonl')).toBe(HOUSES)
      tellFigures({ kept, joined: linesOf('fleet.jsonl'), seconds: Math.round((performance.now() - startMs) / 1000) })
    },
  )
})

/** CLUSTER_FIGURES=FILE keeps what a run came to. */
function tellFigures({ kept, joined, seconds }: Readonly<Record<'kept' | 'joined' | 'seconds', number>>): void {
  const file = process.env['CLUSTER_FIGURES']
  if (file === undefined) return
  const [, version = 'unknown'] = /(\S+)\s*$/u.exec(execFileSync('slurmctld', ['-V'], { encoding: 'utf8' })) ?? []
  const lines = [
    `engine ${version}, one controller, one worker of 2 processors, Node ${process.version}`,
    `houses ${HOUSES}, parts 3, tasks sent 4, of them killed 1 and sent again 1`,
    `houses in the journal of the killed part ${kept}, worked out after it was sent again ${HOUSES / 3 - kept}`,
    `joins sent 2, refused for the missing part 1; houses joined ${joined}, byte for byte as one run`,
    `wall time ${seconds} s, waiting for the engine included`,
  ]
  writeFileSync(file, `${lines.join('\n')}\n`)
}

function slurmConf(engine: string, host: string): string {
  return [
    'ClusterName=test',
    `SlurmctldHost=${host}`,
    'AuthType=auth/munge',
    `AuthInfo=socket=${engine}/munge/socket`,
    'SlurmUser=root',
    'SlurmdUser=root',
    `StateSaveLocation=${engine}/state`,
    `SlurmdSpoolDir=${engine}/spool`,
    `SlurmctldLogFile=${engine}/ctld.log`,
    `SlurmdLogFile=${engine}/d.log`,
    `SlurmctldPidFile=${engine}/ctld.pid`,
    `SlurmdPidFile=${engine}/d.pid`,
    'SlurmctldPort=16817',
    'SlurmdPort=16818',
    'ProctrackType=proctrack/linuxproc',
    'TaskPlugin=task/none',
    'SelectType=select/cons_tres',
    'SwitchType=switch/none',
    'MpiDefault=none',
    'ReturnToService=2',
    `NodeName=${host} CPUs=2 State=UNKNOWN`,
    'PartitionName=all Nodes=ALL Default=YES State=UP',
    '',
  ].join('\n')
}

interface Job {
  readonly apiVersion: string
  readonly kind: string
  readonly metadata: { readonly name: string }
  readonly spec: {
    readonly completionMode: string
    readonly completions: number
    readonly parallelism: number
    readonly backoffLimit: number
    readonly template: {
      readonly spec: {
        readonly restartPolicy: string
        readonly volumes: readonly { readonly name: string }[]
        readonly containers: readonly {
          readonly env: readonly { readonly name: string; readonly value: string }[]
          readonly command: readonly string[]
          readonly workingDir: string
          readonly volumeMounts: readonly { readonly name: string; readonly mountPath: string }[]
        }[]
      }
    }
  }
}

describe('the indexed job', () => {
  const job = parse(readFileSync(join(ROOT, 'examples/cluster/fleet-indexed-job.yaml'), 'utf8')) as Job
  const { spec } = job
  const [container] = spec.template.spec.containers

  test('works out as many parts as it has indexes', () => {
    expect(spec.completionMode).toBe('Indexed')
    expect(container?.env).toEqual([{ name: 'PARTS', value: String(spec.completions) }])
  })

  // What such a cluster refuses or waits for without end; from memory of its documents, as none stands here.
  test('is a job as such a cluster takes it', () => {
    expect([job.apiVersion, job.kind]).toEqual(['batch/v1', 'Job'])
    expect(job.metadata.name).toMatch(/^[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?$/u)
    expect(spec.parallelism).toBeLessThanOrEqual(spec.completions)
    expect(['Never', 'OnFailure']).toContain(spec.template.spec.restartPolicy)
    // Each part may be lost once.
    expect(spec.backoffLimit).toBeGreaterThanOrEqual(spec.completions)
    expect(container?.volumeMounts.map(({ name }) => name)).toEqual(spec.template.spec.volumes.map(({ name }) => name))
    expect(container?.volumeMounts.map(({ mountPath }) => mountPath)).toContain(container?.workingDir)
    const [shell = '', flag = '', script = ''] = container?.command ?? []
    expect([shell, flag]).toEqual(['sh', '-c'])
    expect(spawnSync('sh', ['-n'], { input: script, encoding: 'utf8' })).toMatchObject({ status: 0, stderr: '' })
  })

  // No cluster of this kind stands here: its script runs in a shell, as a pod would run it.
  test(
    'its script gives the part of an index, and nothing anew where the part is there',
    { timeout: 60_000 },
    async () => {
      const own = mkdtempSync(join(tmpdir(), 'gablewatt-pod-'))
      for (const name of ['template.yaml', 'equipment.yaml', 'letter-rafters.pdf', 'customers.csv'])
        copyFileSync(join(folder, name), join(own, name))
      const bin = join(own, 'bin')
      mkdirSync(bin)
      writeFileSync(join(bin, 'gablewatt'), `#!/bin/sh\necho start >> starts\nexec ${program} "$@"\n`, { mode: 0o755 })
      const [shell = '', ...args] = container?.command ?? []
      const env = { PATH: `${bin}:${process.env['PATH'] ?? ''}`, PARTS: '30', JOB_COMPLETION_INDEX: '1' }
      const pod = () => execa(shell, args, { cwd: own, env, extendEnv: false, reject: false })
      expect((await pod()).exitCode).toBe(0)
      const lines = readFileSync(join(own, 'parts/part-2.jsonl'), 'utf8').trimEnd().split('\n')
      expect(lines.map((line) => (JSON.parse(line) as { readonly name: string }).name)).toEqual(['h2', 'h3'])
      expect((await pod()).exitCode).toBe(0)
      expect(readFileSync(join(own, 'starts'), 'utf8')).toBe('start\n')
      rmSync(own, { recursive: true })
    },
  )
})
