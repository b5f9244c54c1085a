// Invented houses, whole enough for the energy estimate, for the comparison with the ray caster.
import { monthlyExtraterrestrialWhM2Day, type MonthlyClimate } from '../../src/climate/index.js'
import type { HouseInput, PlaneInput } from './house-input.ts'

export const THICKNESS_IN = 1.5

/** A climate made of clearness alone, mornings like afternoons. */
export function evenClimate(latitudeDeg: number, clearness = 0.55): MonthlyClimate {
  const outside = monthlyExtraterrestrialWhM2Day(latitudeDeg)
  const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value)
  return {
    kind: 'monthly',
    name: 'invented',
    latitudeDeg,
    longitudeDeg: 0,
    elevationM: 0,
    utcOffsetH: 0,
    ghiWhM2Day: outside.map((value) => value * clearness),
    dhiWhM2Day: outside.map((value) => value * clearness * 0.4),
    clearness: twelve(clearness),
    meanC: twelve(12),
    meanMaxC: twelve(17),
    meanMinC: twelve(7),
    windMs: twelve(3),
    spreadRel: 0,
    leftOutRel: 0,
    sitingErrorRel: 0,
    sites: [],
  }
}

/** A group of modules on a plane: columns by rows from its lower left corner. */
export interface Group {
  readonly plane: string
  readonly columns: number
  readonly rows: number
  readonly x: number
  readonly y: number
  readonly rowGapIn?: number
  readonly standoffIn?: number
  readonly moduleTilt?: number
  readonly moduleAzimuth?: number
  readonly orientation?: 'portrait' | 'landscape'
}

export interface HouseParts {
  readonly latitude?: number
  readonly planes: Readonly<Record<string, PlaneInput>>
  readonly groups: Readonly<Record<string, Group>>
  readonly site?: Partial<HouseInput['site']>
  readonly sitePlan?: HouseInput['site_plan'] | undefined
}

/** A project of invented parts; modules of 5.7 by 3.7 ft. */
export function inventedHouse({ latitude = 38, planes, groups, site, sitePlan }: HouseParts): HouseInput {
  return {
    format: 'gablewatt/2',
    title: 'Invented house',
    site: { latitude_deg: latitude, longitude_deg: 0, ...site },
    ...(sitePlan === undefined ? {} : { site_plan: sitePlan }),
    roof_planes: planes,
    arrays: Object.fromEntries(
      Object.entries(groups).map(([id, group]) => [
        id,
        {
          roof_plane: group.plane,
          module: 'm',
          inverter: 'i',
          mounting: group.moduleTilt === undefined ? 'near_roof' : 'free_rack',
          standoff_in: group.standoffIn ?? 4,
          ...(group.moduleTilt === undefined ? {} : { module_tilt_deg: group.moduleTilt }),
          ...(group.moduleAzimuth === undefined ? {} : { module_azimuth_deg: group.moduleAzimuth }),
          arrangement: {
            blocks: {
              b: {
                orientation: group.orientation ?? 'portrait',
                rows: group.rows,
                columns: group.columns,
                x_ft: group.x,
                y_ft: group.y,
                gap_in: 0.5,
                row_gap_in: group.rowGapIn ?? 0.5,
              },
            },
          },
        },
      ]),
    ),
    equipment: {
      modules: {
        m: {
          pmax_w: 400,
          pmax_temp_coeff_pct_per_c: -0.35,
          length_in: 68.4,
          width_in: 44.4,
          thickness_in: THICKNESS_IN,
        },
      },
      inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0 },
  } as HouseInput
}
