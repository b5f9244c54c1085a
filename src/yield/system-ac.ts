import type { ArrayDc } from './array-dc.js'
import { meanClippedW, REACH_OF_MEAN, REACH_SPREADS, spreadWithinHour } from './clipping-within-hour.js'
import { unlimitedAcW, type InverterModel } from './inverter-model.js'
import { emptyLadder, type Ladder } from './ladder.js'
import type { LossSettings, ModelSettings } from './settings.js'
import type { SkySteps } from './sky-steps.js'
import type { KilowattHours, Watts } from '../values/index.js'

/** Energy of something by month, kWh. */
export interface MonthlyEnergy {
  readonly dcKwh: Float64Array
  readonly acKwh: Float64Array
  readonly clippedKwh: Float64Array
}

export interface ArrayAc extends MonthlyEnergy {
  readonly ladder: Ladder
  /** AC energy of each module a year, kWh, in the order of `plan.modules`. */
  readonly moduleAcKwh: Float64Array
}

export interface SystemAc {
  readonly arrays: ReadonlyMap<string, ArrayAc>
  /** AC power at the connection, W, by step, after all losses but night consumption. */
  readonly acW: Float64Array
  /** DC power at all inverters, and AC power lost at their limits, W, by step. */
  readonly dcW: Float64Array
  readonly clippedW: Float64Array
  /** What all inverters draw while the sun is down, W. */
  readonly nightW: Watts
  /** What clipping takes because clouds come and go within the hour, on top of what means of the hour lose, kWh a year. */
  readonly withinHourKwh: KilowattHours
}

/** An inverter, and which modules of which arrays hang on it. */
interface Station {
  readonly inverter: InverterModel
  /** How many equal inverters this stands for (module-level inverters of one shade group). */
  readonly count: number
  readonly inputs: readonly {
    readonly arrayId: string
    readonly dcW: Float64Array
    readonly modules: readonly number[]
    /** Spread of light within the step over its mean; undefined where it does not count. */
    readonly spread: Float64Array | undefined
  }[]
}

/**
 * AC side of the whole system: each inverter adds up its modules, converts, and is limited to its rating.
 *
 * What an inverter loses is shared out among its arrays in proportion to the DC energy they bring at that step.
 */
export function systemAc(
  steps: SkySteps,
  arrays: readonly ArrayDc[],
  inverters: ReadonlyMap<string, InverterModel>,
  settings: ModelSettings,
  losses: LossSettings,
): SystemAc {
  const length = steps.length
  const result = new Map<string, ArrayAc>()
  for (const array of arrays) {
    result.set(array.plan.id, {
      dcKwh: new Float64Array(12),
      acKwh: new Float64Array(12),
      clippedKwh: new Float64Array(12),
      ladder: { ...array.ladder },
      moduleAcKwh: new Float64Array(array.plan.modules.length),
    })
  }
  const totals = {
    acW: new Float64Array(length),
    dcW: new Float64Array(length),
    clippedW: new Float64Array(length),
    withinHourKwh: 0,
  }
  for (const station of stations(arrays, inverters, settings.clippingWithinHour ? steps : undefined)) {
    runStation(steps, station, { settings, losses }, result, totals)
  }
  const nightW = addNight(steps, arrays, inverters, result)
  return { arrays: result, ...totals, nightW }
}

