import { CONTINUOUS_FACTOR } from '../tables/nec/index.js'
import {
  type Circuit,
  lineCurrentsOf,
  pairCurrentsOf,
  polesOf,
  isAc,
  isShared,
  onwardOf,
  outdoorDesignC,
  type Job,
  type CircuitValues,
  type RacewayValues,
  type SegmentValues,
} from './system/index.js'
import { checkExpansion } from './raceways/index.js'
import { equipmentGroundSize, terminalTemperatureC } from './conductors/index.js'
import type { CircuitInSegment, SizedSegment } from './segments/index.js'
import {
  riseRemedies,
  type RiseParts,
  impedanceOhmPerKft,
  isMade,
  powerFactorOf,
  trunkRiseOf,
  voltageLimitPct,
  twoWireRiseV,
} from './voltage/index.js'
import { recordSegmentRise, recordTrunkRise, riseTerms } from './record-rise.js'
import type { Percent } from '../values/index.js'

/** Every raceway once, with all conductors, straps and expansion. */
export function racewayValues(job: Job, sized: readonly SizedSegment[]): RacewayValues[] {
  return sized.map(({ segment, contents, straps, conditions }) => {
    const expansion = checkExpansion(job, segment)
    return {
      id: segment.id,
      run: segment.run,
      location: segment.stated.location,
      type: segment.stated.raceway,
      form: conditions.method.form,
      trade_size: contents.verdict?.tradeSize ?? segment.stated.trade_size ?? null,
      fill_pct: contents.verdict?.fillPct ?? null,
      fill_limit_pct: contents.verdict?.limitPct ?? null,
      length_ft: segment.stated.length_ft,
      circuits: segment.circuits.map((circuit) => circuit.id),
      conductors: contents.conductors,
      straps: straps.positionsFt.length,
      strap_positions_ft: straps.positionsFt,
      length_change_in: expansion.changeIn ?? null,
      expansion_fitting: expansion.fitting,
    }
  })
}

/** Every circuit with its segments and its voltage rise, which it also puts on the worksheet. */
export function circuitValues(job: Job, circuits: readonly Circuit[], sized: readonly SizedSegment[]): CircuitValues[] {
  const own = new Map(circuits.map((circuit) => [circuit.id, segmentValues(job, circuit, sized)]))
  const riseOf = (id: string): number => (own.get(id) ?? []).reduce((sum, segment) => sum + segment.voltage_rise_pct, 0)
  return circuits.map((circuit) => {
    const rise = riseOf(circuit.id)
    const onward = onwardOf(circuit, circuits)
    const shared = onward.reduce((sum, { id }) => sum + riseOf(id), 0)
    const limit = limitOf(job, circuit, circuits)
    const shares = onward.map(({ id }) => ({ id, risePct: riseOf(id) }))
    recordRise(job, circuit, own.get(circuit.id) ?? [], shares, limit)
    checkRise(job, circuit, rise + shared, limit, runsOf(job, circuit, [circuit, ...onward], sized))
    return {
      id: circuit.id,
      kind: circuit.kind,
      inverters: circuit.inverters,
      modules: circuit.arrays,
      voltage_v: circuit.voltageV,
      continuous_a: circuit.continuousA,
      required_a: CONTINUOUS_FACTOR * circuit.continuousA,
      ...linesOf(circuit),
      breaker_a: circuit.deviceA,
      max_breaker_a: circuit.maxDeviceA ?? null,
      terminal_temperature_c: terminalTemperatureC(job, circuit),
      voltage_rise_pct: rise,
      total_voltage_rise_pct: rise + shared,
      voltage_rise_limit_pct: limit,
      segments: own.get(circuit.id) ?? [],
    }
  })
}

/** Lines, poles and line currents of a circuit of a three-phase service; nothing elsewhere. */
function linesOf(circuit: Circuit): Pick<CircuitValues, 'lines' | 'poles' | 'line_currents_a'> {
  const { lines } = circuit
  if (lines === undefined) return {}
  return { lines, poles: polesOf(circuit), line_currents_a: lineCurrentsOf(pairCurrentsOf(circuit)) }
}

