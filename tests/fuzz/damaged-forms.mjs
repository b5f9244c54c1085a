/** Starts of the real program whose compiled form is damaged: each has to answer as if there were none. */
import { execFile } from 'node:child_process'
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Chance } from './random.mjs'

const FORMS = ['main.cache', 'rest.cache']
/** The second loads what a quick command does not. */
const RUNS = [
  ['list-sites', 'reno', '--json'],
  ['explain', 'bus', 'rating'],
]

/** By its name: takes the bytes and gives others. */
const DAMAGES = {
  'one bit turned': (chance, bytes) => turned(bytes, chance.below(bytes.length), 1 << chance.below(8)),
  'one bit of the seal turned': (chance, bytes) =>
    turned(bytes, chance.below(bytes.indexOf(10) + 1), 1 << chance.below(8)),
  'sixty bytes of another value': (chance, bytes) => {
    const copy = Buffer.from(bytes)
    for (let left = 60; left > 0; left--) copy[chance.below(copy.length)] = chance.below(256)
    return copy
  },
  'cut off': (chance, bytes) => bytes.subarray(0, chance.below(bytes.length)),
  'a piece left out': (chance, bytes) => {
    const at = chance.below(bytes.length)
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(at + 1 + chance.below(5000))])
  },
  'a piece twice': (chance, bytes) => {
    const at = chance.below(bytes.length)
    return Buffer.concat([bytes.subarray(0, at), bytes.subarray(Math.max(0, at - 1 - chance.below(5000)))])
  },
  'bytes behind it': (chance, bytes) => Buffer.concat([bytes, Buffer.alloc(1 + chance.below(100), chance.below(256))]),
  'the seal of another version': (_chance, bytes) =>
    Buffer.from(bytes.toString('latin1').replace(/^v\d+/u, 'v19'), 'latin1'),
  'the form of the other file': (_chance, _bytes, other) => other,
  'no seal': (_chance, bytes) => bytes.subarray(bytes.indexOf(10) + 1),
  nothing: () => Buffer.alloc(0),
}

function turned(bytes, at, mask) {
  const copy = Buffer.from(bytes)
  copy[at] ^= mask
  return copy
}

/** @returns {Promise<{ told?: string, faults: { fault: string, index: number }[] }>} What did not answer as before. */
export async function startDamaged({ count, seed, stage, folder }) {
  if (count === 0) return { faults: [] }
  mkdirSync(join(folder, 'dist'), { recursive: true })
  for (const part of ['bin', 'dist/program', 'package.json'])
    cpSync(join(stage, part), join(folder, part), { recursive: true })
  symlinkSync(join(stage, 'node_modules'), join(folder, 'node_modules'))
  const place = (name) => join(folder, 'dist/program', name)
  const whole = FORMS.map((name) => readFileSync(place(name)))
  const start = (args) =>
    new Promise((resolve) => {
      const child = execFile(
        process.execPath,
        [join(folder, 'bin/gablewatt.js'), ...args],
        { cwd: folder, encoding: 'utf8', timeout: 60_000, maxBuffer: 1e9 },
        (_error, stdout, stderr) => resolve(JSON.stringify([child.exitCode, child.signalCode, stdout, stderr])),
      )
      child.stdin.end()
    })
  const right = []
  for (const args of RUNS) right.push(await start(args))
  const faults = []
  for (let index = 0; index < count; index++) {
    const chance = new Chance(seed, 20_000_000 + index)
    const names = Object.keys(DAMAGES)
    const damage = names[index % names.length]
    const at = chance.below(2)
    writeFileSync(place(FORMS[at]), DAMAGES[damage](chance, whole[at], whole[1 - at]))
    for (const [run, args] of RUNS.entries()) {
      const answer = await start(args)
      if (answer !== right[run])
        faults.push({
          index: -1 - index,
          fault: `${args[0]} answers otherwise with ${damage} in ${FORMS[at]} (start ${index}): ${answer.slice(0, 200)}`,
        })
    }
    writeFileSync(place(FORMS[at]), whole[at])
  }
  rmSync(folder, { recursive: true, force: true })
  return { told: `${count} starts with a damaged compiled form, ${count * RUNS.length} answers compared`, faults }
}
