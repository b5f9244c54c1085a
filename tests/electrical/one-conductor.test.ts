import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical, WiringRun, WiringSegment } from '../../src/project/index.js'
import { context, microProject, stringProject } from './demo.js'

const wall: WiringSegment = { location: 'outdoor_wall', length_ft: 20, raceway: 'EMT' }
const hot: WiringSegment = { location: 'roof', length_ft: 12, raceway: 'EMT', height_above_roof_in: 0 }

function sizes(home: Record<string, WiringRun>, change: Partial<Electrical> = {}) {
  const runs = microProject().electrical?.runs
  const result = sizeWire(
    microProject({ ...change, runs: { ...home, to_panel: runs?.['to_panel'] as WiringRun } }, 24),
    context(),
  )
  const segments = result.values.circuits[0]?.segments.slice(1) ?? []
  return { result, segments, awg: segments.map((segment) => segment.size_awg) }
}

const home = (segments: Record<string, WiringSegment>): Record<string, WiringRun> => ({
  home: { carries: ['branches'], segments },
})

describe('one conductor has one size from splice to splice', () => {
  it('the piece that needs most rules the whole run, whatever stands between', () => {
    // On the hot roof 12 AWG carries 30 x 0.5 x 0.8 = 12 A of the 15 A, 10 AWG 40 x 0.5 x 0.8 = 16 A.
    expect(sizes(home({ roof: hot })).awg).toEqual(['10'])
    expect(sizes(home({ wall })).awg).toEqual(['12'])
    const near = { ...wall, length_ft: 5 }
    const mixed = sizes(home({ a: near, roof: hot, b: { ...wall, length_ft: 1.5 }, c: near }))
    expect(mixed.awg).toEqual(['10', '10', '10', '10'])
    expect(mixed.segments.map((segment) => segment.governs)).toEqual([
      'same_conductor',
      'conditions_of_use',
      'same_conductor',
      'same_conductor',
    ])
    expect(new Set(mixed.segments.map((segment) => segment.egc_awg)).size).toBe(1)
  })

  it('a short piece or a nipple between two others never has a smaller wire than they have', () => {
    const short = (nipple: boolean) =>
      sizes(home({ roof: hot, box: { ...wall, length_ft: 2, nipple }, end: { ...hot, length_ft: 5 } })).awg
    expect(short(false)).toEqual(['10', '10', '10'])
    expect(short(true)).toEqual(['10', '10', '10'])
  })

  it('another run begins at a splice, and has a size of its own', () => {
    const spliced = sizes({
      upper: { carries: ['branches'], segments: { roof: hot } },
      lower: { carries: ['branches'], segments: { wall } },
    })
    expect(spliced.awg).toEqual(['10', '12'])
  })

  it('another metal or insulation is a splice', () => {
    expect(sizes(home({ roof: hot, wall: { ...wall, insulation: 'XHHW-2' } })).awg).toEqual(['10', '12'])
    expect(sizes(home({ roof: hot, wall: { ...wall, material: 'aluminum' } })).awg).toEqual(['10', '10'])
    const strings = sizeWire(stringProject(), context()).values.circuits[0]?.segments
    expect(strings?.map((segment) => segment.insulation)).toEqual(['PV wire', 'THWN-2'])
  })

  it('a size named for one piece holds for the whole conductor; a smaller name beside it is an error', () => {
    const one = sizes(home({ a: { ...wall, size_awg: '6' }, b: wall }))
    expect(one.awg).toEqual(['6', '6'])
    expect(one.segments.map((segment) => segment.governs)).toEqual(['named', 'same_conductor'])
    expect(one.result.findings.map((finding) => finding.id)).not.toContain('wire.named-conductor')
    const two = sizes(home({ a: { ...wall, size_awg: '12' }, roof: hot }))
    expect(two.awg).toEqual(['10', '10'])
    const finding = two.result.findings.find(({ id }) => id === 'wire.named-conductor')
    expect(finding).toMatchObject({ severity: 'error', where: 'electrical.runs.home.segments.a.size_awg' })
    expect(finding?.message).toContain('is one conductor with home.roof, which needs 10')
    expect(finding?.fix).toContain('begin another run')
    const both = sizes(home({ a: { ...wall, size_awg: '10' }, b: { ...wall, size_awg: '6' } }))
    expect(both.awg).toEqual(['6', '6'])
    expect(both.result.findings.find(({ id }) => id === 'wire.named-conductor')?.message).toContain(
      'is one conductor with home.b, which names 6',
    )
  })

  it('the size carries 125 percent and the breaker in every piece', () => {
    for (const segment of sizes(home({ a: wall, roof: hot })).segments)
      expect(segment.ampacity_a).toBeGreaterThanOrEqual(15)
  })
})
