// The compiled kernels against the same text run as JavaScript, and against what asks the same of one thing.
import { resolve } from 'node:path'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { loadProject } from '../../src/project/index.js'
import { isMet } from '../../src/scene/index.js'
import { RandomSource, normalQuantile, normalQuantiles } from '../../src/values/index.js'
import { compiledEngine, LAYOUT, scriptEngine, type Engine } from '../../src/yield/kernel/index.js'
import { acOf } from '../../src/yield/kernel/station.js'
import { meets } from '../../src/yield/kernel/meets.js'
import { shareOfSections } from '../../src/yield/kernel/series.js'
import { seriesCurve, shareOfString } from '../../src/yield/series/index.js'
import { curveEfficiency, unlimitedAcW } from '../../src/yield/index.js'
import { Worksheet } from '../../src/worksheet/index.js'

const HOUSES = [
  'lark-hollow.yaml',
  'fleet/columbus-chimney.yaml',
  'fleet/albuquerque-strings.yaml',
  'fleet/las-vegas-racks.yaml',
  'fleet/seattle-hills.yaml',
  'fleet/omaha-station.yaml',
  'fleet/duluth-snow.yaml',
]

afterEach(() => {
  vi.unstubAllGlobals()
  vi.resetModules()
})

/** The estimate of a house with modules that are loaded afresh. */
async function estimate(path: string) {
  const { project, files } = loadProject({ path: resolve('examples', path) })
  vi.resetModules()
  const { runYield } = await import('../../src/yield/run-yield.js')
  const { result, system } = runYield(project, files)
  return { values: result.values, acW: [...system.acW] }
}

/** Compares all numbers of two results, relative to their size. */
function same(a: unknown, b: unknown, path = ''): void {
  if (typeof a === 'number' && typeof b === 'number') {
    const apart = Math.abs(a - b) / Math.max(1, Math.abs(a))
    if (!(apart <= 1e-12 || Object.is(a, b))) throw new Error(`${path}: ${a} and ${b}`)
  } else if (typeof a === 'object' && a !== null) {
    expect(Object.keys(b as object)).toEqual(Object.keys(a))
    for (const [key, value] of Object.entries(a)) same(value, (b as Record<string, unknown>)[key], `${path}.${key}`)
  } else expect(b).toEqual(a)
}

