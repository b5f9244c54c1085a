import { readCheckedYaml } from '../../project/index.js'
import { checkPrices } from './check-prices.js'
import { priceListSchema } from './price-list-schema.generated.js'
import type { PriceList } from './price-list-types.generated.js'
import { validate } from './price-list-validator.generated.js'

/**
 * Reads a price list and checks it.
 *
 * @param file Name of the file, for the messages.
 * @param text Its content: YAML of the shape of schemas/price-list.schema.json.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readPriceList(file: string, text: string): PriceList {
  return readCheckedYaml<PriceList>(file, text, { schema: priceListSchema, validate, check: checkPrices }).data
}
