import { lifeOutput, meanOutput, outputOfYear } from '../degradation.js'
import { courses, DRAWS, normals, wholes, type Course } from './lattice.js'
import { YEARLY_TERM, type Term, type UncertaintyBasis } from './terms.js'

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
 * of its own that no other cause changes. A loss that is doubted cannot turn into a gain.
 *
 * @param terms In an order that is the same for every system; those without effect keep their place.
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
  const years = basis.life.years
  const course = courses(seed)
  const ages = wholes(course(), years)
  const ageing = normals(course())
  const [weather, weatherOfTen, weatherOfLife] = [normals(course()), normals(course()), normals(course())]
  const energy = lastingEnergy(basis, lasting, course)
  const column = (): Float64Array => new Float64Array(DRAWS)
  const draws = { firstYear: column(), anyYear: column(), tenYearMean: column(), life: column() }
  const rate = basis.ageing.pctPerYear / 100
  const [ofTen, ofLife] = [yearly / Math.sqrt(MEAN_YEARS), yearly / Math.sqrt(years)]
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const kwh = energy[draw]!
    const loss = Math.max(0, rate + degradationSpread * ageing[draw]!)
    const year = Math.max(0, 1 + yearly * weather[draw]!)
    draws.firstYear[draw] = kwh * year
    draws.anyYear[draw] = kwh * outputOfYear(loss, ages[draw]!) * year
    draws.tenYearMean[draw] = kwh * meanOutput(loss, MEAN_YEARS) * Math.max(0, 1 + ofTen * weatherOfTen[draw]!)
    draws.life[draw] = kwh * lifeOutput(loss, years) * Math.max(0, 1 + ofLife * weatherOfLife[draw]!)
  }
  for (const each of Object.values(draws)) each.sort()
  return draws
}

/** Energy of a year of mean weather, by draw. */
function lastingEnergy({ arrays }: UncertaintyBasis, terms: readonly Term[], course: () => Course): Float64Array {
  const sum = new Float64Array(DRAWS)
  const shared = terms.filter(({ isShared }) => isShared).map((term) => ({ term, deviates: lazyNormals(course()) }))
  arrays.forEach((array, number) => {
    const own = terms.filter(({ isShared }) => !isShared).map((term) => ({ term, deviates: lazyNormals(course()) }))
    const energy = new Float64Array(DRAWS).fill(array.kwh)
    for (const { term, deviates } of [...shared, ...own]) {
      const relative = term.relative[number] ?? 0
      if (relative === 0) continue
      const most = term.most?.[number] ?? Infinity
      const z = deviates()
      for (let draw = 0; draw < DRAWS; draw += 1) {
        energy[draw] = energy[draw]! * Math.min(most, Math.max(0, 1 + relative * z[draw]!))
      }
    }
    for (let draw = 0; draw < DRAWS; draw += 1) sum[draw] = sum[draw]! + energy[draw]!
  })
  return sum
}

/** Deviates that are worked out when the first array asks for them: many terms have no effect. */
function lazyNormals(course: Course): () => Float64Array {
  let deviates: Float64Array | undefined
  return () => (deviates ??= normals(course))
}