describe('kernels', () => {
  it('runs compiled here', () => {
    expect(compiledEngine()).toBeDefined()
  })

  it.each(HOUSES)('gives the same as JavaScript: %s', async (path) => {
    const compiled = await estimate(path)
    vi.stubGlobal('WebAssembly', undefined)
    const script = await estimate(path)
    same(compiled, script)
  })

  // A whole number is read at any byte when compiled, and at the four bytes that hold it when it is JavaScript.
  it('keeps each number of a record at a multiple of its four or eight bytes, none on another', () => {
    const offsets = Object.entries(LAYOUT).filter(([name]) => !['ROUND', 'OPAQUE', 'DC_SUM_COUNT'].includes(name))
    expect(offsets.length).toBeGreaterThan(80)
    expect(offsets.filter(([, value]) => value % 4 !== 0)).toEqual([])
    const sizes = offsets.filter(([name]) => name.endsWith('_SIZE'))
    expect(sizes.filter(([, value]) => value % 8 !== 0)).toEqual([])
    const values = offsets.map(([name, value]) => `${name.split('_')[0]} ${value}`)
    expect(values.filter((each, index) => values.indexOf(each) !== index)).toEqual([])
  })

  it('meets what the scene says a line meets', () => {
    const machine = scriptEngine()
    const random = new RandomSource(11)
    const between = (low: number, high: number): number => low + (high - low) * random.uniform()
    let met = 0
    for (let round = 0; round < 4000; round += 1) {
      const isRound = round % 3 === 0
      const round5 = {
        east: between(-9, 9),
        north: between(-9, 9),
        radiusFt: between(0.5, 4),
        base: between(-4, 2),
        top: between(2, 9),
      }
      const faces = isRound ? new Float64Array(0) : box(between)
      const solid = isRound ? { faces, round: round5 } : { faces }
      const mark = machine.mark()
      const at = machine.take(LAYOUT.SOLID_DATA + 8 * Math.max(5, faces.length))
      machine.ints[at >> 2] = isRound ? LAYOUT.ROUND : faces.length / 4
      machine.reals.set(isRound ? Object.values(round5) : faces, (at + LAYOUT.SOLID_DATA) >> 3)
      const [x, y, z] = [between(-12, 12), between(-12, 12), between(-2, 6)]
      const [azimuth, up] = [between(0, 2 * Math.PI), between(-1, 1)]
      const level = Math.sqrt(1 - up * up)
      const towards = { east: level * Math.sin(azimuth), north: level * Math.cos(azimuth), up }
      const grow = between(-1, 1)
      const told = isMet(solid, x, y, z, towards, grow)
      expect(meets(at, x, y, z, towards.east, towards.north, towards.up, grow) === 1).toBe(told)
      if (told) met += 1
      machine.release(mark)
    }
    expect(met).toBeGreaterThan(200)
  })

  it('takes the curve of an inverter and the tables of series as the models do', () => {
    const machine = scriptEngine()
    const inverter = curveEfficiency(
      5000,
      [5, 10, 30, 75, 100].map((loadPct, index) => ({ loadPct, efficiencyPct: 90 + 2 * index })),
      0,
    )
    const job = machine.take(LAYOUT.AC_SIZE)
    machine.ints[(job + LAYOUT.AC_POINT_COUNT) >> 2] = inverter.dcW.length
    machine.ints[(job + LAYOUT.AC_POINTS) >> 2] = machine.storeReals(inverter.dcW)
    machine.ints[(job + LAYOUT.AC_EFFICIENCY) >> 2] = machine.storeReals(inverter.efficiency)
    for (let dcW = 10; dcW < 7000; dcW += 13) expect(acOf(job, dcW)).toBeCloseTo(unlimitedAcW(inverter, dcW), 9)

    const curve = seriesCurve({ pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.3 }, 'm', new Worksheet())
    const stored = [curve.dull, curve.past, curve.along].map((table) => machine.storeReals(table))
    for (let lit = 0; lit <= 1; lit += 0.03) {
      for (let dull = 0; dull <= 1; dull += 0.03) {
        const [first = 0, past = 0, along = 0] = stored
        expect(shareOfSections(first, past, along, lit, dull)).toBeCloseTo(shareOfString(curve, lit, dull), 12)
      }
    }
  })

  it.each([
    ['compiled', compiledEngine],
    ['script', scriptEngine],
  ] as const)('divides a normal into equal parts: %s', (_, start: () => Engine | undefined) => {
    const machine = start()
    if (machine === undefined) throw new Error('WebAssembly does not run here')
    const count = 1001
    const at = machine.take(8 * count)
    machine.kernels.normalParts(at, count, normalQuantile(0.5 / count))
    const expected = normalQuantiles(count)
    machine.copyReals(at, count).forEach((part, index) => expect(part).toBeCloseTo(expected[index]!, 9))
  })

  it('keeps what stands in its memory when that grows', () => {
    for (const machine of [compiledEngine(), scriptEngine()]) {
      if (machine === undefined) throw new Error('WebAssembly does not run here')
      const first = machine.storeReals([1, 2, 3])
      machine.take(40_000_000)
      expect([...machine.copyReals(first, 3)]).toEqual([1, 2, 3])
      machine.release(first)
      expect(machine.mark()).toBe(first)
    }
  })
})

/** A box that is turned about a plumb line, as faces. */
function box(between: (low: number, high: number) => number): Float64Array {
  const turn = between(0, Math.PI)
  const [sine, cosine] = [Math.sin(turn), Math.cos(turn)]
  const [east, north] = [between(-9, 9), between(-9, 9)]
  const faces: number[] = []
  for (const [x, y] of [
    [sine, cosine],
    [cosine, -sine],
  ] as const) {
    const half = between(0.5, 4)
    const at = x * east + y * north
    faces.push(x, y, 0, at + half, -x, -y, 0, half - at)
  }
  faces.push(0, 0, 1, between(2, 8), 0, 0, -1, between(-2, 4))
  return Float64Array.from(faces)
}
