import type { Climate } from '../climate/index.js'
import type { ArrayDc } from './array-dc.js'
import type { SkySteps } from './sky-steps.js'
import { totalLadder, type ArrayAc, type SystemAc } from './system-ac.js'
import type { YieldUncertainty } from './uncertainty/index.js'
import type { AnnualYield, ArrayYield, ClimateValues, MonthlyYield, SystemModule, YieldValues } from './yield-values.js'
import type { KilowattHours, Kilowatts } from '../values/index.js'

/** Adds the steps of the year up into the values that people and programs read. */
export function summarise(
  climate: Climate,
  steps: SkySteps,
  arrays: readonly ArrayDc[],
  system: SystemAc,
  sureness: YieldUncertainty,
): YieldValues {
  const ghiKwhM2 = sum(monthlySum(steps, steps.ghiWM2))
  const perArray = arrays.map((array): readonly [string, ArrayYield] => {
    const ac = system.arrays.get(array.plan.id) as ArrayAc
    return [array.plan.id, arrayYield(steps, array, ac, ghiKwhM2)]
  })
  const ratedKw = perArray.reduce((total, [, array]) => total + array.rated_kw, 0)
  const monthly = Array.from({ length: 12 }, (_, month): MonthlyYield => {
    const of = (pick: (value: MonthlyYield) => number): number =>
      perArray.reduce((total, [, array]) => total + pick(array.monthly[month]!), 0)
    const acKwh = of((value) => value.ac_kwh)
    return {
      month: month + 1,
      // Each array's light counts by its rated power.
      poa_kwh_m2:
        perArray.reduce((total, [, array]) => total + array.monthly[month]!.poa_kwh_m2 * array.rated_kw, 0) / ratedKw,
      dc_kwh: of((value) => value.dc_kwh),
      clipped_kwh: of((value) => value.clipped_kwh),
      ac_kwh: acKwh,
      kwh_per_kw: acKwh / ratedKw,
    }
  })
  return {
    rated_kw: ratedKw,
    annual: { ...annualYield(monthly, ratedKw, ghiKwhM2), p90_kwh: sureness.exceedance.first_year.p90_kwh },
    monthly,
    arrays: Object.fromEntries(perArray),
    modules: arrays.flatMap((array) => systemModules(steps, array, system)),
    climate: climateValues(climate),
    ladder: totalLadder(system.arrays.values()),
    ...sureness,
  }
}

function arrayYield(steps: SkySteps, array: ArrayDc, ac: ArrayAc, ghiKwhM2: number): ArrayYield {
  const { plan, groups } = array
  const ratedKw = (plan.module.pmax_w * plan.modules.length) / 1000
  const poa = monthlySum(steps, array.planeWM2)
  const monthly = Array.from({ length: 12 }, (_, month): MonthlyYield => {
    const acKwh = ac.acKwh[month]!
    return {
      month: month + 1,
      poa_kwh_m2: poa[month]!,
      dc_kwh: ac.dcKwh[month]!,
      clipped_kwh: ac.clippedKwh[month]!,
      ac_kwh: acKwh,
      kwh_per_kw: acKwh / ratedKw,
    }
  })
  const planeKwhM2 = sum(poa)
  const light = new Map<number, number>()
  for (const group of groups) {
    const pct = planeKwhM2 > 0 ? (100 * group.receivedKwhM2) / planeKwhM2 : 0
    for (const member of group.members) light.set(member, pct)
  }
  return {
    rated_kw: ratedKw,
    modules: plan.modules.length,
    tilt_deg: plan.tiltDeg,
    azimuth_deg: plan.azimuthDeg,
    annual: annualYield(monthly, ratedKw, ghiKwhM2),
    monthly,
    by_module: plan.modules.map((module, index) => ({
      id: module.id,
      ac_kwh: ac.moduleAcKwh[index]!,
      light_pct: light.get(index) ?? 0,
    })),
  }
}

/** The modules of an array, with what shade costs each. */
function systemModules(steps: SkySteps, { plan, groups, planeWM2 }: ArrayDc, system: SystemAc): SystemModule[] {
  const planeKwhM2 = sum(monthlySum(steps, planeWM2))
  const kwh = system.arrays.get(plan.id)?.moduleAcKwh
  const groupOf = new Map(groups.flatMap((group) => group.members.map((member) => [member, group] as const)))
  return plan.modules.map(({ id }, index) => {
    const group = groupOf.get(index)
    const light = planeKwhM2 > 0 && group !== undefined ? group.receivedKwhM2 / planeKwhM2 : 1
    return {
      id,
      array: plan.id,
      ac_kwh: kwh?.[index] ?? 0,
      light_loss_pct: lossPct(1 - light),
      mismatch_loss_pct: lossPct(group?.mismatchLost ?? 0),
    }
  })
}

/** A share as a percentage; rounding of the sums is no loss and no gain. */
function lossPct(share: number): number {
  return Math.abs(share) < 1e-9 ? 0 : 100 * share
}

function annualYield(
  monthly: readonly MonthlyYield[],
  ratedKw: Kilowatts,
  ghiKwhM2: number,
): Omit<AnnualYield, 'p90_kwh'> {
  const of = (pick: (value: MonthlyYield) => number): number => sum(monthly.map(pick))
  const acKwh = of((value) => value.ac_kwh)
  const poaKwhM2 = of((value) => value.poa_kwh_m2)
  return {
    ac_kwh: acKwh,
    dc_kwh: of((value) => value.dc_kwh),
    poa_kwh_m2: poaKwhM2,
    ghi_kwh_m2: ghiKwhM2,
    clipped_kwh: of((value) => value.clipped_kwh),
    kwh_per_kw: acKwh / ratedKw,
    performance_ratio: performanceRatio(acKwh, ratedKw, poaKwhM2),
  }
}

/**
 * Performance ratio: final yield over reference yield.
 *
 * @param acKwh Energy at the connection, kWh.
 * @param ratedKw Rated power at standard test conditions, kW.
 * @param poaKwhM2 Irradiation on the plane of the modules, kWh/m2.
 * @source IEC 61724-1: Yf = E/P0, Yr = H/(1 kW/m2), PR = Yf/Yr.
 */
export function performanceRatio(acKwh: KilowattHours, ratedKw: Kilowatts, poaKwhM2: number): number {
  return poaKwhM2 > 0 ? acKwh / ratedKw / poaKwhM2 : 0
}

function climateValues(climate: Climate): ClimateValues {
  const monthly = climate.kind === 'monthly' ? climate : undefined
  return {
    kind: climate.kind,
    name: climate.name,
    elevation_m: climate.elevationM,
    utc_offset_h: climate.utcOffsetH,
    spread_pct: (monthly?.spreadRel ?? 0) * 100,
    sites: (monthly?.sites ?? []).map((site) => ({
      wmo: site.wmo,
      name: `${site.name}, ${site.state}`,
      distance_km: site.distanceKm,
      weight: site.weight,
    })),
  }
}

/** kWh/m2 by month of a light in W/m2 by step. */
function monthlySum(steps: SkySteps, wattsM2: Float64Array): Float64Array {
  const sums = new Float64Array(12)
  for (let step = 0; step < steps.length; step += 1) {
    const month = steps.month[step]!
    sums[month] = sums[month]! + (wattsM2[step]! * steps.hours[step]!) / 1000
  }
  return sums
}

function sum(values: Iterable<number>): number {
  let total = 0
  for (const value of values) total += value
  return total
}
