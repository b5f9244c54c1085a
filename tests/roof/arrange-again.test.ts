import { expect, test } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { arrangeModules } from '../../src/roof/index.js'

const arrangement = { fit: { orientation: 'portrait' as const, gap_in: 0 } }
const array = {
  roof_plane: 'south',
  module: 'm',
  inverter: 'i',
  modules: 4,
  mounting: 'near_roof' as const,
  standoff_in: 4,
  arrangement,
}
const house: Project = {
  format: 'gablewatt/2',
  title: 'again',
  site: { latitude_deg: 40, longitude_deg: -100 },
  roof_planes: {
    south: { azimuth_deg: 180, tilt_deg: 25, outline: { shape: 'rectangle', width_ft: 33, depth_ft: 16 } },
  },
  arrays: { south: array },
  equipment: { modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 72, width_in: 48 } } },
}

test('a project that is asked again is not arranged again, one that was changed meanwhile is', () => {
  const first = arrangeModules(house)
  expect(arrangeModules(house)).toBe(first)
  house.arrays['south'] = { ...array, modules: 6 }
  expect(arrangeModules(house).values.modules).toHaveLength(6)
  expect(first.values.modules).toHaveLength(4)
})
