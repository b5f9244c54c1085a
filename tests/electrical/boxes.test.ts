import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical, WiringBox, WiringSegment } from '../../src/project/index.js'
import { boxVolumes } from '../../src/tables/nec/index.js'
import { standardBoxNames } from './schema-words.js'
import { context, microProject, stringProject } from './demo.js'

const roof: WiringSegment = { location: 'roof', height_above_roof_in: 1, length_ft: 20, raceway: 'EMT' }
const wall: WiringSegment = { location: 'outdoor_wall', length_ft: 12, raceway: 'EMT' }

interface Way {
  readonly box?: WiringBox
  readonly before?: Partial<WiringSegment>
  readonly after?: Partial<WiringSegment>
  readonly first?: WiringBox
  readonly edition?: string
}

const sized = ({ box, before, after, first, edition = 'NEC 2020' }: Way) => {
  const runs: Electrical['runs'] = {
    ...microProject().electrical?.runs,
    home: {
      carries: ['branches'],
      ...(first === undefined ? {} : { first_box: first }),
      segments: {
        roof: { ...roof, ...before, ...(box === undefined ? {} : { box }) },
        wall: { ...wall, ...after },
      },
    },
  }
  return sizeWire(microProject({ runs }), { ...context(), edition })
}

const boxOf = (way: Way) => {
  const result = sized(way)
  return {
    box: result.values.boxes[0],
    found: result.findings
      .filter(({ id }) => /box|conduit-body/.test(id))
      .map(({ severity, id }) => `${severity} ${id}`),
    result,
  }
}

