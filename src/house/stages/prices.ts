import { readPriceList, type PriceList } from '../../materials/index.js'
import type { HouseInput } from '../house-input.js'

/** The houses of a fleet mostly share one list. */
let lastList: { readonly name: string; readonly text: string; readonly list: PriceList } | undefined

/**
 * The price list that the project names, undefined when it names none.
 *
 * @throws ProjectError with every problem of the list.
 */
export function projectPrices({ project, files }: HouseInput): PriceList | undefined {
  const name = project.materials?.price_list
  const text = name === undefined ? undefined : files?.get(name)
  if (name === undefined || text === undefined) return undefined
  if (lastList?.name !== name || lastList.text !== text) lastList = { name, text, list: readPriceList(name, text) }
  return lastList.list
}
