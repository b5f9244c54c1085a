import { CONTINUOUS_FACTOR } from '../../tables/nec/index.js'
import { inverterPath } from '../../project/facts.js'
import type { AcBranch, Inverter, TrunkCable } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Feet } from '../../values/index.js'
import {
  type Circuit,
  type Lines,
  highestLineA,
  serviceOf,
  twoWireEquivalentA,
  type Trunk,
  countModules,
  deviceDutyA,
  inverterById,
  makerMaxDeviceA,
  outputCurrentA,
  positive,
  type Job,
  nextStandardDeviceA,
} from '../system/index.js'
import { invertersOnLongerHalf } from '../voltage/index.js'
import { branchLines, mostInverters, pairsOn, TURNS } from './lines-of.js'

/** A branch as stated or as split by us. */
interface BranchPlan extends AcBranch {
  readonly id: string
  readonly where: string
}

/** Branch circuits of module-level inverters, as stated or split evenly, with their trunks. */
export function buildBranches(job: Job): Circuit[] {
  return layTrunks(job, planBranches(job))
}

/** The same without trunks, for which no length has to be known. */
export function branchSources(job: Job): Circuit[] {
  return planBranches(job).map((plan) => branchCircuit(job, plan))
}

/** Whether the stated branches hold every module once, and no more inverters than the makers allow. */
export function statedBranchesFit(job: Job): boolean {
  const plans = statedBranches(job)
  if (plans === undefined) return false
  return (
    branchedArrays(job, plans).every((arrayId) => onBranches(plans, arrayId) === countModules(job, arrayId)) &&
    plans.every((plan) => {
      const { inverterId, inverter } = inverterOf(job, plan)
      const { cable } = trunkById(job, plan.trunk ?? job.electrical.trunk, `${plan.where}.trunk`)
      return invertersOn(plan) <= mostPerBranch(job, { id: inverterId, inverter, lines: plan.phases }, cable)
    })
  )
}

function planBranches(job: Job): BranchPlan[] {
  const plans = statedBranches(job)
  if (plans === undefined) return splitEvenly(job)
  checkTotals(job, plans)
  return plans
}

function statedBranches(job: Job): BranchPlan[] | undefined {
  const stated = job.electrical.branches
  if (stated === undefined) return undefined
  return Object.entries(stated).map(([id, branch]) => ({ ...branch, id, where: `electrical.branches.${id}` }))
}

/** Branches take the modules of an array one after the other, in the order in which the trunk passes them. */
function layTrunks(job: Job, plans: readonly BranchPlan[]): Circuit[] {
  const taken = new Map<string, number>()
  return plans.map((plan) => {
    const gapsFt = Object.entries(plan.modules).flatMap(([arrayId, count]) => {
      const from = taken.get(arrayId) ?? 0
      taken.set(arrayId, from + count)
      return own(job.context.arrangement?.trunkGapsFt, arrayId)?.slice(from, from + count) ?? []
    })
    return { ...branchCircuit(job, plan), trunk: trunkOf(job, plan, gapsFt) }
  })
}

/** Arrays that have an inverter behind every module. */
function moduleLevelArrays(job: Job): string[] {
  return Object.entries(job.project.arrays)
    .filter(([, array]) => array.inverter !== undefined)
    .map(([id]) => id)
}

function splitEvenly(job: Job): BranchPlan[] {
  return moduleLevelArrays(job).flatMap((arrayId) => {
    const where = `arrays.${arrayId}`
    const inverterId = own(job.project.arrays, arrayId)?.inverter ?? ''
    const inverter = inverterById(job, inverterId, `${where}.inverter`)
    const trunk = trunkById(job, job.electrical.trunk, 'electrical.trunk')
    const total = countModules(job, arrayId)
    const lines = serviceOf(job).phases === 3 ? TURNS : undefined
    const most = mostPerBranch(job, { id: inverterId, inverter, lines }, trunk.cable)
    if (most < 1)
      throw new StageError(
        `${inverterPath(inverterId)}.max_branch_ocpd_a`,
        'not even one inverter fits the largest allowed overcurrent device',
        'Check the rated current and the largest device on the data sheet',
      )
    const branches = Math.ceil(total / most)
    return Array.from({ length: branches }, (_, i): BranchPlan => {
      const modules = Math.floor(total / branches) + (i < total % branches ? 1 : 0)
      const phases = lines === undefined ? {} : { phases: lines }
      return { id: `${arrayId}_${i + 1}`, where, modules: { [arrayId]: modules }, ...phases }
    })
  })
}

/** Most inverters on one branch: maker, trunk, and 1.25 x the highest line current within the largest device. */
function mostPerBranch(
  job: Job,
  { id, inverter, lines }: { readonly id: string; readonly inverter: Inverter; readonly lines: Lines | undefined },
  cable: TrunkCable,
): number {
  const currentA = outputCurrentA(job, id, inverter)
  const maxDeviceA = makerMaxDeviceA(id, inverter, cable.max_ocpd_a)
  return Math.min(
    inverter.max_per_branch ?? Infinity,
    cable.max_inverters ?? Infinity,
    mostInverters(lines, inverter, currentA, Math.min(maxDeviceA / CONTINUOUS_FACTOR, cable.ampacity_a)),
  )
}

function checkTotals(job: Job, plans: readonly BranchPlan[]): void {
  for (const plan of plans) inverterOf(job, plan)
  for (const arrayId of branchedArrays(job, plans)) {
    const total = countModules(job, arrayId)
    const held = onBranches(plans, arrayId)
    if (held !== total)
      throw new StageError(
        'electrical.branches',
        `the branches hold ${held} modules of array '${arrayId}', which has ${total}`,
        'Put every module on exactly one branch',
      )
  }
}

