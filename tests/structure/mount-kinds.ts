import type { Project } from '../../src/project/index.js'
import { demoProject } from './demo-house.js'

type Mount = NonNullable<Project['equipment']['mounts']>[string]
type Framing = NonNullable<NonNullable<Project['structure']>['framing']>[string]

/** The invented house with another mount and roof. */
export function houseWith(mount: Mount, framing: Framing): Project {
  const project = demoProject()
  const structure = project.structure ?? {}
  return {
    ...project,
    equipment: { ...project.equipment, mounts: { foot: { weight_lb: 1.2, sheet: 'Invented sheet', ...mount } } },
    // Stiff rafters: what is tested are the mounts.
    structure: {
      ...structure,
      framing: { south: { ...structure.framing?.['south'], nominal_size: '2x8', ...framing } },
    },
  }
}

const REPORT = { id: 'T-1207 (invented)', date: '2025-06-30' }

export const seamClamp: Mount = {
  kind: 'standing_seam_clamp',
  capacity_uplift_lb: 500,
  capacity_down_lb: 900,
  capacity_lateral_lb: 400,
  test_report: REPORT,
  seam_clamp: {
    profile: 'Double lock 1.5 (invented)',
    panel_metal: 'steel',
    gauge: 24,
    clamp_metal: 'aluminum',
    hardware_metal: 'stainless',
    setscrews: 2,
    setscrew_torque_lb_in: 150,
  },
}

export const seamRoof: Framing = {
  covering: 'standing_seam',
  covering_in: 0.05,
  sheathing_in: 0.46875,
  sheathing: { kind: 'plywood' },
  standing_seam: {
    profile: 'double lock 1.5 (invented)',
    metal: 'steel',
    gauge: 24,
    seam_spacing_in: 16,
    first_seam_in: 3,
    clip_spacing_in: 24,
    clamp_from_clip_in: 8,
    clip_screws: 4,
    clip_screw_size: '#14',
    fixed_point_capacity_lb: 800,
  },
}

export const tileHook: Mount = {
  kind: 'tile_hook',
  capacity_uplift_lb: 600,
  capacity_down_lb: 500,
  capacity_lateral_lb: 400,
  test_report: REPORT,
  base_in: 0.2,
  base_plate: 'steel_quarter_inch',
  stands_off: false,
  lag: { size: '5/16', length_in: 5, count: 2, in_line_spacing_in: 2, lead_hole_in: 0.1875 },
  hook: {
    arm_in: 2.5,
    neck_section_modulus_in3: 0.09,
    yield_ksi: 30,
    screw_lever_in: 3,
    height_in: 2.5,
    tile_gap_in: 0.25,
    deflection_in: 0.2,
  },
}

export const tileRoof: Framing = { covering: 'tile', covering_in: 2 }

export const deckMount: Mount = {
  kind: 'deck',
  test_report: REPORT,
  deck: {
    screws: 4,
    screw_size: '#14',
    from_rafter_in: 8,
    tests: [
      {
        sheathing: 'osb',
        thickness_in: 0.4375,
        uplift_lb: 400,
        down_lb: 600,
        along_lb: 300,
        max_rafter_spacing_in: 24,
      },
      { sheathing: 'plywood', thickness_in: 0.59375, uplift_lb: 420, down_lb: 600, along_lb: 320 },
    ],
  },
}

export const deckRoof: Framing = {
  covering: 'asphalt_shingle',
  sheathing_in: 0.4375,
  sheathing: { kind: 'osb', damaged: false, nail: '8d_common', nail_spacing_in: 6, framing_dry_since_nailed: true },
}

export const structuralScrew: Mount = {
  capacity_uplift_lb: 900,
  capacity_down_lb: 1400,
  capacity_lateral_lb: 400,
  base_in: 0.25,
  structural_screw: {
    name: 'Invented structural screw',
    diameter_in: 0.31,
    length_in: 5,
    thread_length_in: 3.5,
    tip_in: 0.3,
    count: 1,
    withdrawal_lb_per_in: 220,
    tested_specific_gravity: 0.42,
    tension_lb: 1200,
    lateral_lb: 220,
    least_thread_in: 1.5,
    edge_distance_in: 0.5,
    sheet: 'Screw report 12 of 2024-03-01 (invented)',
  },
}
