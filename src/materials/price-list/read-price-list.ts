import { readCheckedYaml } from '../../project/index.js'
import { checkPrices } from './check-prices.js'
import { priceListSchema } from './price-list-schema.generated.js'
import type { PriceList } from './price-list-types.generated.js'
import { readPriceTable } from './read-price-table.js'
import { validate } from './price-list-validator.generated.js'

/**
 * Reads a price list and checks it.
 *
 * @param file Name of the file, for the messages.
 * @param text Its content: YAML of the shape of schemas/price-list.schema.json, or a table when the name ends in .csv.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readPriceList(file: string, text: string): PriceList {
  if (/\.csv$/iu.test(file)) return readPriceTable(file, text)
  return readCheckedYaml<PriceList>(file, text, { schema: priceListSchema, validate, check: checkPrices }).data
}