/** What all inverters share has no limit of its own; it has the strictest of theirs. */
function limitOf(job: Job, circuit: Circuit, circuits: readonly Circuit[]): number {
  if (!isShared(circuit)) return voltageLimitPct(job, circuit)
  return Math.min(
    ...circuits
      .filter((candidate) => isAc(candidate) && !isShared(candidate))
      .map((candidate) => voltageLimitPct(job, candidate)),
  )
}

function segmentValues(job: Job, circuit: Circuit, sized: readonly SizedSegment[]): SegmentValues[] {
  const segments = sized.flatMap((segment) => {
    const entry = segment.circuits.find((candidate) => candidate.circuit === circuit)
    return entry === undefined ? [] : [racewaySegment(job, segment, entry)]
  })
  return circuit.trunk === undefined ? segments : [trunkSegment(job, circuit, circuit.trunk), ...segments]
}

function racewaySegment(job: Job, segment: SizedSegment, { circuit, sized, demand }: CircuitInSegment): SegmentValues {
  const { stated, id } = segment.segment
  const { conditions, ground, contents, straps } = segment
  const conductor = { size: sized.size, material: demand.material }
  const ohm = impedanceOhmPerKft(conductor, stated.raceway, isAc(circuit), powerFactorOf(job))
  const risePct = percentOf(circuit, twoWireRiseV(stated.length_ft, circuit.operatingA, ohm))
  recordSegmentRise(job, circuit, segment, conductor, risePct)
  return {
    id,
    location: stated.location,
    length_ft: stated.length_ft,
    size_awg: sized.size,
    material: demand.material,
    insulation: conditions.insulation,
    ambient_c: conditions.ambientC,
    rooftop_adder_c: conditions.adderC,
    correction: demand.correction,
    adjustment: demand.adjustment,
    ampacity_a: sized.verdict.correctedA,
    terminal_limit_a: sized.verdict.terminalA,
    governs: sized.governs,
    named:
      sized.named === undefined
        ? null
        : { size_awg: sized.named.size, complies: sized.named.complies, reason: sized.named.reason },
    smallest_awg: sized.smallest,
    egc_awg: ground,
    raceway: {
      type: stated.raceway,
      trade_size: contents.verdict?.tradeSize ?? stated.trade_size ?? null,
      fill_pct: contents.verdict?.fillPct ?? null,
    },
    voltage_rise_pct: risePct,
    straps: straps.positionsFt.length,
  }
}

function trunkSegment(job: Job, circuit: Circuit, trunk: NonNullable<Circuit['trunk']>): SegmentValues {
  const { cable } = trunk
  const needsGround = circuit.inverter?.needs_egc !== false
  return {
    id: `${circuit.id}.trunk`,
    location: 'array',
    length_ft: trunk.lengthFt,
    size_awg: cable.size_awg,
    material: 'copper',
    insulation: 'listed trunk cable',
    ambient_c: outdoorDesignC(job),
    rooftop_adder_c: 0,
    correction: 1,
    adjustment: 1,
    ampacity_a: cable.ampacity_a,
    terminal_limit_a: cable.ampacity_a,
    governs: 'listed_cable',
    named: null,
    smallest_awg: cable.size_awg,
    egc_awg:
      cable.has_egc === true && needsGround ? equipmentGroundSize(circuit.groundingDeviceA, circuit.where) : null,
    raceway: { type: 'none', trade_size: null, fill_pct: null },
    voltage_rise_pct: percentOf(circuit, trunkRiseOf(circuit)),
    straps: 0,
  }
}

const percentOf = (circuit: Circuit, volts: number): number => (100 * volts) / circuit.voltageV

