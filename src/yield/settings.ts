import type { Inverter, Losses, Model, Project } from '../project/index.js'
import { hayDavies, isotropicSky, perez1990, SOLAR_CONSTANT_W_M2, type SkyModel } from '../sun/index.js'
import { LOSS_DEFAULTS } from '../tables/losses/index.js'
import type { Source, Worksheet } from '../worksheet/index.js'
import { outputOfYear } from './degradation.js'
import { monthlyValues } from './months.js'

/** Model choices of the energy estimate with every default filled in. */
export interface ModelSettings {
  readonly skyName: 'perez_1990' | 'hay_davies' | 'isotropic'
  readonly sky: SkyModel
  readonly incidence: 'glass_layer' | 'one_coefficient' | 'none'
  readonly incidenceCoefficient: number
  readonly temperature: NonNullable<Model['temperature']>
  readonly wiringLoss: 'resistive' | 'proportional'
  readonly diffuseShading: boolean
  /** Whether clouds within an hour count when inverters clip; not for weather in short steps. */
  readonly clippingWithinHour: boolean
  readonly solarConstantWM2: number
  readonly albedo: readonly number[]
}

const SKY_MODELS = { perez_1990: perez1990, hay_davies: hayDavies, isotropic: isotropicSky } as const

const PEREZ_SOURCE: Source = {
  document: 'Perez et al., Solar Energy 44:271-289',
  edition: '1990',
  place: 'table 6, extended digits',
  standing: 'secondary',
}

/**
 * Fills in the model choices, each default as an assumption.
 *
 * @param hasShortSteps Whether the weather shows the clouds within the hour by itself (steps of 15 minutes and less).
 */
export function modelSettings(project: Project, worksheet: Worksheet, hasShortSteps = false): ModelSettings {
  const model = project.model ?? {}
  const skyName =
    model.sky ??
    worksheet.assume({
      path: 'model.sky',
      value: 'perez_1990' as const,
      unit: '',
      why: 'anisotropic sky, the most widely tested',
      source: PEREZ_SOURCE,
    })
  const incidence =
    model.incidence ??
    worksheet.assume({
      path: 'model.incidence',
      value: 'glass_layer' as const,
      unit: '',
      why: 'Fresnel and Bouguer for glass of index 1.526, 2 mm; holds at grazing sun',
      source: { document: 'De Soto, Klein & Beckman, Solar Energy 80:78-88', edition: '2006', standing: 'from memory' },
    })
  const incidenceCoefficient = model.incidence_coefficient ?? 0.05
  if (incidence === 'one_coefficient' && model.incidence_coefficient === undefined) {
    worksheet.assume({
      path: 'model.incidence_coefficient',
      value: incidenceCoefficient,
      unit: '',
      why: 'usual for one glass',
      source: { document: 'ASHRAE Standard 93 form', standing: 'from memory' },
    })
  }
  const temperature =
    model.temperature ??
    worksheet.assume({
      path: 'model.temperature',
      value: 'by_mounting' as const,
      unit: '',
      why: 'coefficients by mounting; the cautious choice on a roof',
      source: { document: 'King, Boyson & Kratochvil, SAND2004-3535', edition: '2004', standing: 'secondary' },
    })
  const albedo =
    project.site.albedo ??
    worksheet.assume({
      path: 'site.albedo',
      value: 0.2,
      unit: '',
      why: 'grass and town ground without snow',
      source: { document: '', standing: 'common practice, no source' },
    })
  return {
    skyName,
    sky: SKY_MODELS[skyName],
    incidence,
    incidenceCoefficient,
    temperature,
    wiringLoss: model.wiring_loss ?? 'resistive',
    diffuseShading: model.diffuse_shading ?? true,
    clippingWithinHour: model.clipping_within_hour !== 'none' && !hasShortSteps,
    solarConstantWM2: model.solar_constant_w_m2 ?? SOLAR_CONSTANT_W_M2,
    albedo: monthlyValues(albedo),
  }
}

/** Losses as shares of 1, every default filled in. */
export interface LossSettings {
  /** Twelve months. */
  readonly soiling: readonly number[]
  readonly mismatch: number
  readonly dcWiring: number
  readonly acWiring: number
  readonly connections: number
  readonly lightInduced: number
  readonly nameplate: number
  readonly availability: number
  /** Loss by age at the start of the year that is estimated. */
  readonly age: number
}

/**
 * Fills in the losses, each default as an assumption.
 *
 * @param kind Decides between the two columns of defaults.
 * @param degradation Loss of output per year of age, as a share of 1.
 */
export function lossSettings(
  losses: Losses | undefined,
  kind: Inverter['kind'],
  degradation: number,
  worksheet: Worksheet,
): LossSettings {
  const stated: Losses = losses ?? {}
  const pick = (key: keyof typeof LOSS_DEFAULTS & keyof Losses): number => {
    const value = stated[key]
    if (typeof value === 'number') return value / 100
    const usual = LOSS_DEFAULTS[key]
    const pct = kind === 'module_level' ? usual.moduleLevelPct : usual.stringPct
    worksheet.assume({ path: `losses.${key}`, value: pct, unit: '%', why: usual.why, source: usual.source })
    return pct / 100
  }
  const soiling =
    stated.dirt_pct === undefined ? [pick('dirt_pct')] : monthlyValues(stated.dirt_pct).map((v) => v / 100)
  const ageYears = stated.in_use_years ?? 0
  return {
    soiling: soiling.length === 12 ? soiling : monthlyValues(soiling[0]!),
    mismatch: pick('unequal_modules_pct'),
    dcWiring: pick('dc_cables_pct'),
    acWiring: pick('ac_cables_pct'),
    connections: pick('contacts_pct'),
    lightInduced: pick('first_weeks_of_light_pct'),
    nameplate: pick('rating_shortfall_pct'),
    availability: pick('out_of_order_pct'),
    age: 1 - outputOfYear(degradation, ageYears + 1),
  }
}