describe('boxes by volume', () => {
  it('conductors that pass whole count once, grounds once for all', () => {
    // 4 x 12 AWG and one ground of 12 AWG: 5 x 2.25.
    const { box, found } = boxOf({ box: { kind: 'box', clamps: 'external', standard_box: '4 x 1-1/4 round' } })
    expect(box).toEqual({
      id: 'home.roof.box',
      run: 'home',
      after_segment: 'home.roof',
      kind: 'box',
      standard_box: '4 x 1-1/4 round',
      spliced: false,
      volume_in3: 12.5,
      required_in3: 11.25,
      count: 5,
      length_in: null,
      required_length_in: null,
      complies: true,
      section: '314.16',
    })
    expect(found).toEqual([])
  })

  it('a splice counts both sides; clamps that are not stated count, which is an assumption', () => {
    const spliced = (box: Partial<WiringBox>) => boxOf({ box: { kind: 'box', splice: true, volume_in3: 30, ...box } })
    expect(spliced({ clamps: 'none' }).box?.required_in3).toBe(8 * 2.25 + 2.25)
    const open = spliced({})
    expect(open.box?.required_in3).toBe(8 * 2.25 + 2.25 + 2.25)
    expect(open.result.assumptions.map(({ path }) => path)).toContain('electrical.runs.home.segments.roof.box.clamps')
  })

  it('too small is an error with a box of the table that would do', () => {
    const { box, found, result } = boxOf({ box: { kind: 'box', splice: true, standard_box: '4 x 1-1/2 square' } })
    expect(box?.complies).toBe(false)
    expect(found).toEqual(['error wire.box-fill'])
    const finding = result.findings.find(({ id }) => id === 'wire.box-fill')
    expect(finding?.message).toContain('needs 22.50 in3')
    expect(finding?.fix).toContain('4-11/16 x 1-1/4 square')
    expect(boxOf({ box: { kind: 'box', splice: true, volume_in3: 22.5 } }).box?.complies).toBe(true)
    expect(boxOf({ box: { kind: 'box', splice: true, volume_in3: 22.4 } }).box?.complies).toBe(false)
    const extended = boxOf({ box: { kind: 'box', splice: true, volume_in3: 20, extension_in3: 2.5 } })
    expect(extended.box).toMatchObject({ volume_in3: 22.5, complies: true })
  })

  it('a box without volume is not checked and says so', () => {
    const { box, found } = boxOf({ box: { kind: 'box', splice: true } })
    expect(box).toMatchObject({ complies: null, volume_in3: null, required_in3: 22.5 })
    expect(found).toEqual(['warning wire.box-not-checked'])
  })

  it('every stated fact moves the volume', () => {
    const need = (box: Partial<WiringBox>) =>
      boxOf({ box: { kind: 'box', clamps: 'none', volume_in3: 99, ...box } }).box?.required_in3
    const plain = need({}) ?? 0
    expect(need({ clamps: 'internal' })).toBe(plain + 2.25)
    expect(need({ support_fittings: 2 })).toBe(plain + 4.5)
    expect(need({ terminal_blocks: 1 })).toBe(plain + 2.25)
    expect(need({ long_loops: true })).toBe(plain + 4 * 2.25)
    expect(need({ devices: [{}] })).toBe(plain + 4.5)
    expect(need({ devices: [{ size_awg: '14', gangs: 2 }] })).toBe(plain + 8)
    expect(need({ other_conductors: [{ size_awg: '14', count: 3 }] })).toBe(plain + 6)
    expect(need({ other_conductors: [{ size_awg: '12', count: 3, grounding: true }] })).toBe(plain)
    expect(need({ other_conductors: [{ size_awg: '12', count: 4, grounding: true }] })).toBe(plain + 2.25 / 4)
  })

  it('conductors that change in a box are spliced in it, whether it says so or not', () => {
    const change = { before: { insulation: 'XHHW-2' } as const }
    expect(boxOf({ box: { kind: 'box', volume_in3: 30 }, ...change }).box).toMatchObject({
      spliced: true,
      required_in3: 22.5,
    })
  })

  it('cables: two NM with grounds meet a raceway', () => {
    const nm = { location: 'attic', ambient_c: 50, raceway: 'NM' } as const
    const { box } = boxOf({ box: { kind: 'box', splice: true, volume_in3: 30, clamps: 'none' }, after: nm })
    // 4 in, 4 out; grounds 1 + 2.
    expect(box).toMatchObject({ required_in3: 8 * 2.25 + 2.25, spliced: true })
    const bare = boxOf({ after: nm })
    expect(bare.found).toEqual(['warning wire.joint-without-box'])
    expect(boxOf({ box: { kind: 'box', splice: true, volume_in3: 30 }, after: nm }).found).toEqual([])
    expect(boxOf({ after: { raceway: 'PVC 40' } }).found).toEqual([])
  })

  it('foreign conductors of a raceway have to be named for the box', () => {
    const others = { other_conductors: { current_carrying: 2, total: 3, area_in2: 0.05 } }
    const box: WiringBox = { kind: 'box', volume_in3: 50 }
    expect(boxOf({ box, before: others }).found).toEqual(['warning wire.box-not-checked'])
    const named = boxOf({ box: { ...box, other_conductors: [{ size_awg: '10', count: 3 }] }, before: others })
    expect(named.found).toEqual([])
  })

  it('the names of the schema are those of the table', () => {
    expect(standardBoxNames()).toEqual(boxVolumes.map(({ id }) => id))
  })
})

