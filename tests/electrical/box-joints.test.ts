import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical, Project, WiringBox, WiringSegment } from '../../src/project/index.js'
import { context, microProject } from './demo.js'

const inside: WiringSegment = { location: 'indoors', length_ft: 10, raceway: 'EMT' }
const box = (change: Partial<WiringBox> = {}): WiringBox => ({
  kind: 'box',
  volume_in3: 90,
  clamps: 'none',
  ...change,
})

const sized = (runs: Electrical['runs'], change: (project: Project) => Project = (project) => project) =>
  sizeWire(
    change(microProject({ runs: { ...runs, to_panel: { carries: ['output'], segments: { inside } } } })),
    context(),
  )

const home = (segments: Record<string, WiringSegment>, first?: WiringBox): Electrical['runs'] => ({
  home: { carries: ['branches'], segments, ...(first === undefined ? {} : { first_box: first }) },
})

describe('what enters a box', () => {
  it('wires of a raceway and of a cable are spliced even where their insulation is the same', () => {
    const result = sized(
      home({
        pipe: { ...inside, insulation: 'THHN', size_awg: '8', box: box() },
        cable: { ...inside, raceway: 'MC', insulation: 'THHN' },
      }),
    )
    expect(result.values.circuits[0]?.segments.map(({ size_awg: size }) => size)).toEqual(['12', '8', '12'])
    // 4 x 8 AWG in, 4 x 12 AWG out; the ground of 8 AWG is the largest.
    expect(result.values.boxes[0]).toMatchObject({ spliced: true, required_in3: 4 * 3 + 4 * 2.25 + 3 })
  })

  it('a neutral that begins behind the box counts', () => {
    const runs = (neutral: boolean): Electrical['runs'] => ({
      home: { carries: ['branches'], neutral: false, segments: { a: { ...inside, box: box() } } },
      on: { carries: ['branches'], neutral, segments: { b: inside } },
    })
    expect(sized(runs(false)).values.boxes[0]?.count).toBe(5)
    expect(sized(runs(true)).values.boxes[0]).toMatchObject({ spliced: false, count: 7 })
  })

  it('at a splice the grounds of both sides count, from the fifth on a quarter', () => {
    const need = (splice: boolean) =>
      sized(
        home({
          a: { ...inside, box: box({ splice, other_conductors: [{ size_awg: '12', count: 3, grounding: true }] }) },
          b: inside,
        }),
      ).values.boxes[0]?.required_in3
    expect(need(false)).toBe(4 * 2.25 + 2.25)
    expect(need(true)).toBe(8 * 2.25 + 2.25 * 1.25)
  })

  it('the grounding conductor of a trunk cable counts', () => {
    const first = box({ other_conductors: [{ size_awg: '6', count: 2, grounding: true }] })
    const need = (hasGround: boolean) =>
      sized(home({ a: inside }, first), (project) => {
        const trunk = project.equipment.trunk_cables?.['trunk12']
        if (trunk === undefined) throw new Error('no trunk')
        return {
          ...project,
          equipment: { ...project.equipment, trunk_cables: { trunk12: { ...trunk, has_egc: hasGround } } },
        }
      }).values.boxes[0]?.required_in3
    // Grounds of 6 AWG: 1 of the array, 1 on, 2 named; two trunks make six.
    expect(need(false)).toBe(8 * 2.25 + 5)
    expect(need(true)).toBe(8 * 2.25 + 5 * 1.5)
  })

  it('two ways that go on as one meet in the box', () => {
    const result = sized({
      one: { carries: ['south_1'], segments: { a: inside } },
      two: { carries: ['south_2'], segments: { a: { ...inside, box: box() } } },
      on: { carries: ['branches'], segments: { b: inside } },
    })
    // Four conductors pass whole, and the grounds of both count as one.
    expect(result.values.boxes[0]).toMatchObject({ id: 'two.a.box', spliced: false, required_in3: 4 * 2.25 + 2.25 })
    const split = sized({
      one: { carries: ['south_1'], segments: { a: inside } },
      two: { carries: ['south_2'], segments: { a: { ...inside, box: box({ splice: true }) } } },
      on: { carries: ['branches'], segments: { b: inside } },
    })
    expect(split.values.boxes[0]?.required_in3).toBe(8 * 2.25 + 2.25)
  })

  it('behind cables of 4 AWG the tubing that they would need decides the length', () => {
    const cable: WiringSegment = { ...inside, raceway: 'MC', size_awg: '2', insulation: 'THHN', cables_spaced: true }
    const result = sized(home({ a: { ...cable, box: box({ pull: 'straight', length_in: 20 }) }, b: cable }))
    // Two cables of 2 x 2 AWG with ground 2 AWG: 6 x 0.1158 = 0.695 in2, EMT 1-1/2 (0.814 at 40 %).
    expect(result.values.boxes[0]).toMatchObject({ required_length_in: 12, complies: true })
  })

  it('a raceway of unknown trade size leaves nothing to check against', () => {
    const body: WiringBox = { kind: 'conduit_body', area_in2: 2 }
    const found = (trade: Partial<WiringSegment>) =>
      sized(home({ a: { ...inside, ...trade, box: body }, b: { ...inside, ...trade } })).findings.map(({ id }) => id)
    expect(found({ raceway: 'FMC', trade_size: '3/4' })).toContain('wire.box-not-checked')
    expect(found({})).not.toContain('wire.box-not-checked')
  })

  it('the 10 ft rule takes no factors of another column', () => {
    const correction = (raceway: 'NM' | 'UF') =>
      sizeWire(
        microProject({
          use_10ft_rule: true,
          runs: {
            ...home({
              hot: { ...inside, raceway: 'UF', length_ft: 4, ambient_c: 45 },
              cool: { ...inside, raceway, length_ft: 60, ambient_c: 25 },
            }),
            to_panel: { carries: ['output'], segments: { inside } },
          },
        }),
        context(),
      ).values.circuits[0]?.segments[1]?.correction
    expect(correction('UF')).toBe(1.08)
    expect(correction('NM')).toBe(0.71)
  })
})

describe('facts of a box that change nothing are told', () => {
  it.each([
    [{ kind: 'conduit_body', area_in2: 2, clamps: 'internal' }, 'clamps'],
    [{ kind: 'conduit_body', area_in2: 2, devices: [{}] }, 'devices'],
    [{ kind: 'conduit_body', area_in2: 2, extension_in3: 2 }, 'extension_in3'],
    [{ kind: 'conduit_body', area_in2: 2, short_radius: true }, 'area_in2'],
    [{ kind: 'box', volume_in3: 90, splice: true, long_loops: true }, 'long_loops'],
    [{ kind: 'box', extension_in3: 3 }, 'extension_in3'],
  ] as const)('%j: %s', (stated, key) => {
    const held: WiringBox = structuredClone(stated) as WiringBox
    const { findings } = sized(home({ a: { ...inside, box: held }, b: inside }))
    expect(findings.find(({ id }) => id === 'wire.box-facts-unused')?.message).toContain(`${key} of home.a.box`)
  })

  it('and those that change something are not', () => {
    const { findings } = sized(
      home({
        a: { ...inside, box: box({ splice: true, extension_in3: 2, devices: [{}], terminal_blocks: 1 }) },
        b: inside,
      }),
    )
    expect(findings.map(({ id }) => id)).not.toContain('wire.box-facts-unused')
  })
})
