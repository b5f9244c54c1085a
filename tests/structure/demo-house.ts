import type { Project } from '../../src/project/index.js'
import type { ModulePlacement } from '../../src/roof/index.js'
import type { PlaneGeometry, RoofArrangement } from '../../src/structure/index.js'

/** An invented gable house with invented equipment; tests change what they are about. */
export function demoProject(): Project {
  return {
    format: 'gablewatt/2',
    title: 'Invented house for structural tests',
    codes: { loads: 'ASCE 7-16', wood: 'NDS 2018' },
    site: { latitude_deg: 38.6, longitude_deg: -121.5 },
    roof_planes: { south: { azimuth_deg: 180, tilt_deg: 22 } },
    arrays: { south: { roof_plane: 'south', module: 'm410', modules: 12, mounting: 'near_roof', standoff_in: 4 } },
    equipment: {
      modules: {
        m410: {
          pmax_w: 410,
          pmax_temp_coeff_pct_per_c: -0.34,
          length_in: 67.8,
          width_in: 44.6,
          thickness_in: 1.38,
          weight_lb: 47.4,
          clamp_zone_from_corner_in: [10, 20],
          clamp_zone_short_side_in: [4, 10],
          design_load_down_psf: 75,
          design_load_up_psf: 50,
        },
      },
      rails: {
        rail40: {
          alloy: '6005A-T61',
          section_modulus_x_in3: 0.36,
          moment_of_inertia_x_in4: 0.45,
          section_modulus_y_in3: 0.2,
          shear_area_in2: 0.3,
          max_span_in: 96,
          max_cantilever_in: 20,
          end_allowance_in: 1.5,
          deflection_limit: 180,
          stock_lengths_in: [168, 204],
          splice: { min_from_mount_in: 6, allowed_in_end_span: true, moment_lb_in: 4000, shear_lb: 900 },
          clamp: { mid_uplift_lb: 1500, end_uplift_lb: 700, sheet: 'Invented clamp sheet' },
          weight_lb_per_ft: 0.75,
          sheet: 'Invented rail sheet',
        },
      },
      mounts: {
        foot: {
          capacity_uplift_lb: 900,
          capacity_down_lb: 1400,
          capacity_lateral_lb: 400,
          base_in: 0.25,
          base_plate: 'steel_10_ga',
          stands_off: false,
          lag: { size: '5/16', length_in: 5, count: 1, lead_hole_in: 0.1875 },
          weight_lb: 1.2,
          sheet: 'Invented mount sheet',
        },
      },
    },
    structure: {
      wind: {
        basic_speed_mph: 115,
        exposure: 'C',
        mean_roof_height_ft: 15,
        hill_or_escarpment: false,
        special_wind_region: false,
      },
      snow: { ground_psf: 0, roof_exposure: 'partially_exposed', thermal: 'cold_ventilated' },
      building: { length_ft: 48, width_ft: 28, enclosure: 'enclosed', roof_kind: 'gable' },
      seismic: { dwelling: 'one_two_family', design_category: 'B' },
      framing: {
        south: {
          kind: 'rafter',
          nominal_size: '2x6',
          species: 'Douglas Fir-Larch',
          grade: 'No. 2',
          spacing_in: 16,
          first_offset_in: 8,
          direction: 'up_slope',
          span_ft: 12,
          eave_overhang_in: 12,
          rake_overhang_in: 6,
          sheathing_in: 0.5,
          covering: 'asphalt_shingle',
          covering_in: 0.25,
          ceiling_attached: true,
          ridge: 'board',
          ties: 'ceiling_joists',
          existing_dead_psf: 10,
          wet_service: false,
          sustained_temperature: 'up_to_100_f',
        },
      },
      rail: 'rail40',
      mount: 'foot',
      mount_layout: 'staggered',
      mount_edge_in: 3,
      mount_clearance_in: 6,
    },
  }
}

/** A rectangular plane with an eave, two rakes and a ridge. */
export function rectangle(id: string, widthFt: number, depthFt: number, tiltDeg: number): PlaneGeometry {
  const p = (xFt: number, yFt: number) => ({ xFt, yFt })
  return {
    id,
    tiltDeg,
    edges: [
      { kind: 'eave', from: p(0, 0), to: p(widthFt, 0) },
      { kind: 'rake', from: p(widthFt, 0), to: p(widthFt, depthFt) },
      { kind: 'ridge', from: p(widthFt, depthFt), to: p(0, depthFt) },
      { kind: 'rake', from: p(0, depthFt), to: p(0, 0) },
    ],
  }
}

/** A hip plane (trapezoid) with 45 degree hips in plan. */
export function hipPlane(
  id: string,
  widthFt: number,
  depthFt: number,
  ridgeFt: number,
  tiltDeg: number,
): PlaneGeometry {
  const p = (xFt: number, yFt: number) => ({ xFt, yFt })
  const inset = (widthFt - ridgeFt) / 2
  return {
    id,
    tiltDeg,
    edges: [
      { kind: 'eave', from: p(0, 0), to: p(widthFt, 0) },
      { kind: 'hip', from: p(widthFt, 0), to: p(widthFt - inset, depthFt) },
      { kind: 'ridge', from: p(widthFt - inset, depthFt), to: p(inset, depthFt) },
      { kind: 'hip', from: p(inset, depthFt), to: p(0, 0) },
    ],
  }
}

/** Portrait modules in rows and columns with half-inch gaps. */
export function block(rows: number, columns: number, xFt: number, yFt: number, plane = 'south'): ModulePlacement[] {
  const [widthFt, heightFt, gapFt] = [44.6 / 12, 67.8 / 12, 0.5 / 12]
  return Array.from({ length: rows * columns }, (_, index) => {
    const [row, column] = [Math.floor(index / columns), index % columns]
    return {
      id: `south.main.r${row + 1}c${column + 1}`,
      array: 'south',
      roofPlane: plane,
      block: 'main',
      row: row + 1,
      column: column + 1,
      orientation: 'portrait',
      xFt: xFt + column * (widthFt + gapFt),
      yFt: yFt + row * (heightFt + gapFt),
      widthFt,
      heightFt,
    }
  })
}

/** The demo array: 12 modules, two rows of six, on a plane of 48 by 16 ft. */
export function demoArrangement(): RoofArrangement {
  return { planes: [rectangle('south', 48, 16, 22)], modules: block(2, 6, 12, 2.2) }
}
