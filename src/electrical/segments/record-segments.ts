import {
  CABLE_ENTRY_LENGTH_IN,
  conductorSizes,
  necSource,
  type ConductorSize,
  type Edition,
} from '../../tables/nec/index.js'
import { isAc, isStorage, isSupplyTap, sizingSource, type ServiceFloor, type Job } from '../system/index.js'
import { adjustmentRowWords, ambientRowWords, reasonOf } from '../conductors/index.js'
import { findInMethod } from './find-in-method.js'
import { recordAreas } from './record-areas.js'
import { recordCableLimit } from './record-cable-limit.js'
import { recordGroundGrowth } from './record-ground-growth.js'
import { recordMethod } from './record-method.js'
import type { CircuitInSegment, SizedSegment } from './size-segments.js'

/** Every segment on the worksheet, in the order in which an inspector checks it. */
export function recordSegments(job: Job, sized: readonly SizedSegment[]): void {
  for (const [i, segment] of sized.entries()) {
    recordMethod(job, segment)
    recordFactors(job, segment)
    for (const entry of segment.circuits) recordConductor(job, segment, entry)
    recordGroundGrowth(job, segment)
    recordGround(job, segment)
    recordFill(job, segment)
    recordStraps(job, segment)
    findInSegment(job, segment)
    findInMethod(job, segment, sized[i + 1])
  }
}

function recordFactors(job: Job, { segment, conditions: c }: SizedSegment): void {
  const base = `wire.${segment.id}`
  job.worksheet.note({
    id: `${base}.temperature`,
    says: 'Temperature round the conductors: ambient and what the sun adds on a roof',
    formula: 'T = T_ambient + T_adder',
    inputs: [
      {
        symbol: 'T_ambient',
        value: c.ambientC,
        unit: 'deg C',
        from: segment.stated.ambient_c === undefined ? 'hot design temperature' : `${segment.where}.ambient_c`,
      },
      { symbol: 'T_adder', value: c.adderC, unit: 'deg C', from: c.adderSection ?? 'no adder here' },
    ],
    result: { symbol: 'T', value: c.temperatureC, unit: 'deg C' },
    source: job.nec('rooftopAdder'),
  })
  job.worksheet.note({
    id: `${base}.correction`,
    says: `Correction for the temperature, ${c.factorC} deg C column; between printed rows the hotter one`,
    formula: 'C_a from the table',
    inputs: [
      { symbol: 'T', value: c.temperatureC, unit: 'deg C', from: `${base}.temperature` },
      {
        symbol: 'row',
        value: ambientRowWords(c.temperatureC),
        unit: '',
        from: job.nec('ambientCorrection').place ?? '',
      },
    ],
    result: { symbol: 'C_a', value: c.correction, unit: '' },
    source: job.nec('ambientCorrection'),
  })
  job.worksheet.note({
    id: `${base}.adjustment`,
    says: c.nipple
      ? 'No adjustment in a nipple of 24 in or less'
      : `Adjustment for the current-carrying conductors ${c.method.form === 'cable' ? 'of the cables that lie together' : 'in the raceway'}`,
    formula: 'C_n from the table',
    inputs: [
      { symbol: 'n', value: c.currentCarrying, unit: 'conductors', from: segment.where },
      ...(c.nipple
        ? []
        : [
            {
              symbol: 'row',
              value: adjustmentRowWords(c.currentCarrying),
              unit: '',
              from: job.nec('moreThanThreeConductors').place ?? '',
            },
          ]),
    ],
    result: { symbol: 'C_n', value: c.adjustment, unit: '' },
    source: job.nec(c.nipple ? 'nipple' : 'moreThanThreeConductors'),
  })
}