function runStation(
  steps: SkySteps,
  station: Station,
  { settings, losses }: { readonly settings: ModelSettings; readonly losses: LossSettings },
  arrays: ReadonlyMap<string, ArrayAc>,
  totals: {
    readonly acW: Float64Array
    readonly dcW: Float64Array
    readonly clippedW: Float64Array
    withinHourKwh: number
  },
): void {
  const { inverter, inputs, count } = station
  const { length, month: months, hours } = steps
  const rating = inverter.acRatingW
  const up = 1 - losses.availability
  const resistive = settings.wiringLoss === 'resistive'
  const tallies = inputs.map(() => new Tally())
  for (let step = 0; step < length; step += 1) {
    let dc = 0
    for (const input of inputs) dc += input.dcW[step]! * input.modules.length
    dc /= count
    if (dc <= 0) continue
    const free = unlimitedAcW(inverter, dc)
    let limited = free > rating ? rating : free
    const spreadW = free * REACH_OF_MEAN > rating ? free * spreadOf(inputs, step, dc * count) : 0
    if (spreadW > 0 && free + REACH_SPREADS * spreadW > rating) {
      const onAverage = free - meanClippedW(free, rating, spreadW)
      totals.withinHourKwh += ((limited - onAverage) * hours[step]! * count) / 1000
      limited = onAverage
    }
    const wired = limited * (1 - (resistive ? (losses.acWiring * limited) / rating : losses.acWiring))
    const delivered = wired * up
    const month = months[step]!
    const kwh = (hours[step]! * count) / 1000
    totals.acW[step] = totals.acW[step]! + delivered * count
    totals.dcW[step] = totals.dcW[step]! + dc * count
    totals.clippedW[step] = totals.clippedW[step]! + (free - limited) * count
    for (let index = 0; index < inputs.length; index += 1) {
      const input = inputs[index]!
      const share = (input.dcW[step]! * input.modules.length) / count / dc
      const tally = tallies[index]!
      tally.addMonth(month, kwh * share, dc, free - limited, delivered)
      tally.addLosses(kwh * share, free, limited, wired, delivered)
    }
  }
  inputs.forEach((input, index) => {
    const array = arrays.get(input.arrayId) as ArrayAc
    tallies[index]!.into(array, input.modules)
  })
}

/**
 * Spread of an inverter's power within a step over its mean: clouds come over all its inputs at once.
 *
 * @param dcW DC power of all its inputs, W.
 */
function spreadOf(inputs: Station['inputs'], step: number, dcW: Watts): number {
  let spread = 0
  for (const input of inputs) {
    if (input.spread === undefined) return 0
    spread += (input.dcW[step]! * input.modules.length * input.spread[step]!) / dcW
  }
  return spread
}

/** Spread of the light on a plane by step. */
function spreadBySteps({ length, ghiWM2, extraterrestrialWM2, sunUp }: SkySteps, planeWM2: Float64Array): Float64Array {
  const spread = new Float64Array(length)
  for (let step = 0; step < length; step += 1) {
    spread[step] = spreadWithinHour(planeWM2[step]!, ghiWM2[step]! / (extraterrestrialWM2[step]! * sunUp[step]!))
  }
  return spread
}

/** Energy of one input of an inverter; `energy` turns W of the inverter at a step into this input's kWh. */
class Tally {
  readonly #dcKwh = new Float64Array(12)
  readonly #acKwh = new Float64Array(12)
  readonly #clippedKwh = new Float64Array(12)
  #inverter = 0
  #clipping = 0
  #acWiring = 0
  #availability = 0

  addMonth(month: number, energy: number, dc: number, clipped: number, delivered: number): void {
    this.#dcKwh[month] = this.#dcKwh[month]! + dc * energy
    this.#acKwh[month] = this.#acKwh[month]! + delivered * energy
    this.#clippedKwh[month] = this.#clippedKwh[month]! + clipped * energy
  }

  /** Adds what is left after each loss. */
  addLosses(energy: number, free: number, limited: number, wired: number, delivered: number): void {
    this.#inverter += free * energy
    this.#clipping += limited * energy
    this.#acWiring += wired * energy
    this.#availability += delivered * energy
  }

  into(array: ArrayAc, modules: readonly number[]): void {
    for (let month = 0; month < 12; month += 1) {
      array.dcKwh[month] = array.dcKwh[month]! + this.#dcKwh[month]!
      array.acKwh[month] = array.acKwh[month]! + this.#acKwh[month]!
      array.clippedKwh[month] = array.clippedKwh[month]! + this.#clippedKwh[month]!
    }
    array.ladder.inverter += this.#inverter
    array.ladder.clipping += this.#clipping
    array.ladder.ac_cables += this.#acWiring
    array.ladder.out_of_order += this.#availability
    for (const module of modules) {
      array.moduleAcKwh[module] = array.moduleAcKwh[module]! + this.#availability / modules.length
    }
  }
}

