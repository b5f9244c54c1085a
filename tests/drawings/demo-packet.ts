import type { DesignTemperatures } from '../../src/climate/types.js'
import { packetGaps, type PacketInput, type PaperName } from '../../src/drawings/index.js'
import { sizeWire } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { arrangeModules } from '../../src/roof/index.js'
import { spaceMounts } from '../../src/structure/index.js'

/** Design temperatures of an invented site. */
function temperatures(): DesignTemperatures {
  const value = (valueC: number) => ({ valueC, estimated: false, from: 'invented' })
  return { extremeLow: value(-12), high2pct: value(34), high0p4pct: value(36) }
}

/** Everything that the packet is drawn from, by the real stages. */
export function packetInput(project: Project, size: PaperName = '11x17', draft = false): PacketInput {
  const arrangement = arrangeModules(project)
  const { planes, modules } = arrangement.values
  const mounts =
    project.structure === undefined ? undefined : spaceMounts(project, { planes: Object.values(planes), modules })
  const wiring =
    project.electrical === undefined ? undefined : sizeWire(project, { designTemperatures: temperatures() })
  const parts = { project, size, draft, arrangement, mounts, wire: wiring, documents: [] }
  const findings = [
    ...arrangement.findings,
    ...(mounts?.findings ?? []),
    ...(wiring?.findings ?? []),
    ...packetGaps(parts),
  ]
  return { ...parts, findings }
}

const framing = {
  kind: 'rafter',
  nominal_size: '2x6',
  species: 'Douglas Fir-Larch',
  grade: 'No. 2',
  spacing_in: 24,
  first_offset_in: 11,
  direction: 'up_slope',
  span_ft: 10,
  eave_overhang_in: 12,
  rake_overhang_in: 6,
  sheathing_in: 0.5,
  covering: 'asphalt_shingle',
  covering_in: 0.25,
  ceiling_attached: true,
  existing_dead_psf: 10,
  wet_service: false,
  sustained_temperature: 'up_to_100_f',
} as const

const point = (x: number, y: number) => ({ x_ft: x, y_ft: y })
const figure = (x: number, y: number, w: number, h: number) =>
  [point(x, y), point(x + w, y), point(x + w, y + h), point(x, y + h)] as NonNullable<Project['site_plan']>['lot']

