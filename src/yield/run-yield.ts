import { siteClimate, weatherFileOf, type Climate } from '../climate/index.js'
import { unlikeStrings } from '../project/facts.js'
import type { Project } from '../project/index.js'
import { placeModules } from '../roof/index.js'
import { sceneFindings } from '../scene/index.js'
import { Worksheet, type Result } from '../worksheet/index.js'
import { own, type Watts } from '../values/index.js'
import { arrayDc, type ArrayDc } from './array-dc.js'
import { arrayLight } from './array-light.js'
import type { ArrayPlan } from './array-plan.js'
import { cellRiseKPerWM2 } from './cell-temperature.js'
import { dayTypeSteps } from './day-type-steps.js'
import { degradationOf } from './degradation.js'
import { cellTemperatureModel, comparisonTemperature, inverterModels, moduleModel } from './equipment-models.js'
import { hourlySteps } from './hourly-steps.js'
import { recordWithinHour } from './record-within-hour.js'
import { recordYield } from './record-yield.js'
import type { Conversion } from './conversion.js'
import { seriesCurve } from './series/index.js'
import { plansInSpace } from './plans-in-space.js'
import { lossSettings, modelSettings } from './settings.js'
import { skyLight } from './sky-light.js'
import type { SkySteps } from './sky-steps.js'
import { snowShares } from './snow-shares.js'
import { summarise } from './summarise.js'
import { systemAc, type ArrayAc, type SystemAc } from './system-ac.js'
import { yieldUncertainty, type UncertainArray } from './uncertainty/index.js'
import type { YieldValues } from './yield-values.js'

/** The estimate with everything behind it, for stages that need more than its values. */
export interface YieldRun {
  readonly result: Result<YieldValues>
  readonly climate: Climate
  readonly steps: SkySteps
  readonly arrays: readonly ArrayDc[]
  readonly system: SystemAc
  /** What the AC side was computed with, for parts of the system. */
  readonly conversion: Conversion
}

/** What can be reused from run to run of the same house: the climate does not change with the roof. */
export interface YieldContext {
  readonly climate: Climate
  readonly steps: SkySteps
  /** Array whose modules are only turned in thought, so that its rows do not shade each other. */
  readonly turned?: string
}

/**
 * Estimates the energy of a project.
 *
 * @param project A valid project.
 * @param files Text of the files that the project names, by the path as written.
 * @param context Climate of the same site, as of an earlier run, and the sky of that run.
 * @throws StageError when something is missing that may not be guessed.
 */
export function runYield(
  project: Project,
  files: ReadonlyMap<string, string>,
  context?: Pick<YieldContext, 'climate'> & Partial<YieldContext>,
): YieldRun {
  const worksheet = new Worksheet()
  const weather = files.get(weatherFileOf(project.site) ?? '')
  const climate = context?.climate ?? siteClimate(project.site, weather, worksheet)
  const settings = modelSettings(project, worksheet, hasShortSteps(climate))
  const steps =
    context?.steps ??
    (climate.kind === 'hourly'
      ? hourlySteps(climate, settings.solarConstantWM2)
      : dayTypeSteps(climate, settings.solarConstantWM2))
  const arrangement = new Worksheet()
  placeModules(project, arrangement)
  // The arrangement is reported by its own stage; here only what makes the estimate wrong.
  for (const finding of arrangement.result({}).findings) if (finding.severity === 'error') worksheet.find(finding)
  const { scene, plans } = plansInSpace(project, context?.turned)
  for (const finding of sceneFindings(project, scene)) worksheet.find(finding)
  for (const { severity, message, where, fix } of unlikeStrings(project))
    worksheet.find({
      severity,
      id: 'yield.unlike-strings',
      message: `${message}; the estimate takes every module at its best point and is too high`,
      where,
      fix,
    })
  const ageing = degradationOf(project, worksheet)
  const losses = lossSettings(project.losses, inverterKind(project, plans), ageing.pctPerYear / 100, worksheet)
  const sky = skyLight(steps, settings.sky)
  const arrays = plans.map((plan) => {
    const lit = arrayLight(steps, sky, plan, settings)
    return arrayDc(steps, lit, {
      settings,
      losses,
      module: moduleModel(plan, worksheet),
      temperature: cellTemperatureModel(project, plan, settings.temperature, worksheet),
      comparedRiseKPerWM2: cellRiseKPerWM2(comparisonTemperature(plan), 0),
      snow: snowShares(project, climate, steps, lit, worksheet),
      curve: lit.groups.some((group) => group.shade !== undefined)
        ? seriesCurve(plan.module, `equipment.modules.${plan.moduleId}`, worksheet)
        : undefined,
    })
  })
  const conversion = { inverters: inverterModels(project, plans, worksheet), settings, losses }
  const system = systemAc(steps, arrays, conversion.inverters, settings, losses)
  recordWithinHour(project, system, worksheet)
  const comparedRatio = comparisonRatio(arrays)
  const sureness = yieldUncertainty(
    {
      climate,
      arrays: arrays.map(({ plan }) => uncertainArray(plan, system)),
      temperatureSpread: Math.abs(comparedRatio - 1) / 2,
      rowShade: shareOfUnplacedRacks(plans),
      availabilityLoss: losses.availability,
      ageing,
      life: lifeOf(project, worksheet),
    },
    worksheet,
  )
  const values = summarise(climate, steps, arrays, system, sureness)
  recordYield({ project, climate, plans, values, comparedRatio }, worksheet)
  return { result: worksheet.result(values), climate, steps, arrays, system, conversion }
}

