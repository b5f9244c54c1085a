import type { ArrayDc } from './array-dc.js'
import { spreadWithinHour } from './clipping-within-hour.js'
import type { InverterModel } from './inverter-model.js'
import { engine, LAYOUT, type Engine } from './kernel/index.js'
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
  const machine = engine()
  const mark = machine.mark()
  const system = storeSystem(machine, steps)
  let withinHourKwh = 0
  for (const station of stations(arrays, inverters, settings.clippingWithinHour ? steps : undefined)) {
    withinHourKwh += runStation(machine, system, station, { settings, losses }, result)
  }
  const totals = {
    acW: machine.copyReals(system.acW, length),
    dcW: machine.copyReals(system.dcW, length),
    clippedW: machine.copyReals(system.clippedW, length),
    withinHourKwh,
  }
  machine.release(mark)
  const nightW = addNight(steps, arrays, inverters, result)
  return { arrays: result, ...totals, nightW }
}

/** Columns of the whole system where the kernel finds them. */
interface StoredSystem {
  readonly length: number
  readonly month: number
  readonly hours: number
  readonly acW: number
  readonly dcW: number
  readonly clippedW: number
}

function storeSystem(machine: Engine, { length, month, hours }: SkySteps): StoredSystem {
  const total = (): number => machine.storeReals(new Float64Array(length))
  return {
    length,
    month: machine.storeInts(month),
    hours: machine.storeReals(hours),
    acW: total(),
    dcW: total(),
    clippedW: total(),
  }
}

/** Runs a station through the year; returns what clipping within the hour takes on top, kWh. */
function runStation(
  machine: Engine,
  system: StoredSystem,
  { inverter, inputs, count }: Station,
  { settings, losses }: { readonly settings: ModelSettings; readonly losses: LossSettings },
  arrays: ReadonlyMap<string, ArrayAc>,
): KilowattHours {
  const mark = machine.mark()
  const job = machine.take(LAYOUT.AC_SIZE)
  const first = machine.take(inputs.length * LAYOUT.INPUT_SIZE)
  const points = machine.storeReals(inverter.dcW)
  const efficiency = machine.storeReals(inverter.efficiency)
  const columns = inputs.map(({ dcW, spread }) => ({
    dcW: machine.storeReals(dcW),
    spread: spread === undefined ? 0 : machine.storeReals(spread),
  }))
  const { ints, reals } = machine
  for (const [offset, value] of [
    [LAYOUT.AC_LENGTH, system.length],
    [LAYOUT.AC_MONTH, system.month],
    [LAYOUT.AC_HOURS, system.hours],
    [LAYOUT.AC_INPUTS, first],
    [LAYOUT.AC_INPUT_COUNT, inputs.length],
    [LAYOUT.AC_POINTS, points],
    [LAYOUT.AC_EFFICIENCY, efficiency],
    [LAYOUT.AC_POINT_COUNT, inverter.dcW.length],
    [LAYOUT.AC_RESISTIVE, settings.wiringLoss === 'resistive' ? 1 : 0],
    [LAYOUT.AC_TOTAL_AC, system.acW],
    [LAYOUT.AC_TOTAL_DC, system.dcW],
    [LAYOUT.AC_TOTAL_CLIPPED, system.clippedW],
  ] as const) {
    ints[(job + offset) >> 2] = value
  }
  reals[(job + LAYOUT.AC_RATING) >> 3] = inverter.acRatingW
  reals[(job + LAYOUT.AC_WIRING) >> 3] = losses.acWiring
  reals[(job + LAYOUT.AC_UP) >> 3] = 1 - losses.availability
  reals[(job + LAYOUT.AC_COUNT) >> 3] = count
  inputs.forEach(({ modules }, index) => {
    const at = first + index * LAYOUT.INPUT_SIZE
    ints[(at + LAYOUT.INPUT_DC) >> 2] = columns[index]!.dcW
    ints[(at + LAYOUT.INPUT_SPREAD) >> 2] = columns[index]!.spread
    reals[(at + LAYOUT.INPUT_MODULES) >> 3] = modules.length
    reals.fill(0, (at + LAYOUT.INPUT_TALLY) >> 3, (at + LAYOUT.INPUT_SIZE) >> 3)
  })
  machine.kernels.station(job)
  inputs.forEach(({ arrayId, modules }, index) => {
    const tally = (first + index * LAYOUT.INPUT_SIZE + LAYOUT.INPUT_TALLY) >> 3
    addTally(arrays.get(arrayId) as ArrayAc, modules, reals.subarray(tally, tally + TALLY_NUMBERS))
  })
  const withinHourKwh = reals[(job + LAYOUT.AC_WITHIN_HOUR) >> 3]!
  machine.release(mark)
  return withinHourKwh
}

/** Three times twelve months, and four losses. */
const TALLY_NUMBERS = 40

/** Adds the energy of one input of an inverter to its array, kWh. */
function addTally(array: ArrayAc, modules: readonly number[], tally: Float64Array): void {
  for (let month = 0; month < 12; month += 1) {
    array.dcKwh[month] = array.dcKwh[month]! + tally[month]!
    array.acKwh[month] = array.acKwh[month]! + tally[12 + month]!
    array.clippedKwh[month] = array.clippedKwh[month]! + tally[24 + month]!
  }
  const [inverter = 0, clipping = 0, cables = 0, delivered = 0] = tally.subarray(36)
  array.ladder.inverter += inverter
  array.ladder.clipping += clipping
  array.ladder.ac_cables += cables
  array.ladder.out_of_order += delivered
  for (const module of modules) {
    array.moduleAcKwh[module] = array.moduleAcKwh[module]! + delivered / modules.length
  }
}

/** Spread of the light on a plane by step. */
function spreadBySteps({ length, ghiWM2, extraterrestrialWM2, sunUp }: SkySteps, planeWM2: Float64Array): Float64Array {
  const spread = new Float64Array(length)
  for (let step = 0; step < length; step += 1) {
    spread[step] = spreadWithinHour(planeWM2[step]!, ghiWM2[step]! / (extraterrestrialWM2[step]! * sunUp[step]!))
  }
  return spread
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