/** An INVENTED house with an eave of 40 ft, module-level inverters on two branches and a combiner. */
export function microHouse(change: Partial<Project> = {}): Project {
  return {
    format: 'gablewatt/2',
    title: 'Lark Hollow demo house (invented)',
    parties: {
      owner: { name: 'A. Lindqvist (invented)' },
      utility: { name: 'Sampletown Light Cooperative (invented)' },
      authority: { name: 'Sampletown Building Office (invented)' },
      prepared_by_owner: true,
    },
    document: { date: '2026-03-02', revision: 'A', invented: true },
    codes: { electrical: 'NEC 2020', loads: 'ASCE 7-16', residential: 'IRC 2021', wood: 'NDS 2018' },
    site: { address: '12 Lark Hollow, Sampletown', latitude_deg: 38.75, longitude_deg: -90.37 },
    roof_planes: {
      south: {
        azimuth_deg: 184,
        pitch_in_12: 6,
        eave_height_ft: 10,
        street_side: true,
        outline: { shape: 'rectangle', width_ft: 40, depth_ft: 17 },
        obstructions: {
          chimney: {
            kind: 'chimney',
            // Between two rafters, so that none is cut.
            x_ft: 31.5,
            y_ft: 12,
            width_ft: 1,
            length_ft: 2.5,
            height_ft: 4,
            clearance_in: 6,
            serves_appliance: false,
          },
        },
      },
    },
    roof_access: { other_pathways: 1, required_fire_class: 'A' },
    arrays: {
      south: {
        roof_plane: 'south',
        module: 'm410',
        inverter: 'micro366',
        mounting: 'near_roof',
        standoff_in: 4,
        arrangement: {
          blocks: {
            lower: { orientation: 'portrait', rows: 2, columns: 8, x_ft: 3.5, y_ft: 1.5, gap_in: 0.5, omit: ['r2c8'] },
          },
        },
      },
    },
    equipment: {
      modules: {
        m410: {
          name: 'Invented M410',
          pmax_w: 410,
          fire_type: 1,
          voc_v: 37.4,
          isc_a: 13.87,
          vmp_v: 31.5,
          imp_a: 13.02,
          noct_c: 45,
          pmax_temp_coeff_pct_per_c: -0.34,
          voc_temp_coeff_pct_per_c: -0.27,
          max_series_fuse_a: 25,
          max_system_voltage_v: 1000,
          length_in: 67.8,
          width_in: 44.6,
          thickness_in: 1.38,
          weight_lb: 47.4,
          clamp_zone_from_corner_in: [10, 20],
          clamp_zone_short_side_in: [4, 10],
          design_load_down_psf: 75,
          design_load_up_psf: 50,
          listing: 'UL 61730',
          sheet: 'M410 sheet rev 2 (invented)',
        },
      },
      inverters: {
        micro366: {
          name: 'Invented micro 366',
          kind: 'module_level',
          ac_power_w: 366,
          ac_current_a: 1.53,
          ac_voltage_v: 240,
          weighted_efficiency_pct: 97,
          max_dc_voltage_v: 60,
          mppt_min_v: 16,
          mppt_max_v: 58,
          max_branch_ocpd_a: 20,
          max_per_branch: 10,
          max_ac_rise_pct: 2,
          ground_fault_protection: true,
          rapid_shutdown: true,
          needs_egc: false,
          weight_lb: 2.4,
          listing: 'UL 1741 SB',
          sheet: 'Micro 366 sheet rev 1 (invented)',
        },
      },
      trunk_cables: {
        trunk12: { name: 'Invented trunk', size_awg: '12', ampacity_a: 20, max_ocpd_a: 20, connector_spacing_ft: 4 },
      },
      rails: {
        rail40: {
          fire: { class: 'A', module_types: [1], listing: 'L-4411 (invented)' },
          name: 'Invented rail 40',
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
          splice: { min_from_mount_in: 6, allowed_in_end_span: true },
          clamp: { mid_uplift_lb: 1500, end_uplift_lb: 700, sheet: 'Invented clamp sheet' },
          weight_lb_per_ft: 0.75,
          sheet: 'Rail 40 sheet rev 1 (invented)',
        },
      },
      mounts: {
        foot: {
          name: 'Invented flashed foot',
          capacity_uplift_lb: 900,
          capacity_down_lb: 1400,
          capacity_lateral_lb: 400,
          base_in: 0.25,
          base_plate: 'steel_10_ga',
          stands_off: false,
          lag: { size: '5/16', length_in: 5, count: 1, lead_hole_in: 0.1875 },
          weight_lb: 1.2,
          sheet: 'Flashed foot sheet rev 3 (invented)',
        },
      },
    },
    structure: {
      wind: {
        basic_speed_mph: 107,
        exposure: 'B',
        mean_roof_height_ft: 15,
        hill_or_escarpment: false,
        special_wind_region: false,
      },
      snow: { ground_psf: 10, roof_exposure: 'partially_exposed', thermal: 'cold_ventilated' },
      building: { length_ft: 40, width_ft: 28, enclosure: 'enclosed', roof_kind: 'gable' },
      framing: { south: { ...framing } },
      rail: 'rail40',
      mount: 'foot',
      mount_layout: 'aligned',
      mount_spacing_in: 24,
      mount_edge_in: 3,
      mount_clearance_in: 6,
    },
    electrical: {
      service: { rating_a: 200, conductor_ampacity_a: 200 },
      connection: { kind: 'load_side_breaker', breaker_position: 'opposite_end', breaker_marked_line_load: false },
      panel: {
        name: 'Main panel',
        bus_a: 200,
        main_a: 200,
        main_position: 'end',
        spaces_total: 40,
        spaces_free: 4,
        terminal_temperature_c: 75,
        location: 'outdoors',
      },
      combiner: { bus_a: 125, spaces_total: 8, terminal_temperature_c: 75, location: 'outdoors' },
      terminal_temperature_c: 75,
      runs: {
        home: {
          carries: ['branches'],
          segments: {
            roof: { location: 'roof', height_above_roof_in: 1, length_ft: 20, raceway: 'EMT' },
            wall: { location: 'outdoor_wall', length_ft: 12, raceway: 'EMT' },
          },
        },
        to_panel: {
          carries: ['output'],
          segments: { short: { location: 'outdoor_wall', length_ft: 6, raceway: 'EMT' } },
        },
      },
      rapid_shutdown: { initiator: 'pv_disconnect', initiator_outdoors: true },
      disconnects: {
        outside: { kind: 'pv_system', rating_a: 60, readily_accessible: true, lockable: true, location: 'outdoors' },
      },
    },
    site_plan: {
      up_azimuth_deg: 4,
      lot: figure(0, 0, 80, 120),
      street: { name: 'Lark Hollow', lot_line: 1 },
      buildings: {
        house: { name: 'House', main: true, corners: figure(18, 35, 42, 30) },
        shed: { name: 'Shed', corners: figure(6, 95, 12, 10) },
      },
      driveway: figure(62, 0, 12, 50),
      roof_planes: {
        south: {
          eave_left: point(19, 34),
          junction_boxes: [point(36.5, 7)],
          raceway: [point(36.5, 7), point(38, 7), point(38, 0)],
        },
      },
      equipment: {
        meter: { kind: 'utility_meter', ...point(60, 42) },
        panel: { kind: 'main_panel', ...point(60, 45) },
        outside: { kind: 'pv_disconnect', ...point(60, 39) },
        combiner: { kind: 'combiner', ...point(60, 36) },
      },
      raceway_route: [point(57, 35), point(60, 35), point(60, 45)],
      ground_access: [point(20, 31)],
    },
    ...change,
  }
}

