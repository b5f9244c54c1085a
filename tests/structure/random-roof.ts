import type { FitRequest, Outline, Project } from '../../src/project/index.js'
import { RandomSource } from '../../src/values/index.js'
import { demoProject } from './demo-house.js'

/** An invented house with one plane, an array to be fitted, and rafters and a rail of many kinds; the same for the same seed. */
export function randomRoof(seed: number, size: 'house' | 'small' = 'house'): Project {
  const random = new RandomSource(seed)
  const between = (low: number, high: number): number => low + (high - low) * random.uniform()
  const pick = <One>(...ones: readonly One[]): One => ones[Math.floor(random.uniform() * ones.length)] as One
  const house = size === 'house'
  const widthFt = house ? between(14, 48) : between(6, 13)
  const depthFt = house ? between(8, 20) : between(6, 12.5)
  const shape = house ? pick('rectangle', 'rectangle', 'hip', 'triangle', 'l_shape') : pick('rectangle', 'hip')
  const outline = outlineOf(shape, widthFt, depthFt, between)
  const obstructions: NonNullable<Project['roof_planes'][string]['obstructions']> = {}
  for (let i = Math.floor(between(0, house ? 4 : 2)); i > 0; i--) {
    const [width_ft, length_ft] = pick([0.3, 0.3], [1, 1], [3, 2], [2, 4])
    obstructions[`o${i}`] = {
      x_ft: between(0.1, 0.8) * widthFt,
      y_ft: between(0.05, 0.75) * depthFt,
      width_ft: width_ft ?? 1,
      length_ft: length_ft ?? 1,
      height_ft: 1,
      clearance_in: pick(0, 3, 6, 12),
    }
  }
  const project = demoProject()
  const spacing = pick(12, 16, 19.2, 24)
  const orientation = pick<FitRequest['orientation']>('portrait', 'landscape', 'either', 'either')
  project.roof_planes = {
    south: { azimuth_deg: 180, tilt_deg: 22, outline, obstructions, edge_clearance_in: pick(0, 3, 8, 12) },
  }
  project.arrays = {
    south: {
      roof_plane: 'south',
      module: 'm410',
      mounting: 'near_roof',
      standoff_in: 4,
      arrangement: { fit: { orientation, centered: pick(true, false) } },
    },
  }
  Object.assign(project.structure?.building ?? {}, {
    roof_kind: shape === 'hip' || shape === 'triangle' ? 'hip' : 'gable',
  })
  Object.assign(project.structure?.framing?.['south'] ?? {}, {
    spacing_in: spacing,
    first_offset_in: between(0, spacing),
    eave_overhang_in: pick(0, 12),
    rake_overhang_in: pick(0, 6),
    nominal_size: '2x10',
    grade: 'Select Structural',
    span_ft: 18,
  })
  Object.assign(project.equipment.rails?.['rail40'] ?? {}, {
    max_span_in: pick(48, 64, 72, 96),
    max_cantilever_in: pick(8, 12, 16, 20),
    ...pick({}, {}, { max_cantilever_of_span: 0.33 }, { max_cantilever_of_span: 0.5 }),
    end_allowance_in: pick(1, 1.5, 3),
  })
  Object.assign(project.structure ?? {}, {
    mount_layout: pick('staggered', 'aligned'),
    mount_edge_in: pick(3, 6),
    mount_clearance_in: pick(3, 6),
    mount_stagger_rafters: pick(1, 2),
    ...pick({}, {}, { mount_spacing_in: spacing }, { mount_spacing_in: 2 * spacing }),
  })
  return project
}

function outlineOf(
  shape: 'rectangle' | 'hip' | 'triangle' | 'l_shape',
  width_ft: number,
  depth_ft: number,
  between: (low: number, high: number) => number,
): Outline {
  if (shape === 'hip') return { shape, width_ft, depth_ft, ridge_ft: width_ft * between(0.2, 0.8) }
  if (shape === 'l_shape') {
    return {
      shape,
      width_ft,
      depth_ft,
      notch_width_ft: width_ft * between(0.2, 0.5),
      notch_depth_ft: depth_ft * between(0.2, 0.6),
      notch_at:
        (['lower_left', 'lower_right', 'upper_left', 'upper_right'] as const)[Math.floor(between(0, 4))] ??
        'upper_left',
    }
  }
  return { shape, width_ft, depth_ft }
}
