import { requiredLabels } from '../drawings/index.js'
import { wiringOf, type WiringValues } from '../electrical/index.js'
import { priceBom, readPriceList, type BomInput, type BomValues, type PriceList } from '../materials/index.js'
import type { LoadedProject } from '../project/index.js'
import { spaceMounts, type MountValues } from '../structure/index.js'
import type { Result } from '../worksheet/index.js'
import { arrangeModules } from '../roof/index.js'

/** Results that `--use` may have brought. */
export interface EarlierForBill {
  readonly mounts?: Result<MountValues> | undefined
  readonly wiring?: Result<WiringValues> | undefined
}

/** Everything but the prices: runs the stages whose parts the project has. */
export function billInput({ project, documents }: LoadedProject, earlier: EarlierForBill = {}): BomInput {
  const arrangement = arrangeModules(project)
  const { modules, planes } = arrangement.values
  const mounts =
    project.structure === undefined
      ? undefined
      : (earlier.mounts ?? spaceMounts(project, { modules, planes: Object.values(planes) }, { documents }))
  const wiring = project.electrical === undefined ? undefined : (earlier.wiring ?? wiringOf(project))
  const labels = wiring === undefined ? undefined : requiredLabels(project, wiring.values)
  return { project, arrangement, mounts, wiring, labels }
}

/** The bill with the price list that the project names. */
export function billOfMaterials(loaded: LoadedProject, earlier: EarlierForBill = {}): Result<BomValues> {
  return priceBom({ ...billInput(loaded, earlier), prices: projectPrices(loaded) })
}

/** The houses of a fleet mostly share one list. */
let lastList: { readonly name: string; readonly text: string; readonly list: PriceList } | undefined

/**
 * The price list that the project names, undefined when it names none.
 *
 * @throws ProjectError with every problem of the list.
 */
export function projectPrices({ project, files }: LoadedProject): PriceList | undefined {
  const name = project.materials?.price_list
  const text = name === undefined ? undefined : files.get(name)
  if (name === undefined || text === undefined) return undefined
  if (lastList?.name !== name || lastList.text !== text) lastList = { name, text, list: readPriceList(name, text) }
  return lastList.list
}
