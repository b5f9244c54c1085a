import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { estimateYield, type YieldValues } from '../../src/yield/index.js'

type Wiring = 'modules' | 'one string' | 'two inputs' | 'one input' | 'converters'

/** Twelve modules in two rows on an invented roof, on strings or with electronics of their own. */
function values(wiring: Wiring, change: (project: Project) => void = () => {}): YieldValues {
  const strings = {
    modules: undefined,
    'one string': [{ modules: 12, inverter_unit: 'garage', input: 1 }],
    'two inputs': [
      { modules: 6, inverter_unit: 'garage', input: 1 },
      { modules: 6, inverter_unit: 'garage', input: 2 },
    ],
    'one input': [
      { modules: 6, inverter_unit: 'garage', input: 1 },
      { modules: 6, inverter_unit: 'garage', input: 1 },
    ],
    converters: [{ modules: 12, inverter_unit: 'garage', input: 1 }],
  }[wiring]
  const project: Project = {
    format: 'gablewatt/2',
    title: 'strings',
    site: { latitude_deg: 38.75, longitude_deg: -90.37, elevation_ft: 500 },
    roof_planes: {
      south: { azimuth_deg: 180, tilt_deg: 27, outline: { shape: 'rectangle', width_ft: 40, depth_ft: 20 } },
    },
    arrays: {
      south: {
        roof_plane: 'south',
        module: 'm',
        ...(strings === undefined ? { inverter: 'i' } : { strings }),
        ...(wiring === 'converters' ? { optimiser: 'o' } : {}),
        mounting: 'near_roof',
        standoff_in: 4,
        arrangement: { blocks: { main: { orientation: 'portrait', rows: 2, columns: 6, x_ft: 6, y_ft: 2 } } },
      },
    },
    ...(strings === undefined ? {} : { inverter_units: { garage: { inverter: 's' } } }),
    equipment: {
      modules: {
        m: {
          pmax_w: 400,
          pmax_temp_coeff_pct_per_c: -0.35,
          length_in: 68,
          width_in: 45,
          voc_v: 37.1,
          isc_a: 13.8,
          vmp_v: 31.1,
          imp_a: 12.9,
        },
      },
      inverters: {
        i: { kind: 'module_level', ac_power_w: 450, weighted_efficiency_pct: 97 },
        s: { kind: 'string', ac_power_w: 6000, weighted_efficiency_pct: 97 },
      },
    },
    losses: { snow_pct: 0 },
  }
  change(project)
  return estimateYield(project).values
}

const withChimney = (project: Project): void => {
  project.roof_planes['south']!.obstructions = {
    stack: { kind: 'chimney', x_ft: 14, y_ft: 0.2, width_ft: 2.5, length_ft: 1.5, height_ft: 5 },
  }
}
const withTree =
  (widthFt: number, transmittance: number) =>
  (project: Project): void => {
    project.site.obstacles = {
      tree: { bearing_deg: 200, distance_ft: 35, width_ft: widthFt, height_ft: 18, base_height_ft: -10, transmittance },
    }
  }
const mismatch = (wiring: Wiring, change: (project: Project) => void): number => {
  const { modules } = values(wiring, change)
  return modules.reduce((sum, module) => sum + module.mismatch_loss_pct, 0) / modules.length
}
const light = (wiring: Wiring, change: (project: Project) => void): number[] =>
  values(wiring, change).modules.map((module) => module.light_loss_pct)

describe('shade on modules in series', () => {
  it('takes the same light whatever the wiring', () => {
    for (const change of [withChimney, withTree(12, 0.1)]) {
      const alone = light('modules', change)
      expect(Math.max(...alone)).toBeGreaterThan(1)
      for (const wiring of ['one string', 'two inputs', 'one input', 'converters'] as const) {
        light(wiring, change).forEach((loss, index) => expect(loss).toBeCloseTo(alone[index]!, 9))
      }
    }
  })

  it('costs nothing besides where nothing shades, or where all is shaded alike', () => {
    for (const wiring of ['modules', 'one string', 'one input'] as const) {
      expect(mismatch(wiring, () => {})).toBe(0)
      expect(
        mismatch(wiring, (project) => {
          project.site.horizon = [
            { azimuth_deg: 90, elevation_deg: 15 },
            { azimuth_deg: 270, elevation_deg: 15 },
          ]
        }),
      ).toBeLessThan(0.7)
    }
  })

  it('costs more on a string than behind electronics at each module', () => {
    for (const change of [withChimney, withTree(8, 0.1)]) {
      const alone = mismatch('modules', change)
      expect(mismatch('converters', change)).toBeCloseTo(alone, 9)
      expect(mismatch('one string', change)).toBeGreaterThan(alone + 0.2)
      expect(mismatch('two inputs', change)).toBeGreaterThan(alone)
    }
  })

  it('costs no more in all than a string that stands still at the dull current', () => {
    // Sections in the shade of the chimney give at least what all sections give by the light of the sky.
    expect(mismatch('one string', withChimney)).toBeLessThan(12)
  })

  it('takes a shadow on one module from the whole string, with nothing else in it', () => {
    // Beam only: what a string loses besides is what the shadow of the chimney does to it.
    const beamOnly = (project: Project): void => {
      project.roof_planes['south']!.obstructions = {
        stack: { kind: 'chimney', x_ft: 2, y_ft: 4, width_ft: 3, length_ft: 1.5, height_ft: 3 },
      }
      project.model = { diffuse_shading: false }
    }
    const lost = values('one string', beamOnly).modules
    const alone = values('modules', beamOnly).modules
    const energy = (modules: typeof lost): number => modules.reduce((sum, module) => sum + module.ac_kwh, 0)
    const free = energy(values('one string', () => {}).modules)
    const freeAlone = energy(values('modules', () => {}).modules)
    expect(energy(lost) / free).toBeLessThan(energy(alone) / freeAlone - 0.001)
    // Those that the shadow hardly reaches lose as the string does: more than their own light.
    const hardly = lost.toSorted((a, b) => a.light_loss_pct - b.light_loss_pct).slice(0, 4)
    for (const module of hardly) expect(module.mismatch_loss_pct).toBeGreaterThan(2 * module.light_loss_pct)
  })

  it('costs less on two inputs than on one string, as the other string is free', () => {
    const onlyLeft = (project: Project): void => {
      project.roof_planes['south']!.obstructions = {
        stack: { kind: 'chimney', x_ft: 2, y_ft: 0.2, width_ft: 3, length_ft: 1.5, height_ft: 6 },
      }
    }
    expect(mismatch('two inputs', onlyLeft)).toBeLessThan(mismatch('one string', onlyLeft))
  })

  it('costs nothing where a tree before all modules lets light through', () => {
    const wide = mismatch('one string', (project) => {
      withTree(2000, 0.4)(project)
      Object.assign(project.site.obstacles!['tree']!, { height_ft: 900, base_height_ft: -500 })
    })
    const narrow = mismatch('one string', withTree(8, 0.4))
    expect(narrow).toBeGreaterThan(0.2)
    expect(wide).toBeLessThan(0.3)
  })
})
