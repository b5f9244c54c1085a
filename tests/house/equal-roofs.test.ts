import { describe, expect, test } from 'vitest'
import { runHouse } from '../../src/house/index.js'
import { loadProject } from '../../src/project/index.js'

const path = new URL('../../examples/fleet/template.yaml', import.meta.url).pathname
const house = (...overrides: string[]) => runHouse(loadProject({ path, overrides }))

describe('houses with equal roofs share what is worked out of them, and no others do', () => {
  test('a house elsewhere has the same mounts; of a longer span, a heavier roof, another edition it has its own', async () => {
    const { values } = await house().mounts()
    expect((await house('site.latitude_deg=40').mounts()).values.counts).toEqual(values.counts)
    const others = ['structure.framing.south.span_ft=12', 'structure.snow.ground_psf=40', 'codes.loads=ASCE 7-10']
    for (const other of others) expect((await house(other).mounts()).values, other).not.toEqual(values)
    const { loads } = (await house('codes.loads=ASCE 7-10').mounts()).values
    expect(loads.zones).not.toEqual(values.loads.zones)
    expect((await house().mounts()).values).toEqual(values)
  })

  test('the wish for a spacing and the letter of the rafters count', async () => {
    const loaded = loadProject({ path })
    const known = await runHouse(loaded).mounts()
    const closer = await runHouse(loaded, { wishes: { mounts: { spacingIn: 32 } } }).mounts()
    expect(closer.values.counts.mounts).toBeGreaterThan(known.values.counts.mounts)
    const without = await runHouse({ ...loaded, documents: new Set() }).mounts()
    expect(without.findings.map(({ id }) => id)).toContain('structure.rafter-document-missing')
    expect(known.findings.map(({ id }) => id)).not.toContain('structure.rafter-document-missing')
  })

  test('a horizon, and nothing of the place, changes what the modules see', async () => {
    const free = await house().yield()
    const behind = await house(
      'site.horizon=[{ azimuth_deg: 90, elevation_deg: 0 }, { azimuth_deg: 180, elevation_deg: 25 }, { azimuth_deg: 270, elevation_deg: 0 }]',
    ).yield()
    expect(behind.values.annual.ac_kwh).toBeLessThan(0.97 * free.values.annual.ac_kwh)
    expect((await house().yield()).values).toEqual(free.values)
  })
})
