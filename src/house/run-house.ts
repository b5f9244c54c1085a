import type { BomInput, BomValues } from '../materials/index.js'
import { sortFindings, StageError, type Result } from '../worksheet/index.js'
import type { YieldRun } from '../yield/index.js'
import { totalOf } from './bill-total.js'
import type { House } from './house.js'
import type { HouseInput, HouseOptions } from './house-input.js'
import { tellingMadeUp } from './made-up.js'
import { once } from './once.js'

const NO_FILES: ReadonlyMap<string, string> = new Map()

/**
 * The stages of a house, strung together in one place: what one needs of another it takes from here.
 *
 * @param input What `loadProject` gives, or a project alone.
 * @param options Earlier results stand in for their stages; wishes win over the project.
 * @returns Stages that wait to be asked for; nothing is worked out before.
 */
export function runHouse(input: HouseInput, options: HouseOptions = {}): House {
  const { estimator, ...energy } = energyStages(input, options)
  const design = designStages(input, options)
  const bill = billStages(input, options, design)
  const house: House = {
    ...energy,
    ...design,
    ...bill,
    ...moneyStages(input, options, estimator, bill.bom),
    ...paperStages(input, options, energy.estimate, design),
    output: async (measured) => {
      const { reviewOf } = await import('./stages/review.js')
      return reviewOf(input, await energy.estimate(), measured)
    },
  }
  return tellingMadeUp(house, input)
}

/** Those that take the estimate ask for it after their own checks, so that these are told first. */
type Estimator = () => Promise<() => YieldRun>

function energyStages(
  { project, files = NO_FILES }: HouseInput,
  options: HouseOptions,
): Pick<House, 'estimate' | 'yield'> & { readonly estimator: Estimator } {
  const estimator = once(async () => {
    const runYield = options.runYield ?? (await import('../yield/index.js')).runYield
    return once(() => runYield(project, files))
  })
  const estimate = once(async () => (await estimator())())
  return {
    estimator,
    estimate,
    yield: once(async () => options.earlier?.yield ?? (await estimate()).result),
  }
}

type Design = Pick<House, 'roof' | 'wire' | 'ownMounts' | 'mounts' | 'layouts' | 'labels'>

/** What is built: modules on the roof, what holds them, and their wiring with its labels. */
function designStages(input: HouseInput, { earlier = {}, wishes = {} }: HouseOptions): Design {
  const { project } = input
  const roof = once(async () => {
    const { arrangeModules, withRank } = await import('../roof/index.js')
    return arrangeModules(wishes.rank === undefined ? project : withRank(project, wishes.rank))
  })
  const wire = once(async () => {
    if (earlier.wire !== undefined && wishes.edition === undefined) return earlier.wire
    return (await import('../electrical/index.js')).wiringOf(project, wishes.edition)
  })
  const earlierMounts = wishes.mounts === undefined && wishes.rank === undefined ? earlier.mounts : undefined
  const ownMounts = once(async () => {
    if (earlierMounts !== undefined) return earlierMounts
    const { values } = await roof()
    return (await import('./stages/mounts.js')).mountsUnder(input, values, wishes.mounts)
  })
  const mounts = once(async () => {
    if (earlierMounts !== undefined) return earlierMounts
    return (await import('./stages/mounts.js')).withArrangement(await roof(), await ownMounts())
  })
  const labels = once(async () => {
    const { values } = await wire()
    return (await import('../drawings/index.js')).requiredLabels(project, values)
  })
  const layouts = once(async () => {
    const { layoutsOf } = await import('./stages/layouts.js')
    const { projectPrices } = await import('./stages/prices.js')
    return layoutsOf(input, await roof(), await ownMounts(), { ...wishes, prices: projectPrices(input) })
  })
  return { roof, wire, ownMounts, mounts, layouts, labels }
}

