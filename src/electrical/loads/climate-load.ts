import type { LoadHeating } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { recordSum } from './general-load.js'
import { tellMissing, WHERE, type LoadJob } from './load-job.js'
import { nameplateVa, type Rating } from './nameplate.js'

/** Cooling and heating at their nameplates, VA. */
export interface ClimateLoad {
  readonly coolingVa: number
  readonly heatPumpVa: number
  readonly supplementVa: number
  readonly resistanceVa: number
  readonly storageVa: number
  /** Separately controlled units of resistance heat that are stated. */
  readonly units: number
  /** The largest air conditioner or compressor, VA. */
  readonly largestCoolingVa: number
  readonly largestHeatPumpVa: number
}

/** All heating together, VA. */
export const heatingVa = ({ heatPumpVa, supplementVa, resistanceVa, storageVa }: ClimateLoad): number =>
  heatPumpVa + supplementVa + resistanceVa + storageVa

/**
 * What cools and heats the dwelling, each kind summed and recorded.
 *
 * @param suffix Section that counts it.
 * @throws StageError when a nameplate or the supplement of a heat pump is not stated.
 */
export function climateLoad(load: LoadJob, suffix: string): ClimateLoad {
  const { stated } = load
  for (const key of ['cooling', 'heating'] as const)
    if (stated[key] === undefined)
      tellMissing(load, key, `no ${key} is stated, so its part of the load is 0 VA`, load.section(suffix))
  const cooling = Object.entries(stated.cooling ?? {}).map(([id, plate]) =>
    nameplateVa(plate, `${WHERE}.cooling.${id}`, false),
  )
  const heating = Object.entries(stated.heating ?? {}).map(([id, plate]) =>
    heatingItem(`${WHERE}.heating.${id}`, plate),
  )
  const ofKind = (kind: LoadHeating['kind']) => heating.filter((item) => item.kind === kind)
  const sum = (id: string, says: string, loads: readonly Rating[]) => recordSum(load, id, says, loads, suffix)
  const resistance = ofKind('resistance')
  for (const { where, units } of resistance)
    if (units === undefined)
      load.job.worksheet.assume({
        path: `${where}.separately_controlled_units`,
        value: 'fewer than 4',
        unit: '',
        why: 'Fewer than four separately controlled units count more',
        source: load.section(suffix),
      })
  const pumps = ofKind('heat_pump')
  return {
    coolingVa: sum('cooling', 'Air conditioning', cooling),
    heatPumpVa: sum('heat-pumps', 'Heat pumps', pumps),
    supplementVa: sum(
      'supplement',
      'Electric heat that helps the heat pumps',
      pumps.flatMap(({ supplement }) => (supplement === undefined ? [] : [supplement])),
    ),
    resistanceVa: sum('resistance', 'Electric resistance heat', resistance),
    storageVa: sum('storage', 'Electric thermal storage', ofKind('thermal_storage')),
    units: resistance.reduce((total, { units }) => total + (units ?? 0), 0),
    largestCoolingVa: Math.max(0, ...cooling.map(({ va }) => va)),
    largestHeatPumpVa: Math.max(0, ...pumps.map(({ va }) => va)),
  }
}

interface HeatingItem extends Rating {
  readonly kind: LoadHeating['kind']
  readonly where: string
  readonly supplement: Rating | undefined
  readonly units: number | undefined
}

function heatingItem(where: string, heating: LoadHeating): HeatingItem {
  const { kind, supplement_va: supplementVa, separately_controlled_units: units } = heating
  const isPump = kind === 'heat_pump'
  if (isPump && supplementVa === undefined)
    throw new StageError(
      `${where}.supplement_va`,
      'whether electric heat strips help the heat pump is not stated',
      'State their rating in VA from the air handler, or 0 when there are none',
    )
  if (!isPump && supplementVa !== undefined)
    throw new StageError(`${where}.supplement_va`, `${kind} heat has no supplement`, 'State it as an entry of its own')
  if (kind !== 'resistance' && units !== undefined)
    throw new StageError(
      `${where}.separately_controlled_units`,
      `units are counted of resistance heat, this is ${kind}`,
      'Take it out',
    )
  const plate = nameplateVa(heating, where, !isPump)
  const from = `${where}.supplement_va`
  return {
    ...plate,
    kind,
    where,
    units,
    supplement: supplementVa === undefined || supplementVa === 0 ? undefined : { va: supplementVa, from },
  }
}
