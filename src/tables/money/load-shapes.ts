import type { Source } from '../../worksheet/index.js'
import { LOAD_SHAPE_ROWS } from './load-shape-data.js'

export type LoadShapeName = keyof typeof LOAD_SHAPE_ROWS

/** One residential load shape. */
export interface LoadShape {
  readonly name: LoadShapeName
  /** Share of the year's kWh in each month, January first. */
  readonly monthShares: readonly number[]
  /** 24 rows: month by month a weekday and a weekend row of 24 clock hours; relative weights within the month. */
  readonly rows: readonly (readonly number[])[]
  /** Whether the source tells weekdays from weekends. */
  readonly weekendsDiffer: boolean
  /** kWh per home and year of the source, where it is known. */
  readonly annualKwh: number | undefined
  readonly source: Source
}

const shape = (
  name: LoadShapeName,
  monthShares: readonly number[],
  annualKwh: number | undefined,
  weekendsDiffer: boolean,
  document: string,
  place: string,
): LoadShape => ({
  name,
  monthShares,
  rows: LOAD_SHAPE_ROWS[name],
  weekendsDiffer,
  annualKwh,
  source: { document, place, standing: 'read' },
})

/** The built-in load shapes by name. No hot-humid and no heat-pump profile is among them. */
export const LOAD_SHAPES: Readonly<Record<LoadShapeName, LoadShape>> = {
  'cold-fuelheat-MI': shape(
    'cold-fuelheat-MI',
    [0.08674, 0.07309, 0.07492, 0.06452, 0.07011, 0.08645, 0.12596, 0.11224, 0.08126, 0.06564, 0.07473, 0.08433],
    undefined,
    true,
    'Michigan rate-case exhibit: measured residential class load of an investor-owned utility',
    '2018-2019, hourly, EST; no fuel split (mostly gas heat: assumption)',
  ),
  'cold-fuelheat-CT': shape(
    'cold-fuelheat-CT',
    [0.0862, 0.07371, 0.07736, 0.07053, 0.07839, 0.08382, 0.10992, 0.10929, 0.08422, 0.07335, 0.07199, 0.08122],
    undefined,
    true,
    'US DOE end-use load profiles (ResStock 2024 release 2, AMY2018), baseline',
    'Connecticut, homes heated with natural gas, mirrored file',
  ),
  'cold-electricheat-CT': shape(
    'cold-electricheat-CT',
    [0.19134, 0.11974, 0.11783, 0.08189, 0.0411, 0.03633, 0.04274, 0.0425, 0.03741, 0.05662, 0.10099, 0.13151],
    undefined,
    true,
    'US DOE end-use load profiles (ResStock 2024 release 2, AMY2018), baseline',
    'Connecticut, homes heated with electricity, mirrored file',
  ),
  'cold-coast-fuelheat-MA': shape(
    'cold-coast-fuelheat-MA',
    [0.10645, 0.0915, 0.09034, 0.0805, 0.0741, 0.06672, 0.07868, 0.07256, 0.0701, 0.08105, 0.08726, 0.10074],
    9011,
    false,
    'DOE/OpenEI residential hourly load profiles for TMY3 locations, BASE house, gas heat',
    'Boston Logan 725090, mirrored file',
  ),
  'mixed-humid-fuelheat-MO': shape(
    'mixed-humid-fuelheat-MO',
    [0.09498, 0.0822, 0.08015, 0.07176, 0.06687, 0.08578, 0.10674, 0.0939, 0.07873, 0.07269, 0.0778, 0.0884],
    12975,
    false,
    'DOE/OpenEI residential hourly load profiles for TMY3 locations, BASE house, gas heat',
    'St. Louis Lambert 724340, mirrored file',
  ),
  'warm-coast-CA': shape(
    'warm-coast-CA',
    [0.08675, 0.076, 0.07649, 0.07116, 0.07095, 0.07501, 0.09518, 0.09287, 0.1023, 0.09137, 0.07634, 0.08558],
    8328,
    false,
    'DOE/OpenEI residential hourly load profiles for TMY3 locations, BASE house, gas heat',
    'Long Beach Daugherty Field 722970, mirrored file',
  ),
  'inland-semiarid-CA': shape(
    'inland-semiarid-CA',
    [0.08794, 0.07613, 0.07533, 0.0719, 0.076, 0.08065, 0.09422, 0.10496, 0.08845, 0.07689, 0.07511, 0.09243],
    8343,
    true,
    'Green Button SDK sample, Inland Single-Family (EnergyOS.org, Apache-2.0)',
    'January 2011 to January 2012; measured or synthetic is not stated',
  ),
  'hot-dry-desert-CA': shape(
    'hot-dry-desert-CA',
    [0.09417, 0.07313, 0.0667, 0.06192, 0.07722, 0.0882, 0.12714, 0.11884, 0.08102, 0.0599, 0.06419, 0.08757],
    12397,
    true,
    'Green Button SDK sample, Desert Single-Family (EnergyOS.org, Apache-2.0)',
    'January 2011 to January 2012; measured or synthetic is not stated',
  ),
}
