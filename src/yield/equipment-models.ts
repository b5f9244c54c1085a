import type { Project } from '../project/index.js'
import { FAIMAN, INSTALLED_NOCT, MOUNTING_COEFFICIENTS, MOUNTING_SOURCE } from '../tables/modules/index.js'
import { StageError, type Worksheet } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { ArrayPlan } from './array-plan.js'
import { installedNoctC, type CellTemperatureModel } from './cell-temperature.js'
import { constantEfficiency, curveEfficiency, type InverterModel } from './inverter-model.js'
import { lowLightSlope, type ModuleModel } from './module-model.js'

/** Efficiency at 200 W/m2 relative to the rating where the sheet does not tell, %. */
const USUAL_AT_200_PCT = 96.5

/** The module of an array as the estimate sees it. */
export function moduleModel(plan: ArrayPlan, worksheet: Worksheet): ModuleModel {
  const { module, moduleId } = plan
  const atLowLightPct =
    module.efficiency_at_200_pct ??
    worksheet.assume({
      path: `equipment.modules.${moduleId}.efficiency_at_200_pct`,
      value: USUAL_AT_200_PCT,
      unit: '%',
      why: 'no low-light value given: the middle of what data sheets of silicon modules state, 95 to 98 %; it costs 1 to 2 % a year',
      source: { document: '', standing: 'common practice, no source' },
    })
  return {
    pmaxW: module.pmax_w,
    powerCoefficientPerK: module.pmax_temp_coeff_pct_per_c / 100,
    lowLightSlope: lowLightSlope(atLowLightPct),
  }
}

/**
 * The cell-temperature model of an array.
 *
 * @param choice The model that the project names, or the default.
 * @throws StageError when `noct` is wanted and the data sheet's NOCT is missing.
 */
export function cellTemperatureModel(
  project: Project,
  plan: ArrayPlan,
  choice: CellTemperatureModel['kind'],
  worksheet: Worksheet,
): CellTemperatureModel {
  const model = project.model ?? {}
  switch (choice) {
    case 'by_mounting': {
      const construction = plan.module.construction ?? 'polymer_back'
      const table = MOUNTING_COEFFICIENTS[construction][plan.mounting]
      if (model.back_rise_still_air === undefined && !table.own) {
        worksheet.assume({
          path: 'model.back_rise_still_air',
          value: table.a,
          unit: '',
          why: `the source has no row for ${construction} with ${plan.mounting}; the nearest row stands in`,
          source: MOUNTING_SOURCE,
        })
      }
      return {
        kind: 'by_mounting',
        a: model.back_rise_still_air ?? table.a,
        b: model.back_rise_per_wind ?? table.b,
        deltaC: model.cell_above_back_c ?? table.deltaC,
      }
    }
    case 'noct': {
      const noctC = plan.module.noct_c
      if (noctC === undefined) {
        throw new StageError(
          `equipment.modules.${plan.moduleId}.noct_c`,
          'model.temperature is noct, but the module states no nominal operating cell temperature',
          'add noct_c from the data sheet, or choose model.temperature: by_mounting',
        )
      }
      return { kind: 'noct', installedNoctC: installedNoctC(noctC, plan.mounting, plan.standoffIn) }
    }
    case 'faiman': {
      const windShare =
        model.wind_at_modules ??
        worksheet.assume({
          path: 'model.wind_at_modules',
          value: 0.5,
          unit: '',
          why: 'the model wants wind at the module, the climate tells it at 10 m',
          source: { document: '', standing: 'common practice, no source' },
        })
      if (model.faiman_u0 === undefined || model.faiman_u1 === undefined) {
        worksheet.assume({
          path: 'model.faiman_u0',
          value: model.faiman_u0 ?? FAIMAN.u0,
          unit: 'W/(m2 K)',
          why: 'mean of seven module types on open racks; a close roof is warmer',
          source: FAIMAN.source,
        })
      }
      return { kind: 'faiman', u0: model.faiman_u0 ?? FAIMAN.u0, u1: model.faiman_u1 ?? FAIMAN.u1, windShare }
    }
  }
}

/** Installed-NOCT model for comparison, the same at any wind: the data sheet's NOCT, or 45 deg C, with this mounting and standoff. */
export function comparisonTemperature(plan: ArrayPlan): CellTemperatureModel {
  return {
    kind: 'noct',
    installedNoctC: installedNoctC(plan.module.noct_c ?? 45, plan.mounting, plan.standoffIn),
  }
}

/** Source of the installed-NOCT comparison. */
export const COMPARISON_SOURCE = INSTALLED_NOCT.source

/** Every inverter that a plan uses. */
export function inverterModels(
  project: Project,
  plans: readonly ArrayPlan[],
  worksheet: Worksheet,
): Map<string, InverterModel> {
  const models = new Map<string, InverterModel>()
  for (const { id: arrayId, modules } of plans) {
    for (const { inverterId } of modules) {
      if (models.has(inverterId)) continue
      models.set(inverterId, inverterModel(project, inverterId, `arrays.${arrayId}`, worksheet))
    }
  }
  return models
}

function inverterModel(project: Project, inverterId: string, where: string, worksheet: Worksheet): InverterModel {
  const inverter = own(project.equipment.inverters, inverterId)
  if (inverter === undefined) {
    throw new StageError(
      where,
      `no inverter '${inverterId}' under equipment.inverters`,
      'name one that is listed there',
    )
  }
  const path = `equipment.inverters.${inverterId}`
  const nightW =
    inverter.night_w ??
    worksheet.assume({
      path: `${path}.night_w`,
      value: 0,
      unit: 'W',
      why: 'the data sheet states no own consumption at night',
      source: { document: '', standing: 'common practice, no source' },
    })
  const wanted = project.model?.inverter_efficiency
  const curve = inverter.efficiency_curve
  if (curve !== undefined && wanted !== 'constant') {
    return curveEfficiency(
      inverter.ac_power_w,
      curve.map((point) => ({ loadPct: point.load_pct, efficiencyPct: point.efficiency_pct })),
      nightW,
    )
  }
  if (inverter.weighted_efficiency_pct === undefined || (wanted === 'curve' && curve === undefined)) {
    throw new StageError(
      path,
      wanted === 'curve'
        ? 'model.inverter_efficiency is curve, but the inverter has no efficiency_curve'
        : 'the inverter states no weighted_efficiency_pct',
      wanted === 'curve'
        ? 'add efficiency_curve from the data sheet, or choose model.inverter_efficiency: constant'
        : 'add weighted_efficiency_pct or efficiency_curve from the data sheet',
    )
  }
  return constantEfficiency(inverter.ac_power_w, inverter.weighted_efficiency_pct, nightW)
}