/** What is bought for the design. */
function billStages(
  input: HouseInput,
  { earlier = {} }: HouseOptions,
  design: Design,
): Pick<House, 'prices' | 'takeOff' | 'bom'> {
  const { project } = input
  const prices = once(async () => (await import('./stages/prices.js')).projectPrices(input))
  const takeOff = once(async (): Promise<BomInput> => ({
    project,
    arrangement: await design.roof(),
    mounts: project.structure === undefined ? undefined : await design.mounts(),
    wire: project.electrical === undefined ? undefined : await design.wire(),
    labels: project.electrical === undefined ? undefined : await design.labels(),
  }))
  const bom = once(async () => {
    if (earlier.bom !== undefined) return earlier.bom
    const list = await prices()
    const { priceBom } = await import('../materials/index.js')
    return priceBom({ ...(await takeOff()), prices: list })
  })
  return { prices, takeOff, bom }
}

/** What the system saves, and how large it is best. */
function moneyStages(
  input: HouseInput,
  { earlier = {}, wishes = {} }: HouseOptions,
  estimator: Estimator,
  bom: House['bom'],
): Pick<House, 'bill' | 'payback' | 'size'> {
  const { project, files = NO_FILES } = input
  return {
    bill: once(async () => (await import('./stages/payback.js')).utilityBills(input, await estimator())),
    payback: once(async () => {
      const { paybackAt } = await import('./stages/payback.js')
      const { installedCostUsd, cashBand, optimum, briefPayback: brief } = wishes
      const priced = earlier.bom ?? (wishes.payTheBom === true ? await pricedBom(bom) : undefined)
      return paybackAt(input, await estimator(), { installedCostUsd, bom: priced, cashBand, optimum, brief })
    }),
    size: once(async () => {
      const { sizesOfProject } = await import('../money/index.js')
      const { listPriceOf } = await import('./stages/list-price.js')
      const listPrice = await listPriceOf(project, wishes.size, bom)
      const priced = listPrice === undefined ? {} : { listPrice }
      const sizes = sizesOfProject(project, files, { ...wishes.size, ...priced, estimate: await estimator() })
      if (project.electrical === undefined) return sizes
      const { editionStanding } = await import('../electrical/index.js')
      const standing = editionStanding(project.codes?.electrical)
      return { ...sizes, findings: sortFindings([...sizes.findings, ...standing]) }
    }),
  }
}

/** What goes to the building department and to those on the roof; a stage that cannot run leaves a gap there. */
function paperStages(
  input: HouseInput,
  { wishes = {} }: HouseOptions,
  estimate: House['estimate'],
  { roof, wire, ownMounts, labels }: Design,
): Pick<House, 'permit' | 'packet' | 'audit' | 'work'> {
  const { project } = input
  const packet: House['packet'] = async (packetWishes) => {
    const { packetFrom } = await import('./stages/packet.js')
    const needs = {
      arrangement: await roof(),
      mounts: await orReason(ownMounts),
      wire: await orReason(wire),
    }
    return packetFrom(input, needs, packetWishes)
  }
  return {
    permit: once(async () => (await import('./stages/packet.js')).permitGaps(project, await roof())),
    packet,
    audit: async (packetWishes) => {
      const { auditOf } = await import('./stages/audit.js')
      return auditOf(await packet(packetWishes))
    },
    work: once(async () => {
      const { workPlanFrom } = await import('./stages/work-plan.js')
      const run = await estimate()
      const wiring = await orReason(wire)
      return workPlanFrom(project, {
        run,
        mounts: await orReason(ownMounts),
        wire: wiring,
        labels: wiring instanceof StageError ? undefined : await labels(),
        cellC: wishes.cellC,
      })
    }),
  }
}

/** A stage, or why it cannot run. */
async function orReason<Values>(stage: () => Promise<Result<Values>>): Promise<Result<Values> | StageError> {
  try {
    return await stage()
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
}

/** A bill that cannot be made, or that lacks prices, has no total that a payback could stand on. */
async function pricedBom(bom: House['bom']): Promise<Result<BomValues> | undefined> {
  const result = await orReason(bom)
  return result instanceof StageError || totalOf(result) === null ? undefined : result
}