describe('the box where a run begins', () => {
  it('trunk cables end in it, and the bare conductor of the array', () => {
    const { box, found } = boxOf({ first: { kind: 'box', volume_in3: 26, clamps: 'none' } })
    // 2 x 2 of the trunks, 4 on; grounds: 6 AWG bare and 12 AWG.
    expect(box).toMatchObject({ id: 'home.first_box', after_segment: null, spliced: true, required_in3: 8 * 2.25 + 5 })
    expect(found).toEqual([])
  })

  it('leads of strings that no segment brings have to be named', () => {
    const project = (first: WiringBox) =>
      stringProject({
        runs: {
          dc: { carries: ['strings'], first_box: first, segments: { roof } },
          ac: { carries: ['inverter_outputs'], segments: { in: { ...wall, location: 'indoors' } } },
        },
      })
    const open = sizeWire(project({ kind: 'box', volume_in3: 40 }), context())
    expect(open.findings.map(({ id }) => id)).toContain('wire.box-not-checked')
    const named = sizeWire(
      project({ kind: 'box', volume_in3: 40, other_conductors: [{ size_awg: '10', count: 2 }] }),
      context(),
    )
    expect(named.findings.map(({ id }) => id)).not.toContain('wire.box-not-checked')
  })

  it('two strings of 10 AWG, spliced in the box behind the array: 25.0 in3', () => {
    const result = sizeWire(
      stringProject(
        {
          runs: {
            dc: {
              carries: ['strings'],
              segments: {
                array: {
                  location: 'array',
                  raceway: 'none',
                  length_ft: 10,
                  size_awg: '10',
                  box: { kind: 'box', splice: true, clamps: 'external', standard_box: '4-11/16 x 1-1/4 square' },
                },
                roof: { ...roof, size_awg: '10' },
              },
            },
            ac: { carries: ['inverter_outputs'], segments: { in: { ...wall, location: 'indoors' } } },
          },
        },
        [
          { modules: 10, input: 1 },
          { modules: 10, input: 2 },
        ],
      ),
      context(),
    )
    // 4 + 4 conductors of 10 AWG; grounds of 6 and 10 AWG count as one of 6 AWG.
    expect(result.values.boxes[0]).toMatchObject({ required_in3: 25, volume_in3: 25.5, complies: true })
  })
})

describe('conductors of 4 AWG and larger', () => {
  const large = (box: Partial<WiringBox>) =>
    boxOf({
      box: { kind: 'box', ...box },
      before: { size_awg: '4', trade_size: '2' },
      after: { size_awg: '4', trade_size: '1-1/2' },
    })

  it('straight pull: 8 times the largest raceway', () => {
    expect(large({ pull: 'straight', length_in: 16 }).box).toMatchObject({ complies: true, required_length_in: 16 })
    expect(large({ pull: 'straight', length_in: 15.9 }).found).toContain('error wire.box-pull')
    expect(large({ pull: 'straight', length_in: 15.9 }).box?.section).toBe('314.28(A)')
  })

  it('angle: 6 times and the others of the row, and the distance between the entries', () => {
    const angle: Partial<WiringBox> = { pull: 'angle', other_trade_sizes: ['1'] }
    expect(large({ ...angle, length_in: 13, entry_distance_in: 12 }).box?.complies).toBe(true)
    expect(large({ ...angle, length_in: 12.9, entry_distance_in: 12 }).found).toContain('error wire.box-pull')
    expect(large({ ...angle, length_in: 13, entry_distance_in: 11.9 }).found).toContain('error wire.box-pull')
    expect(large({ ...angle, length_in: 13 }).found).toEqual(['warning wire.box-not-checked'])
  })

  it('a splice in a straight box counts the others of its row', () => {
    const box: Partial<WiringBox> = { pull: 'straight', splice: true, other_trade_sizes: ['2', '2', '2'] }
    expect(large({ ...box, length_in: 16 }).box?.required_length_in).toBe(18)
  })

  it('what is not stated is not checked; a marking for the conductors settles it', () => {
    expect(large({}).found).toEqual(['warning wire.box-not-checked'])
    expect(large({}).box?.complies).toBeNull()
    expect(large({ marked_for_conductors: true }).box?.complies).toBe(true)
    expect(large({ marked_for_conductors: true, length_in: 3 }).found).toEqual(['note wire.box-facts-unused'])
  })

  it('an entry opposite a removable cover keeps its distance by the largest conductor', () => {
    const at = (coverIn: number, size: '4' | '2' | '1/0') =>
      boxOf({
        box: { kind: 'box', pull: 'straight', length_in: 24, cover_distance_in: coverIn },
        before: { size_awg: size, trade_size: '2' },
        after: { size_awg: size, trade_size: '2' },
      }).found
    expect([at(2, '4'), at(1.9, '4')]).toEqual([[], ['error wire.box-pull']])
    expect([at(2.5, '2'), at(2.4, '2')]).toEqual([[], ['error wire.box-pull']])
    expect([at(3.5, '1/0'), at(3.4, '1/0')]).toEqual([[], ['error wire.box-pull']])
  })

  it('below 4 AWG those facts change nothing, and that is told', () => {
    expect(boxOf({ box: { kind: 'box', volume_in3: 20, pull: 'straight', length_in: 3 } }).found).toEqual([
      'note wire.box-facts-unused',
    ])
  })
})

