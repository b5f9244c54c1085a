import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import { context, microProject } from './demo.js'
import { garageTree, treeProject } from './tree-house.js'

const house = (lengthFt: number) => {
  const feeder = garageTree.feeders?.['to_garage']
  if (feeder === undefined) throw new Error('no feeder')
  return sizeWire(
    treeProject({ ...garageTree, feeders: { to_garage: { ...feeder, length_ft: lengthFt } } }, {}, 12),
    context(),
  )
}

describe('voltage rise along the feeder behind the panel with the PV breaker', () => {
  it('is that of all sources that pass, over both conductors', () => {
    // NEC Chapter 9 Table 8, 6 AWG copper 0.491 ohm per 1000 ft; 15 A of inverters over 40 ft: 0.589 V of 240 V.
    const step = house(40).worksheet.find(({ id }) => id === 'wire.feeder.to_garage.rise')
    expect(step?.result.value).toBeCloseTo((100 * 2 * 40 * 15 * 0.491) / 1000 / 240, 3)
  })

  it('counts with the rise of the circuits against the limit of the inverters', () => {
    const ids = (lengthFt: number) => house(lengthFt).findings.map(({ id }) => id)
    expect(ids(20)).not.toContain('wire.feeder-rise')
    expect(ids(40)).toContain('wire.feeder-rise')
  })
})

describe('a supply-side device far from the connection in an edition without a limit', () => {
  const ids = (edition: string, distanceFt: number) =>
    sizeWire(microProject({ connection: { kind: 'supply_side', overcurrent_device_distance_ft: distanceFt } }), {
      ...context(),
      edition,
    }).findings.map(({ id, severity }) => `${id} ${severity}`)

  it('is a warning in 2023 and an error before', () => {
    expect(ids('NEC 2023', 14)).toContain('wire.supply-side-far warning')
    expect(ids('NEC 2023', 10)).not.toContain('wire.supply-side-far warning')
    expect(ids('NEC 2020', 14)).toContain('wire.supply-side-distance error')
  })
})