function recordRise(
  job: Job,
  circuit: Circuit,
  segments: readonly SegmentValues[],
  onward: Parameters<typeof riseTerms>[2],
  limit: number,
): void {
  const { id } = circuit
  recordTrunkRise(job, circuit, percentOf(circuit, trunkRiseOf(circuit)))
  const total = [
    ...segments.map((segment) => segment.voltage_rise_pct),
    ...onward.map(({ risePct }) => risePct),
  ].reduce((sum, each) => sum + each, 0)
  job.worksheet.note({
    id: `wire.${id}.rise`,
    says: isAc(circuit)
      ? `Voltage rise up to the point of connection, conductors at 75 deg C${circuit.lines === 'ABC' ? '; in three phases I is that of a two-wire circuit with the same rise between its lines, sqrt(3)/2 of the line current where these are equal' : ''}`
      : 'Voltage drop at maximum power, conductors at 75 deg C',
    ...riseTerms(circuit, segments, onward),
    result: { symbol: 'total', value: total, unit: '%' },
    check: { relation: '<=', limit, pass: total <= limit * (1 + 1e-9) },
    source: job.nec(isAc(circuit) ? 'acImpedance' : 'dcResistance'),
  })
}

/** Runs that a circuit passes on its way to the point of connection. */
function runsOf(
  job: Job,
  circuit: Circuit,
  onWay: readonly Circuit[],
  sized: readonly SizedSegment[],
): Pick<RiseParts, 'runsFt' | 'runsPctWith'> {
  const pieces = sized.flatMap(({ segment, circuits }) =>
    circuits
      .filter((entry) => onWay.includes(entry.circuit))
      .map(({ circuit: { operatingA }, demand: { material } }) => ({ stated: segment.stated, operatingA, material })),
  )
  const powerFactor = powerFactorOf(job)
  return {
    runsFt: pieces.reduce((sum, { stated }) => sum + stated.length_ft, 0),
    runsPctWith: (size) =>
      pieces.some(({ material }) => !isMade({ size, material }))
        ? undefined
        : pieces.reduce((sum, { stated, operatingA, material }) => {
            const ohm = impedanceOhmPerKft({ size, material }, stated.raceway, isAc(circuit), powerFactor)
            return sum + percentOf(circuit, twoWireRiseV(stated.length_ft, operatingA, ohm))
          }, 0),
  }
}

function checkRise(
  job: Job,
  circuit: Circuit,
  totalPct: Percent,
  limitPct: Percent,
  runs: Pick<RiseParts, 'runsFt' | 'runsPctWith'>,
): void {
  if (totalPct <= limitPct * (1 + 1e-9)) return
  const { id, trunk, makerRisePct } = circuit
  const trunkPct = percentOf(circuit, trunkRiseOf(circuit))
  const runsPct = totalPct - trunkPct
  const remedies = riseRemedies(circuit, { trunkPct, runsPct, limitPct, ...runs })
  const [first = 'Shorten the way to the panel, or move the inverters nearer to it', ...others] = remedies
  job.worksheet.find({
    severity: makerRisePct === undefined && job.electrical.voltage_rise_limit_pct === undefined ? 'warning' : 'error',
    id: 'wire.voltage-rise',
    message: `${id} has ${totalPct.toFixed(2)} % voltage ${isAc(circuit) ? 'rise' : 'drop'}, ${limitPct} % is the limit: ${
      trunk === undefined
        ? `${runs.runsFt.toFixed(0)} ft of runs take it even with the largest conductors of the tables`
        : `${trunk.lengthFt.toFixed(0)} ft of trunk take ${trunkPct.toFixed(2)} % and the runs ${runsPct.toFixed(2)} %, which is all that larger conductors could save`
    }`,
    where: circuit.where,
    source: job.nec(isAc(circuit) ? 'listedEquipment' : 'voltageDrop'),
    fix: [`${first[0]?.toUpperCase()}${first.slice(1)}`, ...others].join('; or '),
  })
}
