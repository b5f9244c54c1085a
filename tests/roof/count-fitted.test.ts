import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { arrangeModules, countFitted } from '../../src/roof/index.js'
import { StageError } from '../../src/worksheet/index.js'

function house(widthFt: number, modules?: number): Project {
  return {
    format: 'gablewatt/2',
    title: 'fitted',
    site: { latitude_deg: 40, longitude_deg: -100 },
    roof_planes: {
      south: { azimuth_deg: 180, tilt_deg: 25, outline: { shape: 'rectangle', width_ft: widthFt, depth_ft: 16 } },
    },
    arrays: {
      south: {
        roof_plane: 'south',
        module: 'm',
        inverter: 'i',
        mounting: 'near_roof',
        standoff_in: 4,
        arrangement: { fit: { orientation: 'portrait', gap_in: 0 } },
        ...(modules === undefined ? {} : { modules }),
      },
    },
    equipment: { modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 72, width_in: 48 } } },
  }
}

describe('fitted arrays without a number', () => {
  // Two rows of 6 ft in 16 ft, eight columns of 4 ft in 33 ft (plane geometry).
  it('get as many modules as the roof takes', () => {
    const counted = countFitted(house(33))
    expect(counted.arrays['south']?.modules).toBe(16)
    expect(arrangeModules(counted).values.modules).toEqual(arrangeModules(house(33)).values.modules)
  })

  it('are left alone where the number is stated', () => {
    const stated = house(33, 5)
    expect(countFitted(stated)).toBe(stated)
  })

  it('are refused where not one module has room', () => {
    expect(() => countFitted(house(3))).toThrow(StageError)
    expect(() => countFitted(house(3))).toThrow(/no room for a module of array 'south'/u)
  })
})