function recordConductor(job: Job, { segment, conditions }: SizedSegment, entry: CircuitInSegment): void {
  const { circuit, demand, sized, borrowedFrom } = entry
  const { verdict } = sized
  const base = `wire.${segment.id}.${circuit.id}`
  const name = `${sized.size} AWG ${demand.material} ${conditions.insulation}`.replace(' kcmil AWG', ' kcmil')
  const product = `I_${conditions.factorC} x C_a x C_n`
  const isCapped = verdict.correctedA < verdict.baseA * demand.correction * demand.adjustment * (1 - 1e-9)
  const dutySource = sizingSource(job, circuit)
  job.worksheet.note({
    id: `${base}.terminal`,
    says: `Test 1, ${name}: table ampacity in the ${demand.terminalC} deg C column against ${isStorage(circuit) ? 'the overcurrent device of the storage, which is not below 125 percent of the current' : '125 percent of the current'}`,
    formula: 'I_terminal >= I_req',
    inputs: [
      {
        symbol: 'I_req',
        value: demand.requiredA,
        unit: 'A',
        from: `wire.${circuit.id}.${isStorage(circuit) ? 'device' : 'required'}`,
      },
    ],
    result: { symbol: 'I_terminal', value: verdict.terminalA, unit: 'A' },
    check: { relation: '>=', limit: demand.requiredA, pass: verdict.terminalA >= demand.requiredA },
    source: job.nec('terminalTemperature'),
  })
  job.worksheet.note({
    id: `${base}.conditions`,
    says: `Test 2, ${name}: ampacity under the conditions of use against the maximum current${borrowedFrom === undefined ? '' : ` (factors of ${borrowedFrom} by the 10 ft rule)`}`,
    formula: isCapped ? `I_z = min(I_column, ${product})` : `I_z = ${product}`,
    inputs: [
      {
        symbol: `I_${conditions.factorC}`,
        value: verdict.baseA,
        unit: 'A',
        from: job.nec(demand.freeAir ? 'freeAirAmpacity' : 'ampacityTable').place ?? '',
      },
      { symbol: 'C_a', value: demand.correction, unit: '', from: `wire.${borrowedFrom ?? segment.id}.correction` },
      { symbol: 'C_n', value: demand.adjustment, unit: '', from: `wire.${borrowedFrom ?? segment.id}.adjustment` },
      ...(isCapped ? [{ symbol: 'I_column', value: verdict.correctedA, unit: 'A', from: `${base}.cable-limit` }] : []),
    ],
    result: { symbol: 'I_z', value: verdict.correctedA, unit: 'A' },
    check: { relation: '>=', limit: demand.continuousA, pass: verdict.correctedA >= demand.continuousA },
    source: borrowedFrom === undefined ? dutySource : job.nec('lowerAmpacity'),
  })
  recordCableLimit(job, base, entry, conditions)
  if (demand.deviceA !== null)
    job.worksheet.note({
      id: `${base}.protection`,
      says: `The ${demand.deviceA} A device protects ${name}${verdict.smallDeviceA === undefined ? '' : `, for which ${verdict.smallDeviceA} A is the most`}`,
      formula: 'device <= ampacity or the next standard size above it; small conductors have their own limit',
      inputs: [
        { symbol: 'device', value: demand.deviceA, unit: 'A', from: `wire.${circuit.id}.device` },
        {
          symbol: 'ampacity',
          value: Math.min(verdict.correctedA, verdict.terminalA),
          unit: 'A',
          from: 'smaller of the two tests',
        },
      ],
      result: { symbol: 'size', value: sized.size, unit: '' },
      source: job.nec(verdict.smallDeviceA === undefined ? 'nextSizeUp' : 'smallConductor'),
    })
  if (demand.service !== undefined) recordServiceFloor(job, base, entry, demand.service)
  job.worksheet.note({
    id: `${base}.size`,
    says: `Smallest size that passes from splice to splice is ${sized.smallest}; governed by: ${reasonOf(sized.governs)}`,
    formula: 'smallest size that passes every test in every piece of the conductor',
    inputs: [{ symbol: 'named', value: sized.named?.size ?? 'none', unit: '', from: segment.sizeWhere }],
    result: { symbol: 'size', value: sized.size, unit: '' },
    source: dutySource,
  })
}

