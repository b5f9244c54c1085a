import type { ArrayOfModules, Project, RoofPlane } from '../../src/project/index.js'

/** A project with one plane and one array; what is invented here is enough for the roof and nothing else. */
export function roofProject(
  plane: Partial<RoofPlane> & Pick<RoofPlane, 'outline'>,
  array: Partial<ArrayOfModules> = {},
  rest: Partial<Project> = {},
): Project {
  return {
    format: 'gablewatt/2',
    title: 'Invented roof',
    site: { latitude_deg: 40, longitude_deg: -90 },
    roof_planes: { south: { azimuth_deg: 180, tilt_deg: 30, ...plane } },
    arrays: {
      south: { roof_plane: 'south', module: 'm', mounting: 'near_roof', standoff_in: 4, ...array },
    },
    // Invented module of exactly 5 by 3 ft, so that counts can be checked in the head.
    equipment: { modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.34, length_in: 60, width_in: 36 } } },
    ...rest,
  }
}
