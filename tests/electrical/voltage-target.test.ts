import { describe, expect, it } from 'vitest'
import { compareSizes } from './compare-sizes.js'
import { sizeWire, wiringOf } from '../../src/electrical/index.js'
import { loadProject } from '../../src/project/index.js'
import type { AcBranch, ConductorSize, Project } from '../../src/project/index.js'
import { context, microProject, stringProject } from './demo.js'

const lark = loadProject({ path: new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname }).project

function larkWith(branches: Record<string, AcBranch>, size?: ConductorSize): Project {
  const project = structuredClone(lark)
  if (project.electrical === undefined) throw new Error('no electrical part')
  project.electrical.branches = branches
  for (const run of Object.values(project.electrical.runs ?? {}))
    for (const segment of Object.values(run.segments)) if (size !== undefined) segment.size_awg = size
  return project
}

const b2: AcBranch = { modules: { south: 7 }, feed: 'end' }
const b3: AcBranch = { modules: { west: 6 }, feed: 'end' }
const b1 = (trunkFt: number, feed: 'end' | 'centre' = 'end'): AcBranch => ({
  modules: { south: 7 },
  feed,
  trunk_length_ft: trunkFt,
})

const riseFinding = (project: Project) =>
  wiringOf(project).findings.find(({ id, message }) => id === 'wire.voltage-rise' && message.startsWith('b1 '))

/** Remedies as the person reads them. */
const remedies = (project: Project): string => riseFinding(project)?.fix ?? ''

describe('a voltage target that the trunk uses up', () => {
  it('a longer trunk never brings a smaller wire, and no wire out of all proportion', () => {
    let before = ['14', '14']
    for (let trunkFt = 60; trunkFt <= 260; trunkFt += 2) {
      const branch = wiringOf(larkWith({ b1: b1(trunkFt), b2, b3 })).values.circuits[0]
      const now = branch?.segments.slice(1).map((segment) => segment.size_awg) ?? []
      for (const [i, size] of now.entries()) {
        expect(compareSizes(size, before[i] ?? ''), `${trunkFt} ft: ${before[i]} to ${size}`).toBeGreaterThanOrEqual(0)
        expect(compareSizes(size, '4'), `${trunkFt} ft: ${size}`).toBeLessThanOrEqual(0)
      }
      before = now
    }
  })

  it('says what trunk and runs take, so that the sentence holds', () => {
    const result = wiringOf(larkWith({ b1: b1(200), b2, b3 }))
    const branch = result.values.circuits.find(({ id }) => id === 'b1')
    const trunkPct = branch?.segments[0]?.voltage_rise_pct ?? 0
    const total = branch?.total_voltage_rise_pct ?? 0
    expect(riseFinding(larkWith({ b1: b1(200), b2, b3 }))?.message).toBe(
      `b1 has ${total.toFixed(2)} % voltage rise, 2 % is the limit: 200 ft of trunk take ${trunkPct.toFixed(2)} % and the runs ${(total - trunkPct).toFixed(2)} %, which is all that larger conductors could save`,
    )
    // The runs are enlarged until they take a tenth of the limit.
    expect(total - trunkPct).toBeLessThanOrEqual(0.2)
  })

  it('the trunk length that it names meets the target, and two feet more do not', () => {
    const named = Number(/[Kk]eep the trunk to (\d+) ft/.exec(remedies(larkWith({ b1: b1(220), b2, b3 })))?.[1])
    expect(named).toBeGreaterThan(100)
    expect(riseFinding(larkWith({ b1: b1(named), b2, b3 }))).toBeUndefined()
    expect(riseFinding(larkWith({ b1: b1(named + 2), b2, b3 }))).toBeDefined()
  })

  it('feeding in the centre meets it where it says so', () => {
    expect(remedies(larkWith({ b1: b1(220), b2, b3 }))).toContain('feed the trunk in its centre')
    // Four of the seven inverters lie on the longer half.
    expect(riseFinding(larkWith({ b1: b1((220 * 4) / 7, 'centre'), b2, b3 }))).toBeUndefined()
    expect(remedies(larkWith({ b1: b1(126, 'centre'), b2, b3 }))).not.toContain('centre')
    expect(remedies(larkWith({ b1: b1(900), b2, b3 }))).not.toContain('centre')
  })

  it('the number of branches that it names meets it, and one fewer does not', () => {
    for (const trunkFt of [220, 600]) {
      const words = /divide it into (\d) branches of at most (\d) inverters/.exec(
        remedies(larkWith({ b1: b1(trunkFt), b2, b3 })),
      )
      const [count, most] = [Number(words?.[1]), Number(words?.[2])]
      const split = (branches: number): boolean => {
        const each = Math.ceil(7 / branches)
        const part: AcBranch = { modules: { south: each }, feed: 'end', trunk_length_ft: (trunkFt * each) / 7 }
        const rest = 14 - each
        return riseFinding(larkWith({ b1: part, b2: { modules: { south: rest }, feed: 'centre' }, b3 })) === undefined
      }
      expect(Math.ceil(7 / count)).toBe(most)
      expect(split(count)).toBe(true)
      if (count > 2) expect(split(count - 1)).toBe(false)
    }
  })

  it('the larger wire that it names meets it while the trunk alone leaves something', () => {
    const tight = Array.from({ length: 60 }, (_, i) => 140 + i).filter(
      (ft) => riseFinding(larkWith({ b1: b1(ft), b2, b3 })) !== undefined,
    )[0]
    const size = /name size_awg: (\S+( kcmil)?) in every segment/.exec(
      remedies(larkWith({ b1: b1(tight ?? 0), b2, b3 })),
    )?.[1]
    expect(size).toBeDefined()
    expect(riseFinding(larkWith({ b1: b1(tight ?? 0), b2, b3 }, size as ConductorSize))).toBeUndefined()
  })
})

describe('a voltage target that the runs use up', () => {
  it('takes the largest wire of the tables and names a length that meets it', () => {
    const string = (lengthFt: number) =>
      sizeWire(
        stringProject({
          dc_voltage_drop_limit_pct: 0.1,
          runs: {
            dc: {
              carries: ['strings'],
              segments: { wall: { location: 'outdoor_wall', length_ft: lengthFt, raceway: 'EMT' } },
            },
            ac: {
              carries: ['inverter_outputs'],
              segments: { wall: { location: 'outdoor_wall', length_ft: 10, raceway: 'EMT' } },
            },
          },
        }),
        context(),
      )
    const finding = (lengthFt: number) => string(lengthFt).findings.find(({ id }) => id === 'wire.voltage-rise')
    expect(string(900).values.circuits[0]?.segments[0]?.size_awg).toBe('500 kcmil')
    expect(finding(900)?.message).toContain('900 ft of runs take it even with the largest conductors of the tables')
    const named = Number(/from 900 to (\d+) ft/.exec(finding(900)?.fix ?? '')?.[1])
    expect(finding(named)).toBeUndefined()
    expect(finding(named + 1)).toBeDefined()
  })

  it('a trunk within its share leaves the runs as they were', () => {
    const result = sizeWire(microProject({ branches: { b1: { modules: { south: 12 } } } }, 12), context())
    expect(result.findings.map(({ id }) => id)).not.toContain('wire.voltage-rise')
  })
})