/** What conductors ahead of a service disconnect need besides: the device at their end, and the smallest service. */
function recordServiceFloor(
  job: Job,
  base: string,
  { sized: { size, verdict }, demand }: CircuitInSegment,
  { endDeviceA, leastA, leastSize }: ServiceFloor,
): void {
  const ampacityA = Math.min(verdict.correctedA, verdict.terminalA)
  const least = Math.max(endDeviceA, leastA)
  job.worksheet.note({
    id: `${base}.service`,
    says: `Test 3, ${size} ${demand.material}: ampacity against the ${endDeviceA} A device at its end and the smallest service; the next standard size above the ampacity is not used${leastSize === undefined ? '' : `; the edition names ${leastSize} AWG ${demand.material} as the smallest`}`,
    formula: 'ampacity = min(I_terminal, I_z)',
    inputs: [
      { symbol: 'I_terminal', value: verdict.terminalA, unit: 'A', from: `${base}.terminal` },
      { symbol: 'I_z', value: verdict.correctedA, unit: 'A', from: `${base}.conditions` },
      { symbol: 'device', value: endDeviceA, unit: 'A', from: 'device at the end' },
      { symbol: 'smallest service', value: leastA, unit: 'A', from: job.nec('serviceDisconnectRating').place ?? '' },
    ],
    result: { symbol: 'ampacity', value: ampacityA, unit: 'A' },
    check: { relation: '>=', limit: least, pass: ampacityA >= least },
    source: job.nec('serviceConductor'),
  })
}

function recordGround(job: Job, { segment, ground, conditions }: SizedSegment): void {
  if (ground === null) return
  const device = Math.max(...segment.circuits.map((circuit) => circuit.groundingDeviceA))
  job.worksheet.note({
    id: `wire.${segment.id}.ground`,
    says: conditions.freeAir
      ? 'Grounding conductor exposed in the array: by the table, and at least the size that needs no protection'
      : 'Equipment grounding conductor by the largest device, increased with the circuit conductors',
    formula:
      'size from the table; area x (increased / needed) when voltage rise or a wish increases them; never above the circuit conductors',
    inputs: [{ symbol: 'device', value: device, unit: 'A', from: 'largest of the raceway' }],
    result: { symbol: 'EGC', value: ground, unit: '' },
    source: job.nec(conditions.freeAir ? 'equipmentGroundProtection' : 'equipmentGroundSize'),
  })
}

function recordFill(job: Job, sized: SizedSegment): void {
  const { segment, contents } = sized
  const { verdict } = contents
  if (verdict === undefined) return
  recordAreas(job, sized)
  job.worksheet.note({
    id: `wire.${segment.id}.fill`,
    says: `${segment.stated.raceway} ${verdict.tradeSize} with ${contents.count} conductors, grounding conductor counted`,
    formula: 'fill = areas / inside',
    inputs: [
      { symbol: 'areas', value: contents.areaIn2, unit: 'in2', from: `wire.${segment.id}.areas` },
      {
        symbol: 'inside',
        value: verdict.insideIn2,
        unit: 'in2',
        from: segment.stated.inside_area_source ?? 'Chapter 9 Table 4',
      },
    ],
    result: { symbol: 'fill', value: verdict.fillPct, unit: '%' },
    check: { relation: '<=', limit: verdict.limitPct, pass: verdict.passes },
    source: job.nec('racewayFill'),
  })
}

function recordStraps(job: Job, { segment, straps, conditions }: SizedSegment): void {
  const short = conditions.method.method === 'NM' && !NO_ENTRY_LENGTH.has(job.edition)
  job.worksheet.note({
    id: `wire.${segment.id}.straps`,
    says: `Supports at ${straps.positionsFt.map((ft) => ft.toFixed(1)).join(', ')} ft from the start`,
    formula: `within the distance from each box or fitting, and at most the spacing apart${short ? `; no more than ${CABLE_ENTRY_LENGTH_IN} in of cable between entry and first support` : ''}`,
    inputs: [
      { symbol: 'L', value: segment.stated.length_ft, unit: 'ft', from: segment.lengthWhere },
      { symbol: 'spacing', value: straps.maxSpacingFt, unit: 'ft', from: straps.section },
      { symbol: 'from box', value: straps.maxFromBoxFt, unit: 'ft', from: straps.section },
    ],
    result: { symbol: 'straps', value: straps.positionsFt.length, unit: '' },
    source: { ...job.nec('racewaySupport'), place: straps.section },
  })
}

