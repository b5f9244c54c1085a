import type { ConductorSize } from './conductor-sizes.js'

/** Cross-section over the insulation, in2, and diameter, in. */
export interface ConductorAreaRow {
  readonly size: ConductorSize
  readonly thwn2AreaIn2: number
  readonly thwn2DiameterIn: number
  readonly xhhw2AreaIn2: number
  readonly xhhw2DiameterIn: number
}

/**
 * Insulated conductors THHN, THWN-2 and XHHW-2.
 *
 * @source NEC Chapter 9 Table 5.
 */
export const conductorAreas: readonly ConductorAreaRow[] = [
  { size: '14', thwn2AreaIn2: 0.0097, thwn2DiameterIn: 0.111, xhhw2AreaIn2: 0.0139, xhhw2DiameterIn: 0.133 },
  { size: '12', thwn2AreaIn2: 0.0133, thwn2DiameterIn: 0.13, xhhw2AreaIn2: 0.0181, xhhw2DiameterIn: 0.152 },
  { size: '10', thwn2AreaIn2: 0.0211, thwn2DiameterIn: 0.164, xhhw2AreaIn2: 0.0243, xhhw2DiameterIn: 0.176 },
  { size: '8', thwn2AreaIn2: 0.0366, thwn2DiameterIn: 0.216, xhhw2AreaIn2: 0.0437, xhhw2DiameterIn: 0.236 },
  { size: '6', thwn2AreaIn2: 0.0507, thwn2DiameterIn: 0.254, xhhw2AreaIn2: 0.059, xhhw2DiameterIn: 0.274 },
  { size: '4', thwn2AreaIn2: 0.0824, thwn2DiameterIn: 0.324, xhhw2AreaIn2: 0.0814, xhhw2DiameterIn: 0.322 },
  { size: '3', thwn2AreaIn2: 0.0973, thwn2DiameterIn: 0.352, xhhw2AreaIn2: 0.0962, xhhw2DiameterIn: 0.35 },
  { size: '2', thwn2AreaIn2: 0.1158, thwn2DiameterIn: 0.384, xhhw2AreaIn2: 0.1146, xhhw2DiameterIn: 0.382 },
  { size: '1', thwn2AreaIn2: 0.1562, thwn2DiameterIn: 0.446, xhhw2AreaIn2: 0.1534, xhhw2DiameterIn: 0.442 },
  { size: '1/0', thwn2AreaIn2: 0.1855, thwn2DiameterIn: 0.486, xhhw2AreaIn2: 0.1825, xhhw2DiameterIn: 0.482 },
  { size: '2/0', thwn2AreaIn2: 0.2223, thwn2DiameterIn: 0.532, xhhw2AreaIn2: 0.219, xhhw2DiameterIn: 0.528 },
  { size: '3/0', thwn2AreaIn2: 0.2679, thwn2DiameterIn: 0.584, xhhw2AreaIn2: 0.2642, xhhw2DiameterIn: 0.58 },
  { size: '4/0', thwn2AreaIn2: 0.3237, thwn2DiameterIn: 0.642, xhhw2AreaIn2: 0.3197, xhhw2DiameterIn: 0.638 },
  { size: '250 kcmil', thwn2AreaIn2: 0.397, thwn2DiameterIn: 0.711, xhhw2AreaIn2: 0.3904, xhhw2DiameterIn: 0.705 },
  { size: '300 kcmil', thwn2AreaIn2: 0.4608, thwn2DiameterIn: 0.766, xhhw2AreaIn2: 0.4536, xhhw2DiameterIn: 0.76 },
  { size: '350 kcmil', thwn2AreaIn2: 0.5242, thwn2DiameterIn: 0.817, xhhw2AreaIn2: 0.5166, xhhw2DiameterIn: 0.811 },
  { size: '400 kcmil', thwn2AreaIn2: 0.5863, thwn2DiameterIn: 0.864, xhhw2AreaIn2: 0.5782, xhhw2DiameterIn: 0.858 },
  { size: '500 kcmil', thwn2AreaIn2: 0.7073, thwn2DiameterIn: 0.949, xhhw2AreaIn2: 0.6984, xhhw2DiameterIn: 0.943 },
]

/**
 * USE-2 that is also RHW-2, without outer covering: cross-section, in2.
 *
 * @source NEC Chapter 9 Table 5 (8 to 4 AWG read in NEC 2017, 14 to 10 AWG from a general electrical library).
 */
export const use2Areas: readonly { readonly size: ConductorSize; readonly areaIn2: number }[] = [
  { size: '14', areaIn2: 0.0209 },
  { size: '12', areaIn2: 0.026 },
  { size: '10', areaIn2: 0.0333 },
  { size: '8', areaIn2: 0.0556 },
  { size: '6', areaIn2: 0.0726 },
  { size: '4', areaIn2: 0.0973 },
]