/** Three INVENTED planes: a hip, a plane between a hip and a valley, and a triangle; four branches on a combiner. */
export function hipHouse(): Project {
  const base = microHouse()
  const south = base.arrays['south']
  if (south === undefined || base.structure === undefined || base.electrical === undefined) throw new Error('no base')
  const { arrangement: _, ...array } = south
  return microHouse({
    title: 'Hip and valley house (invented)',
    roof_planes: {
      south: {
        azimuth_deg: 180,
        pitch_in_12: 5,
        edge_clearances: { eave_in: 24 },
        street_side: true,
        outline: { shape: 'hip', width_ft: 52, depth_ft: 18, ridge_ft: 24 },
      },
      east: {
        azimuth_deg: 90,
        pitch_in_12: 5,
        edge_clearances: { eave_in: 24 },
        outline: { shape: 'triangle', width_ft: 34, depth_ft: 18 },
      },
      west: {
        azimuth_deg: 270,
        pitch_in_12: 5,
        edge_clearances: { eave_in: 24 },
        outline: {
          shape: 'polygon',
          corners: [
            { x_ft: 0, y_ft: 0, edge: 'eave' },
            { x_ft: 30, y_ft: 0, edge: 'hip' },
            { x_ft: 17, y_ft: 16, edge: 'ridge' },
            { x_ft: 10, y_ft: 16, edge: 'valley' },
          ],
        },
      },
    },
    roof_access: { other_pathways: 2, required_fire_class: 'A' },
    arrays: {
      south: { ...array, arrangement: { fit: { orientation: 'portrait', centered: true } }, modules: 12 },
      east: { ...array, roof_plane: 'east', arrangement: 'fit', modules: 4 },
      west: { ...array, roof_plane: 'west', arrangement: 'fit', modules: 4 },
    },
    structure: {
      ...base.structure,
      building: { length_ft: 52, width_ft: 34, enclosure: 'enclosed', roof_kind: 'hip' },
      framing: { south: { ...framing }, east: { ...framing }, west: { ...framing } },
    },
    electrical: {
      ...base.electrical,
      branches: {
        b1: { modules: { south: 6 } },
        b2: { modules: { south: 6 } },
        b3: { modules: { east: 4 } },
        b4: { modules: { west: 4 } },
      },
    },
    site_plan: {
      lot: [point(0, 0), point(110, 0), point(120, 90), point(-5, 80)],
      street: { name: 'Lark Hollow', lot_line: 1 },
      buildings: { house: { name: 'House', corners: figure(25, 22, 50, 32) } },
      roof_planes: { south: { eave_left: point(24, 21) } },
      equipment: {
        panel: { kind: 'main_panel', ...point(75, 40) },
        meter: { kind: 'utility_meter', ...point(75, 43) },
      },
    },
  })
}

/** An INVENTED house with a string inverter on two inputs, connected on the supply side. */
export function stringHouse(): Project {
  const base = microHouse()
  const south = base.arrays['south']
  if (south === undefined || base.electrical === undefined) throw new Error('no base')
  const { inverter: _, ...array } = south
  const { combiner: __, ...electrical } = base.electrical
  return microHouse({
    title: 'Supply-side house with strings (invented)',
    arrays: {
      south: {
        ...array,
        strings: [
          { modules: 8, inverter_unit: 'garage', input: 1 },
          { modules: 7, inverter_unit: 'garage', input: 2 },
        ],
      },
    },
    inverter_units: { garage: { inverter: 's6000' } },
    equipment: {
      ...base.equipment,
      inverters: {
        s6000: {
          name: 'Invented string 6000',
          kind: 'string',
          ac_power_w: 6000,
          ac_current_a: 25,
          ac_voltage_v: 240,
          weighted_efficiency_pct: 97,
          max_dc_voltage_v: 600,
          mppt_min_v: 120,
          mppt_max_v: 500,
          start_v: 150,
          mppt_inputs: 2,
          max_input_current_a: 15,
          max_input_isc_a: 20,
          max_branch_ocpd_a: 40,
          dc_afci: true,
          ground_fault_protection: true,
          rapid_shutdown: true,
          dc_disconnect: true,
          needs_egc: true,
          weight_lb: 42,
        },
      },
    },
    electrical: {
      ...electrical,
      service: { rating_a: 200, conductor_ampacity_a: 200 },
      connection: {
        kind: 'supply_side',
        overcurrent_device_distance_ft: 6,
        conductor_size: '6',
        conductor_material: 'copper',
      },
      runs: {
        dc: {
          carries: ['strings'],
          segments: {
            array: { location: 'array', length_ft: 25, raceway: 'none' },
            roof: { location: 'roof', height_above_roof_in: 1, length_ft: 20, raceway: 'EMT' },
          },
        },
        ac: {
          carries: ['inverter_outputs'],
          segments: { wall: { location: 'outdoor_wall', length_ft: 10, raceway: 'EMT' } },
        },
      },
      rapid_shutdown: { inside_boundary: 'module_level', initiator: 'pv_disconnect', initiator_outdoors: true },
      disconnects: {
        outside: {
          kind: 'pv_system',
          rating_a: 60,
          readily_accessible: true,
          lockable: true,
          service_rated: true,
          fused: true,
          location: 'outdoors',
        },
      },
    },
  })
}