/** Editions without a limit to the length of cable between entry and support. */
const NO_ENTRY_LENGTH: ReadonlySet<Edition> = new Set(['NEC 2011', 'NEC 2014', 'NEC 2017'])

/** Sizes of the table above the need from which on the voltage rise deserves a word. */
const OVERSIZE = 3

const sizesAbove = (needed: ConductorSize, chosen: ConductorSize): number =>
  conductorSizes.indexOf(chosen) - conductorSizes.indexOf(needed)

function findInSegment(job: Job, { segment, circuits, conditions }: SizedSegment): void {
  const { stated, where } = segment
  for (const { circuit, sized } of circuits)
    if (sized.named !== undefined && !sized.named.complies)
      job.worksheet.find({
        severity: sized.named.reason === 'fails: voltage rise' ? 'warning' : 'error',
        id: isSupplyTap(circuit) ? 'wire.supply-side-conductor' : 'wire.named-conductor',
        message: `${sized.named.size} AWG for ${circuit.id} in ${segment.id} ${sized.named.reason}; ${sized.smallest} is the smallest that passes`,
        where: segment.sizeWhere,
        source: isSupplyTap(circuit) ? job.nec('serviceConductor') : sizingSource(job, circuit),
        fix:
          isSupplyTap(circuit) || sized.named.reason.startsWith('fails')
            ? `Use ${sized.smallest} or larger`
            : `Name one size of ${sized.smallest} or larger for the whole run, or begin another run at the box where the conductor is spliced`,
      })
  for (const { circuit, sized } of circuits)
    if (sizesAbove(sized.smallestByAmpacity, sized.smallest) >= OVERSIZE)
      job.worksheet.find({
        severity: 'warning',
        id: 'wire.voltage-oversize',
        message: `the voltage rise makes ${circuit.id} ${sized.smallest} instead of ${sized.smallestByAmpacity} in ${segment.id}, which may not fit its terminals`,
        where,
        source: job.nec('voltageDrop'),
        fix:
          circuit.trunk === undefined
            ? 'Shorten the run, or read the wire range of the terminals'
            : 'Feed the trunk in its centre, or put fewer inverters on the branch',
      })
  const dc = segment.circuits.some((circuit) => !isAc(circuit))
  const pvDc = segment.circuits.some((circuit) => !isAc(circuit) && !isStorage(circuit))
  const inside = stated.location === 'attic' || stated.location === 'indoors'
  if (pvDc && inside && !conditions.method.pvDcInside)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.dc-inside',
      message: `DC circuits inside a building need a metal raceway, ${segment.id} is ${stated.raceway}`,
      where: `${where}.raceway`,
      source: job.nec('dcInBuildings'),
      fix: 'Use EMT, or metal-clad cable',
    })
  if (dc && segment.circuits.some(isAc))
    job.worksheet.find({
      severity: 'error',
      id: 'wire.ac-with-dc',
      message: `${segment.id} holds AC and DC circuits in one raceway`,
      where,
      source: job.nec('acDcSeparation'),
      fix: 'Give them raceways of their own, or a partition',
    })
  if (stated.location === 'array' && stated.ambient_c === undefined)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.array-ambient',
      message: `wires under modules can be hotter than the outdoor air that ${segment.id} is reckoned with`,
      where: `${where}.ambient_c`,
      source: necSource(job.edition, '690.31(A)', 'from memory'),
      fix: 'State ambient_c when wires touch the back of the modules',
    })
}
