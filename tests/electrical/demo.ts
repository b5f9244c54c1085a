import type { DesignTemperatures } from '../../src/climate/types.js'
import type { WiringContext } from '../../src/electrical/index.js'
import type { Electrical, Project, WiringSegment } from '../../src/project/index.js'

/** Design temperatures of an invented site. */
export function temperatures(highC = 38, lowC = -6): DesignTemperatures {
  const value = (valueC: number) => ({ valueC, estimated: false, from: 'invented' })
  return { extremeLow: value(lowC), high2pct: value(highC), high0p4pct: value(highC + 2) }
}

export const context = (highC = 38, lowC = -6): WiringContext => ({ designTemperatures: temperatures(highC, lowC) })

type Segments = Record<string, WiringSegment>

/** Way of the branches of the demo house. */
export const demoSegments: Segments = {
  roof: { location: 'roof', height_above_roof_in: 1, length_ft: 20, raceway: 'EMT' },
  wall: { location: 'outdoor_wall', length_ft: 12, raceway: 'PVC 40' },
}

/** An invented house with 24 module-level inverters on two branches, a combiner and a 200 A panel. */
export function microProject(change: Partial<Electrical> = {}, modules = 24): Project {
  return {
    format: 'gablewatt/2',
    title: 'Invented test house',
    codes: { electrical: 'NEC 2020' },
    site: { latitude_deg: 38.6, longitude_deg: -121.5 },
    roof_planes: { south: { azimuth_deg: 180, tilt_deg: 25 } },
    arrays: {
      south: {
        roof_plane: 'south',
        module: 'm410',
        modules,
        inverter: 'micro',
        mounting: 'near_roof',
        standoff_in: 4,
      },
    },
    equipment: {
      modules: {
        m410: {
          pmax_w: 410,
          pmax_temp_coeff_pct_per_c: -0.34,
          voc_v: 37.2,
          isc_a: 13.9,
          vmp_v: 31.4,
          imp_a: 13.06,
          noct_c: 45,
          voc_temp_coeff_pct_per_c: -0.27,
          max_series_fuse_a: 25,
        },
      },
      inverters: {
        micro: {
          kind: 'module_level',
          ac_power_w: 300,
          ac_current_a: 1.25,
          max_dc_voltage_v: 60,
          mppt_min_v: 16,
          mppt_max_v: 58,
          max_branch_ocpd_a: 20,
          max_ac_rise_pct: 2,
          ground_fault_protection: true,
          needs_egc: false,
        },
      },
      trunk_cables: { trunk12: { size_awg: '12', ampacity_a: 16, max_ocpd_a: 20, connector_spacing_ft: 4 } },
    },
    electrical: {
      service: { rating_a: 200, conductor_ampacity_a: 200 },
      connection: { kind: 'load_side_breaker', breaker_position: 'opposite_end' },
      panel: {
        bus_a: 200,
        main_a: 200,
        main_position: 'end',
        spaces_total: 40,
        spaces_free: 4,
        terminal_temperature_c: 75,
      },
      combiner: { bus_a: 125, spaces_total: 8, terminal_temperature_c: 75 },
      terminal_temperature_c: 75,
      runs: {
        home: { carries: ['branches'], segments: demoSegments },
        to_panel: {
          carries: ['output'],
          segments: { inside: { location: 'indoors', length_ft: 15, raceway: 'EMT' } },
        },
      },
      rapid_shutdown: { initiator: 'pv_disconnect', initiator_outdoors: true },
      disconnects: {
        outside: { kind: 'pv_system', rating_a: 60, readily_accessible: true, lockable: true, location: 'outdoors' },
      },
      ...change,
    },
  }
}

/** An invented house with one string inverter and strings on its inputs. */
export function stringProject(
  change: Partial<Electrical> = {},
  strings: readonly { readonly modules: number; readonly input: number }[] = [{ modules: 12, input: 1 }],
): Project {
  const micro = microProject()
  const {
    inverter: _,
    modules: __,
    ...array
  } = micro.arrays['south'] ?? { roof_plane: '', module: '', mounting: 'free_rack', standoff_in: 4 }
  return {
    ...micro,
    arrays: { south: { ...array, strings: strings.map((string) => ({ ...string, inverter_unit: 'garage' })) } },
    inverter_units: { garage: { inverter: 's5000' } },
    equipment: {
      ...micro.equipment,
      inverters: {
        s5000: {
          kind: 'string',
          ac_power_w: 4800,
          ac_current_a: 20,
          max_dc_voltage_v: 600,
          mppt_min_v: 100,
          mppt_max_v: 550,
          mppt_inputs: 2,
          max_branch_ocpd_a: 30,
          dc_afci: true,
          ground_fault_protection: true,
          dc_disconnect: true,
        },
      },
    },
    electrical: {
      connection: { kind: 'load_side_breaker', breaker_position: 'opposite_end' },
      panel: { bus_a: 200, main_a: 200, spaces_free: 4, terminal_temperature_c: 75 },
      terminal_temperature_c: 75,
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
      rapid_shutdown: { inside_boundary: 'module_level', initiator: 'switch', initiator_outdoors: true },
      ...change,
    },
  }
}
