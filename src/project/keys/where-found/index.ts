import { ELECTRICAL_WHERE } from './electrical.js'
import { EQUIPMENT_WHERE } from './equipment.js'
import { HOUSE_WHERE } from './house.js'
import { MONEY_WHERE } from './money.js'
import type { WherePairs } from './pattern.js'
import { PAPERS_WHERE } from './papers.js'
import { STORAGE_WIRING_WHERE } from './storage-wiring.js'
import { STRUCTURE_WHERE } from './structure.js'

/** Where a person finds the value of a key: on a house, a label, a sheet, a bill or at an office. Common knowledge of the trade. */
export const WHERE_FOUND: WherePairs = [
  ...HOUSE_WHERE,
  ...EQUIPMENT_WHERE,
  ...ELECTRICAL_WHERE,
  ...STORAGE_WIRING_WHERE,
  ...STRUCTURE_WHERE,
  ...MONEY_WHERE,
  ...PAPERS_WHERE,
]