describe('conduit bodies', () => {
  it('the cross-section is twice that of the largest raceway', () => {
    // EMT 1/2: 0.304 in2.
    expect(boxOf({ box: { kind: 'conduit_body', area_in2: 0.608 } })).toMatchObject({
      box: { complies: true, required_in3: null, section: '314.16(C)' },
      found: [],
    })
    expect(boxOf({ box: { kind: 'conduit_body', area_in2: 0.607 } }).found).toEqual(['error wire.conduit-body'])
    expect(boxOf({ box: { kind: 'conduit_body' } }).found).toEqual(['warning wire.box-not-checked'])
  })

  it('splices need a marked volume and no short radius', () => {
    const body = (box: Partial<WiringBox>) =>
      boxOf({ box: { kind: 'conduit_body', splice: true, area_in2: 1, clamps: 'none', ...box } })
    expect(body({}).found).toContain('error wire.conduit-body')
    expect(body({ volume_in3: 21 }).box).toMatchObject({ complies: true, required_in3: 20.25 })
    expect(body({ volume_in3: 20 }).found).toEqual(['error wire.box-fill'])
    expect(body({ volume_in3: 21, short_radius: true }).found).toContain('error wire.conduit-body')
  })

  it('with conductors of 4 AWG goes by its length or its marking, not by its cross-section', () => {
    const large = (box: Partial<WiringBox>) =>
      boxOf({
        box: { kind: 'conduit_body', ...box },
        before: { size_awg: '4', trade_size: '2' },
        after: { size_awg: '4', trade_size: '2' },
      })
    expect(large({ marked_for_conductors: true })).toMatchObject({ box: { complies: true }, found: [] })
    expect(large({ pull: 'straight', length_in: 15 }).found).toEqual(['error wire.box-pull'])
  })

  it('is no box for a nipple: the pieces on both sides count together', () => {
    const nipples = (kind: WiringBox['kind']) => () =>
      sized({
        box: { kind, volume_in3: 30, ...(kind === 'box' ? {} : { area_in2: 2 }) },
        before: { length_ft: 1.5, nipple: true },
        after: { length_ft: 1.5 },
      })
    expect(nipples('box')).not.toThrow()
    expect(nipples('conduit_body')).toThrow('a raceway of 36 in is no nipple')
  })
})

describe('keys that contradict', () => {
  it.each([
    [{ kind: 'box', area_in2: 2 }, 'area_in2 belongs to a conduit body'],
    [{ kind: 'box', short_radius: false }, 'short_radius belongs to a conduit body'],
    [{ kind: 'conduit_body', standard_box: '4 x 1-1/2 square' }, 'no box of the table'],
    [{ kind: 'box', standard_box: '4 x 1-1/2 square', volume_in3: 21 }, 'both standard_box and volume_in3'],
  ] as const)('%j: %s', (box, message) => {
    expect(() => sized({ box })).toThrow(message)
  })

  it('a box where nothing goes on is refused', () => {
    const runs: Electrical['runs'] = {
      home: { carries: ['branches'], segments: { roof } },
      to_panel: { carries: ['output'], segments: { wall: { ...wall, box: { kind: 'box' } } } },
    }
    expect(() => sizeWire(microProject({ runs }), context())).toThrow('ends at equipment')
  })
})

describe('sizes behind a splice', () => {
  const sizes = (splice: boolean) =>
    sized({
      box: { kind: 'box', volume_in3: 60, splice },
      before: { ambient_c: 50, height_above_roof_in: 0.2 },
      after: { length_ft: 5 },
    }).values.circuits[0]?.segments.map(({ size_awg: size }) => size)

  it('one size where the conductor passes whole, its own on each side of a splice', () => {
    expect(sizes(false)).toEqual(['12', '6', '6'])
    expect(sizes(true)).toEqual(['12', '6', '12'])
  })
})