/**
 * Module-level inverters become one station per shade group, string inverters one station each.
 *
 * @param spreading The steps, where the spread of light within them counts.
 */
function stations(
  arrays: readonly ArrayDc[],
  inverters: ReadonlyMap<string, InverterModel>,
  spreading: SkySteps | undefined,
): Station[] {
  const found: Station[] = []
  const units = new Map<string, { inverter: InverterModel; inputs: Station['inputs'][number][] }>()
  for (const { plan, groups, planeWM2 } of arrays) {
    const spread = spreading === undefined ? undefined : spreadBySteps(spreading, planeWM2)
    for (const { members, dcW } of groups) {
      const alone: number[] = []
      const byUnit = new Map<string, number[]>()
      for (const member of members) {
        const unit = plan.modules[member]?.unit
        if (unit === undefined) alone.push(member)
        else byUnit.set(unit, [...(byUnit.get(unit) ?? []), member])
      }
      const inverterId = plan.modules[members[0]!]?.inverterId ?? ''
      const inverter = inverters.get(inverterId)
      if (alone.length > 0 && inverter !== undefined) {
        found.push({ inverter, count: alone.length, inputs: [{ arrayId: plan.id, dcW, modules: alone, spread }] })
      }
      for (const [unit, modules] of byUnit) {
        const unitInverter = inverters.get(plan.modules[modules[0]!]?.inverterId ?? '')
        if (unitInverter === undefined) continue
        const station = units.get(unit) ?? { inverter: unitInverter, inputs: [] }
        station.inputs.push({ arrayId: plan.id, dcW, modules, spread })
        units.set(unit, station)
      }
    }
  }
  return [...found, ...[...units.values()].map((unit) => ({ ...unit, count: 1 }))]
}

/** Night consumption: each inverter draws its own while the sun is down; shared among arrays by modules. Returns the sum, W. */
function addNight(
  steps: SkySteps,
  arrays: readonly ArrayDc[],
  inverters: ReadonlyMap<string, InverterModel>,
  results: ReadonlyMap<string, ArrayAc>,
): number {
  const modulesOnUnit = new Map<string, number>()
  for (const { plan } of arrays) {
    for (const { unit } of plan.modules) {
      if (unit !== undefined) modulesOnUnit.set(unit, (modulesOnUnit.get(unit) ?? 0) + 1)
    }
  }
  let systemNightW = 0
  for (const { plan } of arrays) {
    const array = results.get(plan.id) as ArrayAc
    let nightW = 0
    plan.modules.forEach(({ unit, inverterId }, index) => {
      const own = inverters.get(inverterId)?.nightW ?? 0
      const share = unit === undefined ? own : own / (modulesOnUnit.get(unit) ?? 1)
      nightW += share
      let hours = 0
      for (const monthHours of steps.nightHours) hours += monthHours
      array.moduleAcKwh[index] = array.moduleAcKwh[index]! - (share * hours) / 1000
    })
    systemNightW += nightW
    array.ladder.night = array.ladder.out_of_order
    for (let month = 0; month < 12; month += 1) {
      const kwh = (nightW * steps.nightHours[month]!) / 1000
      array.acKwh[month] = array.acKwh[month]! - kwh
      array.ladder.night -= kwh
    }
  }
  return systemNightW
}

/** An empty ladder for a system total. */
export function totalLadder(arrays: Iterable<ArrayAc>): Ladder {
  const total = emptyLadder()
  for (const { ladder } of arrays) {
    for (const name of Object.keys(total) as (keyof Ladder)[]) total[name] += ladder[name]
  }
  return total
}
