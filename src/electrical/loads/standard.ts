import { LARGEST_MOTOR_SHARE, LEAST_DRYER_VA, ONE_RANGE, STANDARD_LIGHTING } from '../../tables/nec/index.js'
import { applianceLoads, type ApplianceLoad } from './appliance-load.js'
import { climateLoad, heatingVa, type ClimateLoad } from './climate-load.js'
import { generalLoadVa, recordSum } from './general-load.js'
import { demandVa, tellNoAppliances } from './list-demand.js'
import { recordLoad, refuse, WHERE, type LoadJob } from './load-job.js'
import type { MethodLoad } from './method-load.js'
import type { Rating } from './nameplate.js'

/**
 * Standard method. Lighting and circuits in part; one range of at most 12 kW by its table; all else at its nameplate, though the code
 * lets less do for further cooking appliances, for four appliances and more and for dryers.
 *
 * @returns undefined where the shares of the edition are not known.
 * @source NEC 220.42, 220.50, 220.51, 220.54, 220.55, 220.60
 */
export function standardLoad(load: LoadJob): MethodLoad | undefined {
  const { factors, section } = load
  if (!factors.standardKnown)
    return refuse(load, {
      severity: 'error',
      id: 'wire.load-method',
      where: `${WHERE}.method`,
      message: `the shares of the standard method in ${factors.edition} are not known, so it gives no load`,
      fix: 'Use optional_new or measured, or have the load calculated by the authority’s own form',
      source: section('.42'),
    })
  const lighting = recordLighting(
    load,
    generalLoadVa(load, { lighting: section('.42', 'secondary'), circuits: section('.52', 'from memory') }),
  )
  tellNoAppliances(load, '.53')
  const all = applianceLoads(load)
  const appliances = recordSum(
    load,
    'appliances',
    'Appliances: one range by its table, all else at the nameplate',
    all.map((one) => standardRating(one, all)),
    '.53',
  )
  const climate = climateLoad(load, '.60')
  const motorVa = largestMotorVa(all, climate)
  const va = recordLoad(load, {
    id: 'total',
    says: 'Load of the dwelling: lighting and circuits, appliances, the larger of cooling and heating, and a share of the largest motor',
    formula: 'D + P + max(A, H) + q * M',
    inputs: [
      ['D', lighting, 'VA', 'wire.load.demand'],
      ['P', appliances, 'VA', all.length === 0 ? 'no appliances' : 'wire.load.appliances'],
      ['A', climate.coolingVa, 'VA', 'air conditioning'],
      ['H', heatingVa(climate), 'VA', 'all heating'],
      ['q', LARGEST_MOTOR_SHARE, '', 'what the largest motor adds'],
      ['M', motorVa, 'VA', 'the largest motor or compressor stated'],
    ],
    symbol: 'S',
    va: lighting + appliances + Math.max(climate.coolingVa, heatingVa(climate)) + LARGEST_MOTOR_SHARE * motorVa,
    source: section('.40', 'from memory'),
    limits: 'Shares of Table 220.55 for other ranges, of 220.53 and 220.54 are not used, which is on the safe side',
  })
  return { va, source: section('.40', 'from memory') }
}

function recordLighting(load: LoadJob, generalVa: number): number {
  const { firstVa, restShare } = STANDARD_LIGHTING
  return recordLoad(load, {
    id: 'demand',
    says: 'Lighting and circuits: the first part whole, a share of the rest',
    formula: 'min(G, F) + r * max(0, G - F)',
    inputs: [
      ['G', generalVa, 'VA', 'wire.load.lighting and wire.load.circuits'],
      ['F', firstVa, 'VA', 'Table 220.42'],
      ['r', restShare, '', 'Table 220.42'],
    ],
    symbol: 'D',
    va: demandVa(generalVa, firstVa, restShare),
    source: load.section('.42', 'secondary'),
    limits: 'Beyond 120,000 VA the code counts a smaller share',
  })
}

/** What the standard method counts of one appliance. */
function standardRating(one: ApplianceLoad, all: readonly ApplianceLoad[]): Rating {
  const cooking = all.filter(({ kind }) => kind === 'range' || kind === 'oven')
  if (one.kind === 'range' && cooking.length === 1 && one.va <= ONE_RANGE.upToVa && one.va > ONE_RANGE.demandVa)
    return { va: ONE_RANGE.demandVa, from: `${one.from}: ${one.va} VA, Table 220.55` }
  if (one.kind === 'dryer' && one.va < LEAST_DRYER_VA)
    return { va: LEAST_DRYER_VA, from: `${one.from}, not less than ${LEAST_DRYER_VA} VA (220.54)` }
  return one
}

/** The largest motor that is stated, VA; that of cooling too where heating is the larger, which is on the safe side. */
const largestMotorVa = (all: readonly ApplianceLoad[], climate: ClimateLoad): number =>
  Math.max(
    climate.largestCoolingVa,
    climate.largestHeatPumpVa,
    ...all.filter(({ kind }) => kind === 'motor').map(({ va }) => va),
  )
