import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import { validate } from '../../src/project/project-validator.generated.js'
import { editions } from '../../src/tables/nec/index.js'
import { context, microProject, stringProject } from './demo.js'

const errors = (result: ReturnType<typeof sizeWire>): string[] =>
  result.findings.filter((finding) => finding.severity === 'error').map((finding) => finding.id)

describe('the demo projects', () => {
  it('are valid project files', () => {
    for (const project of [microProject(), stringProject()]) {
      expect(validate(project), JSON.stringify(validate.errors)).toBe(true)
    }
  })

  it('pass without an error in every edition but for what the edition adds', () => {
    for (const edition of editions) {
      const result = sizeWire(microProject(), { ...context(), edition })
      expect(errors(result), edition).toEqual(edition === 'NEC 2014' ? ['wire.array-electrode'] : [])
    }
    expect(errors(sizeWire(stringProject(), context()))).toEqual([])
  })
})

describe('circuits', () => {
  it('module-level inverters are split evenly into the fewest branches', () => {
    const of = (modules: number) =>
      sizeWire(microProject({}, modules), context()).values.circuits.map((circuit) => [circuit.kind, circuit.inverters])
    // 20 A device: 20 / (1.25 x 1.25 A) = 12.8 inverters.
    expect(of(12)).toEqual([
      ['ac_branch', 12],
      ['ac_combined_output', 12],
    ])
    expect(of(25).slice(0, 3)).toEqual([
      ['ac_branch', 9],
      ['ac_branch', 8],
      ['ac_branch', 8],
    ])
    expect(of(48)).toHaveLength(5)
  })

  it('currents and devices of branch and combined output', () => {
    const [branch, , output] = sizeWire(microProject(), context()).values.circuits
    expect(branch).toMatchObject({ continuous_a: 15, required_a: 18.75, breaker_a: 20, max_breaker_a: 20 })
    expect(output).toMatchObject({ id: 'output', continuous_a: 30, required_a: 37.5, breaker_a: 40 })
    // 125 percent is taken once for AC.
    expect(output?.segments[0]).toMatchObject({ size_awg: '8', governs: 'terminal', terminal_limit_a: 50 })
  })

  it('terminals that are not marked count as 60 deg C', () => {
    const marked = sizeWire(microProject(), context()).values.circuits[2]
    const result = sizeWire(microProject({ panel: { bus_a: 200, main_a: 200, spaces_free: 4 } }), context())
    expect(marked?.terminal_temperature_c).toBe(75)
    expect(result.values.circuits[2]?.terminal_temperature_c).toBe(60)
    expect(result.assumptions.map((assumption) => assumption.path)).toContain('electrical.panel.terminal_temperature_c')
  })

  it('one or two strings need no fuse, three on one input do', () => {
    const of = (count: number) =>
      sizeWire(
        stringProject(
          {},
          Array.from({ length: count }, () => ({ modules: 12, input: 1 })),
        ),
        context(),
      )
    expect(of(1).values.circuits[0]?.breaker_a).toBeNull()
    expect(of(2).values.circuits[0]?.breaker_a).toBeNull()
    expect(of(3).values.circuits[0]?.breaker_a).toBe(25)
    expect(of(3).values.circuits.filter((circuit) => circuit.kind === 'dc_string')).toHaveLength(3)
  })

  it('string length: cold limit 600 V and hot window', () => {
    const result = sizeWire(stringProject({}, [{ modules: 15, input: 1 }]), context())
    expect(errors(result)).toContain('wire.voltage-cold')
    // 37.2 V x (1 - 0.0027 x (-6 - 25)) = 40.31 V; 600 / 40.31 = 14.9.
    expect(result.values.strings[0]).toMatchObject({ modules: 15, max_modules: 14, complies: false })
    const short = sizeWire(stringProject({}, [{ modules: 3, input: 1 }]), context())
    expect(errors(short)).toContain('wire.voltage-hot')
    expect(short.values.strings[0]?.min_modules).toBe(4)
  })

  it('a device above the makers limit is an error', () => {
    const result = sizeWire(microProject({ branches: { b1: { modules: { south: 14 } } } }, 14), context())
    expect(errors(result)).toEqual(expect.arrayContaining(['wire.ocpd-above-maximum', 'wire.trunk-ampacity']))
  })

  it('a chosen breaker below the need is an error and is not used', () => {
    const result = sizeWire(
      microProject({ branches: { b1: { modules: { south: 12 }, breaker_a: 15 } } }, 12),
      context(),
    )
    expect(errors(result)).toContain('wire.breaker-too-small')
    expect(result.values.circuits[0]?.breaker_a).toBe(20)
  })
})