/** Steps up to this length show the clouds within the hour, h. */
const SHORT_STEP_H = 0.25

function hasShortSteps(climate: Climate): boolean {
  return climate.kind === 'hourly' && climate.stepH <= SHORT_STEP_H + 1e-9
}

/** Estimates the energy of a project; see `runYield` for what is behind it. */
export function estimateYield(project: Project, files: ReadonlyMap<string, string> = new Map()): Result<YieldValues> {
  return runYield(project, files).result
}

/** Share of the rated power on racks whose modules have no places, 0 to 1. */
function shareOfUnplacedRacks(plans: readonly ArrayPlan[]): number {
  const ratedW = (some: readonly ArrayPlan[]): Watts =>
    some.reduce((sum, plan) => sum + plan.module.pmax_w * plan.modules.length, 0)
  const unplaced = plans.filter((plan) => plan.onRacks && plan.rows === undefined && plan.modules.length > 1)
  return ratedW(unplaced) / ratedW(plans)
}

/** Energy by the other temperature model over energy by the chosen one, on the DC side. */
function comparisonRatio(arrays: readonly ArrayDc[]): number {
  let [compared, chosen] = [0, 0]
  for (const array of arrays) {
    compared += array.comparedKwh
    chosen += array.ladder.temperature
  }
  return chosen > 0 ? compared / chosen : 1
}

/** The kind of inverter that decides between the two columns of loss defaults; strings where both are used. */
function inverterKind(project: Project, plans: readonly ArrayPlan[]): 'module_level' | 'string' {
  const kinds = plans.flatMap((plan) =>
    plan.modules.map((module) => own(project.equipment.inverters, module.inverterId)?.kind ?? 'string'),
  )
  return kinds.includes('string') ? 'string' : 'module_level'
}

/** What of an array its uncertainty rests on. */
function uncertainArray({ id, tiltDeg, azimuthDeg }: ArrayPlan, system: SystemAc): UncertainArray {
  const { acKwh, ladder } = system.arrays.get(id) as ArrayAc
  const lost = (before: number, after: number): number => (before > 0 ? Math.max(0, 1 - after / before) : 0)
  return {
    id,
    kwh: acKwh.reduce((sum, kwh) => sum + kwh, 0),
    tiltDeg,
    azimuthDeg,
    shadeLoss: lost(ladder.plane, ladder.shade),
    dirtLoss: lost(ladder.reflection, ladder.dirt),
    snowLoss: lost(ladder.dirt, ladder.snow),
  }
}

/** Years that the system is in use: those of the study, or the usual warranty of the output. */
function lifeOf(project: Project, worksheet: Worksheet): { readonly years: number; readonly path: string } {
  const path = 'finance.years'
  const years =
    project.finance?.years ??
    worksheet.assume({
      path,
      value: 25,
      unit: 'years',
      why: 'years in use for the energy of a lifetime: makers usually warrant the output of modules as long',
      source: { document: '', standing: 'common practice, no source' },
    })
  return { years, path }
}
