import type { AmpacityRow } from './ampacity-row.js'

/**
 * Ampacity, A, of not more than three current-carrying conductors in a raceway, cable or earth; 30 deg C ambient, 0 to 2000 V.
 *
 * @source NEC Table 310.16 (2020, 2023) = Table 310.15(B)(16) (2011 to 2017). Columns: 60, 75 and 90 deg C. Aluminum is also copper-clad aluminum.
 */
export const ampacityRaceway: readonly AmpacityRow[] = [
  { size: '14', copper: [15, 20, 25], aluminum: undefined },
  { size: '12', copper: [20, 25, 30], aluminum: [15, 20, 25] },
  { size: '10', copper: [30, 35, 40], aluminum: [25, 30, 35] },
  { size: '8', copper: [40, 50, 55], aluminum: [35, 40, 45] },
  { size: '6', copper: [55, 65, 75], aluminum: [40, 50, 55] },
  { size: '4', copper: [70, 85, 95], aluminum: [55, 65, 75] },
  { size: '3', copper: [85, 100, 115], aluminum: [65, 75, 85] },
  { size: '2', copper: [95, 115, 130], aluminum: [75, 90, 100] },
  { size: '1', copper: [110, 130, 145], aluminum: [85, 100, 115] },
  { size: '1/0', copper: [125, 150, 170], aluminum: [100, 120, 135] },
  { size: '2/0', copper: [145, 175, 195], aluminum: [115, 135, 150] },
  { size: '3/0', copper: [165, 200, 225], aluminum: [130, 155, 175] },
  { size: '4/0', copper: [195, 230, 260], aluminum: [150, 180, 205] },
  { size: '250 kcmil', copper: [215, 255, 290], aluminum: [170, 205, 230] },
  { size: '300 kcmil', copper: [240, 285, 320], aluminum: [195, 230, 260] },
  { size: '350 kcmil', copper: [260, 310, 350], aluminum: [210, 250, 280] },
  { size: '400 kcmil', copper: [280, 335, 380], aluminum: [225, 270, 305] },
  { size: '500 kcmil', copper: [320, 380, 430], aluminum: [260, 310, 350] },
]
