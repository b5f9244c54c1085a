import type { Climate } from '../climate/index.js'
import type { Project } from '../project/index.js'
import { UNCERTAINTY } from '../tables/losses/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { ArrayPlan } from './array-plan.js'
import { COMPARISON_SOURCE } from './equipment-models.js'
import { LADDER } from './ladder.js'
import type { ArrayYield, YieldValues } from './yield-values.js'

/** The estimate as it goes on the worksheet. */
export interface RecordedYield {
  readonly project: Project
  readonly climate: Climate
  readonly plans: readonly ArrayPlan[]
  readonly values: YieldValues
  /** DC energy by the other temperature model over DC energy by the chosen one. */
  readonly comparedRatio: number
}

/** Writes the sums of the estimate on the worksheet, and the things that the person must know. */
export function recordYield(estimate: RecordedYield, worksheet: Worksheet): void {
  const { project, climate, plans, values, comparedRatio } = estimate
  recordRatedPower(values, plans, worksheet)
  recordLadder(values, worksheet)
  recordPerformanceRatio(values, worksheet)
  sayTemperatureSpread(values, comparedRatio, worksheet)
  if (climate.kind === 'monthly') sayMonthlyLimits(values.arrays, worksheet)
  sayClipping(estimate, worksheet)
  sayUnplaced(project, plans, worksheet)
}

function recordRatedPower(values: YieldValues, plans: readonly ArrayPlan[], worksheet: Worksheet): void {
  worksheet.step({
    id: 'yield.rated-power',
    says: 'Rated DC power of all modules at standard test conditions',
    formula: 'P0 = sum(N * Pmax) / 1000',
    inputs: plans.map((plan) => ({
      symbol: `N_${plan.id}`,
      value: plan.modules.length,
      unit: `x ${plan.module.pmax_w} W`,
      from: `arrays.${plan.id}`,
    })),
    result: { symbol: 'P0', value: values.rated_kw, unit: 'kW' },
    source: { document: 'data sheets of the modules', standing: 'project file' },
  })
}

/** Each loss as a factor on what the loss before it has left. */
function recordLadder(values: YieldValues, worksheet: Worksheet): void {
  let left = values.ladder.plane
  for (const name of LADDER.slice(2)) {
    const next = values.ladder[name]
    worksheet.step({
      id: `yield.ladder.${name.replaceAll('_', '-')}`,
      says: `Energy left after ${name.replaceAll('_', ' ')}`,
      formula: 'E_after = E_before * k',
      inputs: [
        { symbol: 'E_before', value: left, unit: 'kWh', from: 'the step above' },
        { symbol: 'k', value: left > 0 ? next / left : 1, unit: '', from: 'sum over the steps of the year' },
      ],
      result: { symbol: 'E_after', value: next, unit: 'kWh' },
      source: {
        document: 'sum over the steps of the year',
        place: 'models as named under assumptions',
        standing: 'read',
      },
    })
    left = next
  }
}

function recordPerformanceRatio({ annual, rated_kw: ratedKw }: YieldValues, worksheet: Worksheet): void {
  worksheet.step({
    id: 'yield.performance-ratio',
    says: 'Performance ratio',
    formula: 'PR = (E / P0) / (H / 1 kW/m2)',
    inputs: [
      { symbol: 'E', value: annual.ac_kwh, unit: 'kWh', from: 'values.annual.ac_kwh' },
      { symbol: 'P0', value: ratedKw, unit: 'kW', from: 'yield.rated-power' },
      { symbol: 'H', value: annual.poa_kwh_m2, unit: 'kWh/m2', from: 'values.annual.poa_kwh_m2' },
    ],
    result: { symbol: 'PR', value: annual.performance_ratio, unit: '' },
    source: { document: 'IEC 61724-1', standing: 'secondary' },
  })
}