/** A house with the smallest lettering that a project may ask for, so that a diagram of many parts is one sheet. */
export const withSmallLetters = (project: Project): Project => ({ ...project, drawings: { least_text_in: 0.08 } })

/** The demo house with names as long as people write them. */
export function longNames(): Project {
  const base = microHouse()
  const long = 'Wilhelmina Featherstonehaugh-Cholmondeley and Bartholomäus Østergård-Nuñez (invented)'
  return microHouse({
    title:
      'Residence of the extended Featherstonehaugh-Cholmondeley family, rear addition and carriage house (invented)',
    parties: {
      owner: {
        name: long,
        address: '12345 North-Northwest Old Sampletown Turnpike Frontage Road, Building 7, Sampletown',
      },
      installer: {
        name: 'Société Générale d’Énergie Solaire de l’Île Inventée, Σολάρ & Söhne, Inc.',
        license: 'EC-00000-ABCDEFGHIJKLMNOP (invented)',
      },
      utility: {
        name: 'Consolidated Sampletown and Greater Example County Light, Heat and Power Cooperative Association (invented)',
      },
      authority: {
        name: 'Department of Buildings, Inspections, Planning and Sustainability of Example County (invented)',
      },
    },
    site: {
      ...base.site,
      address: '12345 North-Northwest Old Sampletown Turnpike Frontage Road, Building 7, Sampletown',
    },
    equipment: {
      ...base.equipment,
      modules: {
        m410: {
          ...base.equipment.modules?.['m410'],
          pmax_w: 410,
          pmax_temp_coeff_pct_per_c: -0.34,
          name: 'Invented Photovoltaic Manufacturing Corporation UltraLongProductDesignation-410-BF/MONO/HC-108-XL',
        },
      },
    },
    site_plan: {
      ...(base.site_plan ?? { lot: figure(0, 0, 80, 120) }),
      street: { name: 'North-Northwest Old Sampletown Turnpike Frontage Road', lot_line: 1 },
    },
  })
}

/** More INVENTED branches than one sheet can show: fifteen, of one module each. */
export function manyBranches(): Project {
  const base = microHouse()
  if (base.electrical === undefined) throw new Error('no base')
  const branches = Object.fromEntries(
    Array.from({ length: 15 }, (_, index) => [`branch_${index + 1}`, { modules: { south: 1 } }]),
  )
  return microHouse({ title: 'House of many branches (invented)', electrical: { ...base.electrical, branches } })
}

/** An INVENTED house with three branches that each have a breaker of their own in the panel. */
export function noCombiner(): Project {
  const base = microHouse()
  if (base.electrical === undefined) throw new Error('no base')
  const { combiner: _, runs, ...electrical } = base.electrical
  const home = runs?.['home']
  if (home === undefined) throw new Error('no run')
  return microHouse({
    title: 'Three branches without combiner (invented)',
    electrical: {
      ...electrical,
      branches: { b1: { modules: { south: 5 } }, b2: { modules: { south: 5 } }, b3: { modules: { south: 5 } } },
      runs: { home },
    },
  })
}

/** The demo house with the equipment of a wall and its heights. INVENTED. */
export function wallHouse(): Project {
  const corner = (x: number, y: number): { x_ft: number; y_ft: number } => ({ x_ft: x, y_ft: y })
  return microHouse({
    site_plan: {
      lot: [corner(0, 0), corner(80, 0), corner(80, 100), corner(0, 100)],
      buildings: {
        house: { name: 'House', corners: [corner(10, 10), corner(50, 10), corner(50, 40), corner(10, 40)] },
      },
      equipment: {
        meter: { kind: 'utility_meter', x_ft: 50, y_ft: 15, bottom_in: 50, width_in: 13, height_in: 18 },
        disconnect: { kind: 'pv_disconnect', x_ft: 50, y_ft: 26.5, bottom_in: 48, width_in: 8, height_in: 12 },
      },
    },
  })
}
