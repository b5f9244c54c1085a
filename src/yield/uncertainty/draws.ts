import { normalQuantiles, RandomSource } from '../../values/index.js'
import { lifeOutput, meanOutput, outputOfYear } from '../degradation.js'
import { YEARLY_TERM, type Term, type UncertaintyBasis } from './terms.js'

/** How often the year is drawn. With so many the 90 % figure keeps within 0.5 % from seed to seed (tests). */
export const DRAWS = 4000
/** Years of the long mean. */
export const MEAN_YEARS = 10
const SEED = 20_260_101

/** Energies of every draw, each column sorted upwards, kWh. */
export interface Draws {
  readonly firstYear: Float64Array
  readonly anyYear: Float64Array
  readonly tenYearMean: Float64Array
  readonly life: Float64Array
}

/**
 * Draws how the energy of the system may come out: every lasting cause once a draw, for all arrays together or for each; the
 * weather of single years; the loss with age. Each cause is drawn evenly over its distribution (stratified), in an order
 * of its own. A loss that is doubted cannot turn into a gain.
 *
 * @param degradationSpread Standard deviation of the loss per year of age, as a share.
 */
export function drawEnergies(
  basis: UncertaintyBasis,
  terms: readonly Term[],
  degradationSpread: number,
  seed = SEED,
): Draws {
  const lasting = terms.filter(({ name }) => name !== YEARLY_TERM)
  const yearly = terms.find(({ name }) => name === YEARLY_TERM)?.relative[0] ?? 0
  const energy = lastingEnergy(basis, lasting, seed)
  const order = orders(seed + 7919)
  const ages = order()
  const years = basis.life.years
  const [weather, weatherOfTen, weatherOfLife, ageing] = [order(), order(), order(), order()]
  const normal = normalQuantiles(DRAWS)
  const column = (): Float64Array => new Float64Array(DRAWS)
  const draws = { firstYear: column(), anyYear: column(), tenYearMean: column(), life: column() }
  const rate = basis.ageing.pctPerYear / 100
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const kwh = energy[draw]!
    const loss = Math.max(0, rate + degradationSpread * normal[ageing[draw]!]!)
    const age = 1 + Math.floor((ages[draw]! / DRAWS) * years)
    const of = (place: number, over: number): number => Math.max(0, 1 + (yearly / Math.sqrt(over)) * normal[place]!)
    draws.firstYear[draw] = kwh * of(weather[draw]!, 1)
    draws.anyYear[draw] = kwh * outputOfYear(loss, age) * of(weather[draw]!, 1)
    draws.tenYearMean[draw] = kwh * meanOutput(loss, MEAN_YEARS) * of(weatherOfTen[draw]!, MEAN_YEARS)
    draws.life[draw] = kwh * lifeOutput(loss, years) * of(weatherOfLife[draw]!, years)
  }
  for (const each of Object.values(draws)) each.sort()
  return draws
}

/** Energy of a year of mean weather, by draw. */
function lastingEnergy({ arrays }: UncertaintyBasis, terms: readonly Term[], seed: number): Float64Array {
  const normal = normalQuantiles(DRAWS)
  const order = orders(seed)
  const sum = new Float64Array(DRAWS)
  const shared = terms.filter(({ isShared }) => isShared).map((term) => ({ term, order: order() }))
  arrays.forEach((array, number) => {
    const own = terms.filter(({ isShared }) => !isShared).map((term) => ({ term, order: order() }))
    const factor = new Float64Array(DRAWS).fill(array.kwh)
    for (const { term, order: places } of [...shared, ...own]) {
      const relative = term.relative[number] ?? 0
      const loss = term.loss?.[number]
      if (relative === 0) continue
      for (let draw = 0; draw < DRAWS; draw += 1) {
        const by = relative * normal[places[draw]!]!
        const share = loss === undefined ? 1 + by : (1 - Math.min(1, Math.max(0, loss - by))) / (1 - loss)
        factor[draw] = factor[draw]! * Math.max(0, share)
      }
    }
    for (let draw = 0; draw < DRAWS; draw += 1) sum[draw] = sum[draw]! + factor[draw]!
  })
  return sum
}

/** Orders in which causes are drawn, each another shuffle of 0 to DRAWS - 1. */
function orders(seed: number): () => Uint16Array {
  const random = new RandomSource(seed)
  return () => {
    const order = Uint16Array.from({ length: DRAWS }, (_, index) => index)
    for (let last = DRAWS - 1; last > 0; last -= 1) {
      const other = Math.floor(random.uniform() * (last + 1))
      const kept = order[last]!
      order[last] = order[other]!
      order[other] = kept
    }
    return order
  }
}
