import type { BomInput, BomValues } from '../materials/index.js'
import { StageError, type Result } from '../worksheet/index.js'
import { totalOf } from './bill-total.js'
import type { House } from './house.js'
import type { HouseInput, HouseOptions } from './house-input.js'
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
  const { earlier = {}, wishes = {} } = options
  const { project, files = NO_FILES } = input

  const roof = once(async () => (await import('../roof/index.js')).arrangeModules(project))
  // Those that take the estimate ask for it after their own checks, so that these are told first.
  const estimator = once(async () => {
    const runYield = options.runYield ?? (await import('../yield/index.js')).runYield
    return once(() => runYield(project, files))
  })
  const estimate = once(async () => (await estimator())())
  const energy = once(async () => earlier.yield ?? (await estimate()).result)
  const wire = once(async () => {
    if (earlier.wire !== undefined && wishes.edition === undefined) return earlier.wire
    return (await import('../electrical/index.js')).wiringOf(project, wishes.edition)
  })
  const earlierMounts = wishes.mounts === undefined ? earlier.mounts : undefined
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
  const prices = once(async () => (await import('./stages/prices.js')).projectPrices(input))
  const takeOff = once(async (): Promise<BomInput> => ({
    project,
    arrangement: await roof(),
    mounts: project.structure === undefined ? undefined : await mounts(),
    wire: project.electrical === undefined ? undefined : await wire(),
    labels: project.electrical === undefined ? undefined : await labels(),
  }))
  const bom = once(async () => {
    if (earlier.bom !== undefined) return earlier.bom
    const list = await prices()
    const { priceBom } = await import('../materials/index.js')
    return priceBom({ ...(await takeOff()), prices: list })
  })
  const bill = once(async () => (await import('./stages/payback.js')).utilityBills(input, await estimator()))
  const payback = once(async () => {
    const { paybackAt } = await import('./stages/payback.js')
    const { installedCostUsd } = wishes
    const priced = earlier.bom ?? (wishes.payTheBom === true ? await pricedBom(bom) : undefined)
    return paybackAt(input, await estimator(), { installedCostUsd, bom: priced })
  })
  const size = once(async () => {
    const { sizesOfProject } = await import('../money/index.js')
    return sizesOfProject(project, files, { ...wishes.size, estimate: await estimator() })
  })
  const permit = once(async () => (await import('./stages/packet.js')).permitGaps(project, await roof()))
  const packet: House['packet'] = async (packetWishes) => {
    const { packetFrom } = await import('./stages/packet.js')
    const needs = { arrangement: await roof(), mounts: await orReason(ownMounts), wire: await orReason(wire) }
    return packetFrom(project, needs, packetWishes)
  }
  const work = once(async () => {
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
  })
  const output: House['output'] = async (measured) => {
    const { reviewOf } = await import('./stages/review.js')
    return reviewOf(input, await estimate(), measured)
  }

  return {
    roof,
    estimate,
    yield: energy,
    wire,
    ownMounts,
    mounts,
    labels,
    prices,
    takeOff,
    bom,
    bill,
    payback,
    size,
    permit,
    packet,
    work,
    output,
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
