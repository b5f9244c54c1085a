import type { AmpacityRow } from './ampacity-row.js'

/**
 * Ampacity, A, of single insulated conductors in free air; 30 deg C ambient, 0 to 2000 V.
 *
 * @source NEC Table 310.17 (2020, 2023) = Table 310.15(B)(17) (2011 to 2017). Columns: 60, 75 and 90 deg C. Aluminum is also copper-clad aluminum.
 * @limits The 90 deg C aluminum cells differ between copies of the table; they are the least certain here.
 */
export const ampacityFreeAir: readonly AmpacityRow[] = [
  { size: '14', copper: [25, 30, 35], aluminum: undefined },
  { size: '12', copper: [30, 35, 40], aluminum: [25, 30, 35] },
  { size: '10', copper: [40, 50, 55], aluminum: [35, 40, 45] },
  { size: '8', copper: [60, 70, 80], aluminum: [45, 55, 60] },
  { size: '6', copper: [80, 95, 105], aluminum: [60, 75, 85] },
  { size: '4', copper: [105, 125, 140], aluminum: [80, 100, 115] },
  { size: '3', copper: [120, 145, 165], aluminum: [95, 115, 130] },
  { size: '2', copper: [140, 170, 190], aluminum: [110, 135, 150] },
  { size: '1', copper: [165, 195, 220], aluminum: [130, 155, 175] },
  { size: '1/0', copper: [195, 230, 260], aluminum: [150, 180, 205] },
  { size: '2/0', copper: [225, 265, 300], aluminum: [175, 210, 235] },
  { size: '3/0', copper: [260, 310, 350], aluminum: [200, 240, 270] },
  { size: '4/0', copper: [300, 360, 405], aluminum: [235, 280, 315] },
  { size: '250 kcmil', copper: [340, 405, 455], aluminum: [265, 315, 355] },
  { size: '300 kcmil', copper: [375, 445, 500], aluminum: [290, 350, 395] },
  { size: '350 kcmil', copper: [420, 505, 570], aluminum: [330, 395, 445] },
  { size: '400 kcmil', copper: [455, 545, 615], aluminum: [355, 425, 480] },
  { size: '500 kcmil', copper: [515, 620, 700], aluminum: [405, 485, 545] },
]