function sayTemperatureSpread(values: YieldValues, comparedRatio: number, worksheet: Worksheet): void {
  const difference = 100 * (comparedRatio - 1)
  if (Math.abs(difference) < 0.05) return
  worksheet.note({
    id: 'yield.temperature-spread',
    says: 'DC energy with installed NOCT at this standoff over DC energy with the chosen temperature model',
    formula: 'r = E_DC(installed NOCT) / E_DC(chosen model)',
    inputs: [],
    result: { symbol: 'r', value: comparedRatio, unit: '' },
    source: COMPARISON_SOURCE,
  })
  worksheet.find({
    severity: 'note',
    id: 'yield.temperature-spread',
    message: `installed NOCT at this standoff would change the DC energy by ${difference > 0 ? '+' : ''}${difference.toFixed(1)} % (${values.annual.dc_kwh.toFixed(0)} kWh now); half of that is in the uncertainty`,
    where: 'model.temperature',
    source: COMPARISON_SOURCE,
    fix: 'choose model.temperature: noct if air moves freely under the modules on all sides',
  })
}

/** Planes on which the day-type method is less sure: largest difference to the station's own hours 5.9 % at 822 stations. */
function sayMonthlyLimits(arrays: Readonly<Record<string, ArrayYield>>, worksheet: Worksheet): void {
  for (const [id, array] of Object.entries(arrays)) {
    const sideways = array.azimuth_deg < 135 || array.azimuth_deg > 225
    const offSouth = array.tilt_deg > 1 && sideways
    const steep = array.tilt_deg > 34
    if (!offSouth && !steep) continue
    worksheet.find({
      severity: 'note',
      id: 'yield.monthly-method-limit',
      message: `array ${id} (tilt ${array.tilt_deg.toFixed(1)} deg, azimuth ${array.azimuth_deg.toFixed(0)} deg): from monthly means the year of planes that face east or west or stand steep can be off by up to 6 %, and by up to 10 % where no site tells mornings from afternoons`,
      where: `arrays.${id}`,
      fix: 'use an hourly weather file (site.climate.epw) to narrow this',
    })
  }
}

function sayClipping({ project, values, climate }: RecordedYield, worksheet: Worksheet): void {
  const { clipped_kwh: clipped, ac_kwh: ac } = values.annual
  if (clipped < 0.005 * ac) return
  const isSmooth = climate.kind === 'monthly' && project.model?.clipping_within_hour === 'none'
  worksheet.find({
    severity: 'note',
    id: 'yield.clipping',
    message: `inverters cut off ${clipped.toFixed(0)} kWh a year (${((100 * clipped) / ac).toFixed(1)} % of the output)${isSmooth ? '; broken clouds cut off more than smooth days show, take it as a lower bound' : ''}`,
    where: 'equipment.inverters',
  })
}

function sayUnplaced(project: Project, plans: readonly ArrayPlan[], worksheet: Worksheet): void {
  for (const plan of plans) {
    if (plan.onRacks && plan.rows === undefined && plan.modules.length > 1) {
      worksheet.find({
        severity: 'warning',
        id: 'yield.row-shade-without-places',
        message: `array ${plan.id} stands on racks and does not say where its modules lie, so the shade of row on row is not counted: nothing with one row, at worst all direct light of every row but the first; ${(100 * UNCERTAINTY.rowShade.relative).toFixed(0)} % is in the uncertainty`,
        where: `arrays.${plan.id}${own(project.arrays, plan.id)?.arrangement === undefined ? '' : '.arrangement'}`,
        source: UNCERTAINTY.rowShade.source,
        fix: 'state arrangement.blocks with row_gap_in, or arrangement: fit',
      })
    }
    const boxes = plan.uncounted
    if (boxes === 0) continue
    worksheet.find({
      severity: 'warning',
      id: 'yield.shade-without-places',
      message: `array ${plan.id} does not say where its modules lie, so the shade of ${boxes} obstruction(s) on its roof plane is not counted`,
      where: `arrays.${plan.id}${own(project.arrays, plan.id)?.arrangement === undefined ? '' : '.arrangement'}`,
      fix: 'state arrangement.blocks, or arrangement: fit',
    })
  }
}