function branchedArrays(job: Job, plans: readonly BranchPlan[]): string[] {
  return [...new Set([...moduleLevelArrays(job), ...plans.flatMap((plan) => Object.keys(plan.modules))])]
}

const onBranches = (plans: readonly BranchPlan[], arrayId: string): number =>
  plans.reduce((sum, plan) => sum + (own(plan.modules, arrayId) ?? 0), 0)

const invertersOn = (plan: BranchPlan): number => Object.values(plan.modules).reduce((sum, count) => sum + count, 0)

function branchCircuit(job: Job, plan: BranchPlan): Circuit {
  const { inverterId, inverter } = inverterOf(job, plan)
  const inverters = invertersOn(plan)
  const currentA = outputCurrentA(job, inverterId, inverter)
  const { cable } = trunkById(job, plan.trunk ?? job.electrical.trunk, `${plan.where}.trunk`)
  const lines = branchLines(job, plan, inverter)
  const pairCurrentsA = pairsOn(lines, inverters, currentA, inverter)
  const continuousA = highestLineA(pairCurrentsA)
  const smallestDeviceA = nextStandardDeviceA(deviceDutyA(job, CONTINUOUS_FACTOR * continuousA), plan.where)
  const deviceA = Math.max(plan.breaker_a ?? 0, smallestDeviceA)
  return {
    id: plan.id,
    kind: 'ac_branch',
    where: plan.where,
    voltageV: serviceOf(job).lineToLineV,
    continuousA,
    operatingA: twoWireEquivalentA(pairCurrentsA),
    lines,
    pairCurrentsA,
    deviceA,
    groundingDeviceA: deviceA,
    smallestDeviceA,
    maxDeviceA: makerMaxDeviceA(inverterId, inverter, cable.max_ocpd_a),
    makerRisePct: inverter.max_ac_rise_pct,
    inverterId,
    inverter,
    inverters,
    trunk: undefined,
    arrays: plan.modules,
    string: undefined,
  }
}

function trunkOf(job: Job, plan: BranchPlan, gapsFt: readonly Feet[]): Trunk {
  const { id, cable } = trunkById(job, plan.trunk ?? job.electrical.trunk, `${plan.where}.trunk`)
  const feed =
    plan.feed ??
    job.worksheet.assume({
      path: `${plan.where}.feed`,
      value: 'end' as const,
      unit: '',
      why: 'Fed at its end, which has the higher voltage rise',
      source: { document: '', standing: 'common practice, no source' },
    })
  const inverters = invertersOn(plan)
  return { id, cable, feed, inverters, lengthFt: trunkLengthFt(job, plan, { cable, feed, inverters }, gapsFt) }
}

function inverterOf(job: Job, plan: BranchPlan): { inverterId: string; inverter: Inverter } {
  const ids = new Set(
    Object.keys(plan.modules).map((arrayId) => {
      const array = own(job.project.arrays, arrayId)
      if (array?.inverter === undefined)
        throw new StageError(
          `${plan.where}.modules.${arrayId}`,
          array === undefined ? `there is no array '${arrayId}'` : `array '${arrayId}' has no module-level inverter`,
          'Use the id of an array that names its inverter',
        )
      return array.inverter
    }),
  )
  const [inverterId] = ids
  if (inverterId === undefined || ids.size > 1)
    throw new StageError(
      `${plan.where}.modules`,
      'a branch holds one kind of inverter',
      'Give each kind of inverter a branch of its own',
    )
  return { inverterId, inverter: inverterById(job, inverterId, `${plan.where}.modules`) }
}

function trunkById(job: Job, id: string | undefined, where: string): { id: string; cable: TrunkCable } {
  const cables = job.project.equipment.trunk_cables ?? {}
  const known = Object.keys(cables)
  const chosen = id ?? (known.length === 1 ? known[0] : undefined)
  const cable = chosen === undefined ? undefined : own(cables, chosen)
  if (chosen !== undefined && cable !== undefined) return { id: chosen, cable }
  throw new StageError(
    where,
    chosen === undefined ? 'the trunk cable is not stated' : `there is no trunk cable '${chosen}'`,
    `Name one under equipment.trunk_cables (${known.join(', ') || 'none is stated'}); its ampacity stands on its data sheet`,
  )
}

/** Stated, or the longer of the way past the modules and the cable between that many connectors. */
function trunkLengthFt(
  job: Job,
  plan: BranchPlan,
  { cable, feed, inverters }: Pick<Trunk, 'cable' | 'feed' | 'inverters'>,
  gapsFt: readonly Feet[],
): Feet {
  const known = plan.trunk_length_ft ?? own(job.context.arrangement?.trunkLengthFt, plan.id)
  if (known !== undefined) return positive(known, `${plan.where}.trunk_length_ft`, 'the trunk length')
  const passed = passedLengthFt(gapsFt, feed)
  const spacingFt = cable.connector_spacing_ft
  if (spacingFt !== undefined) return Math.max(passed, invertersOnLongerHalf(inverters, feed) * spacingFt)
  if (passed > 0) return passed
  throw new StageError(
    `${plan.where}.trunk_length_ft`,
    'the length of the trunk is not known',
    "State it, or the cable's connector_spacing_ft from its data sheet, or the arrangement of the modules",
  )
}

/** Way from the feed past the modules of a branch, the longer half when fed in the centre; 0 without places. */
function passedLengthFt(gapsFt: readonly Feet[], feed: Trunk['feed']): Feet {
  const sum = (gaps: readonly number[]): number => gaps.reduce((total, gap) => total + gap, 0)
  if (feed === 'end') return sum(gapsFt)
  const half = Math.ceil(gapsFt.length / 2)
  return Math.max(sum(gapsFt.slice(0, half)), sum(gapsFt.slice(half)))
}
