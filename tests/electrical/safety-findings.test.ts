import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical, WiringSegment } from '../../src/project/index.js'
import { context, microProject, stringProject } from './demo.js'

const ids = (result: ReturnType<typeof sizeWire>): string[] => result.findings.map((finding) => finding.id)
const errors = (result: ReturnType<typeof sizeWire>): string[] =>
  result.findings.filter((finding) => finding.severity === 'error').map((finding) => finding.id)

const homeRun = (segments: Record<string, WiringSegment>): Partial<Electrical> => ({
  runs: { ...microProject().electrical?.runs, home: { carries: ['branches'], segments } },
})

describe('grounding', () => {
  it('array electrode: asked in 2014 only', () => {
    const of = (edition: string, electrode?: 'rod') =>
      sizeWire(
        microProject(electrode === undefined ? {} : { array_electrode: electrode, array_electrode_run_ft: 40 }),
        { ...context(), edition },
      )
    expect(errors(of('NEC 2014'))).toContain('wire.array-electrode')
    expect(of('NEC 2014', 'rod').values.grounding.electrode).toMatchObject({
      required: true,
      size_awg: '6',
      unspliced: true,
      length_ft: 40,
    })
    expect(errors(of('NEC 2014', 'rod'))).toEqual([])
    expect(of('NEC 2023').values.grounding.electrode.required).toBe(false)
  })

  it('bare array conductor: 6 AWG, smaller ones need protection', () => {
    expect(sizeWire(microProject(), context()).values.grounding.array).toMatchObject({ size_awg: '6', unspliced: true })
    expect(ids(sizeWire(microProject({ array_bonding_conductor_awg: '8' }), context()))).toContain(
      'wire.array-bonding-exposed',
    )
  })

  it('bonds metal raceway where it meets plastic', () => {
    const { values } = sizeWire(microProject(), context())
    expect(values.grounding.raceway_bonding).toEqual([
      expect.objectContaining({ at: 'home.roof to home.wall', between: 'EMT and PVC 40' }),
    ])
    const plastic: WiringSegment = { location: 'outdoor_wall', length_ft: 5, raceway: 'PVC 40' }
    expect(
      sizeWire(microProject(homeRun({ a: plastic, b: plastic })), context()).values.grounding.raceway_bonding,
    ).toEqual([])
  })
})

describe('shutdown, arc fault, ground fault, disconnects', () => {
  it('asks what the edition asks', () => {
    const bare = microProject({ rapid_shutdown: {} })
    const of = (edition: string) => errors(sizeWire(bare, { ...context(), edition }))
    expect(of('NEC 2011')).toEqual([])
    expect(of('NEC 2014')).toEqual(expect.arrayContaining(['wire.rapid-shutdown-initiator']))
    expect(of('NEC 2014')).not.toContain('wire.rapid-shutdown-outdoors')
    expect(of('NEC 2020')).toEqual(
      expect.arrayContaining(['wire.rapid-shutdown-initiator', 'wire.rapid-shutdown-outdoors']),
    )
    expect(errors(sizeWire(stringProject({ rapid_shutdown: {} }), context()))).toContain('wire.rapid-shutdown-array')
  })

  it('arc fault from 80 V on, ground fault and DC disconnect', () => {
    const project = stringProject()
    const inverter = project.equipment.inverters?.['s5000']
    if (inverter === undefined) throw new Error('no inverter')
    const bad = {
      ...project,
      equipment: {
        ...project.equipment,
        inverters: { s5000: { ...inverter, dc_afci: false, ground_fault_protection: false, dc_disconnect: false } },
      },
    }
    expect(errors(sizeWire(bad, context()))).toEqual(
      expect.arrayContaining(['wire.arc-fault', 'wire.ground-fault', 'wire.dc-disconnect']),
    )
    expect(ids(sizeWire(microProject(), context()))).not.toContain('wire.arc-fault')
  })
})
