import { normalQuantile, sortReals } from '../../values/index.js'
import { engine, type Engine } from '../kernel/index.js'
import { courses, DRAWS, type Course } from './lattice.js'
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
  const machine = engine()
  const mark = machine.mark()
  const parts = storeParts(machine)
  // Of the age, the loss with age, and the weather of one year, of ten and of the life.
  const yearCourses = machine.storeReals(
    [course(), course(), course(), course(), course()].flatMap(({ start, stride }) => [start, stride]),
  )
  const energy = lastingEnergy(machine, parts, basis, lasting, course)
  const into = machine.take(4 * 8 * DRAWS)
  machine.kernels.yearDraws(
    energy,
    parts,
    DRAWS,
    yearCourses,
    basis.ageing.pctPerYear / 100,
    degradationSpread,
    yearly,
    years,
    MEAN_YEARS,
    into,
  )
  const sorted = (column: number): Float64Array => sortReals(machine.copyReals(into + 8 * DRAWS * column, DRAWS))
  const draws = { firstYear: sorted(0), anyYear: sorted(1), tenYearMean: sorted(2), life: sorted(3) }
  machine.release(mark)
  return draws
}

let partsOfNormal: Float64Array | undefined

/** Puts the equally likely parts of a standard normal where the kernels find them; they are the same for every system. */
function storeParts(machine: Engine): number {
  if (partsOfNormal !== undefined) return machine.storeReals(partsOfNormal)
  const at = machine.take(8 * DRAWS)
  machine.kernels.normalParts(at, DRAWS, normalQuantile(0.5 / DRAWS))
  partsOfNormal = machine.copyReals(at, DRAWS)
  return at
}

/** Address of the energy of a year of mean weather, by draw. */
function lastingEnergy(
  machine: Engine,
  parts: number,
  { arrays }: UncertaintyBasis,
  terms: readonly Term[],
  course: () => Course,
): number {
  const sum = machine.storeReals(new Float64Array(DRAWS))
  const energy = machine.take(8 * DRAWS)
  const withCourse = (some: readonly Term[]): { term: Term; course: Course }[] =>
    some.map((term) => ({ term, course: course() }))
  const shared = withCourse(terms.filter(({ isShared }) => isShared))
  arrays.forEach((array, number) => {
    const own = withCourse(terms.filter(({ isShared }) => !isShared))
    machine.reals.fill(array.kwh, energy >> 3, (energy >> 3) + DRAWS)
    for (const { term, course: taken } of [...shared, ...own]) {
      const relative = term.relative[number] ?? 0
      if (relative === 0) continue
      const most = term.most?.[number] ?? Infinity
      machine.kernels.scaleDraws(energy, parts, DRAWS, taken.start, taken.stride, relative, most)
    }
    machine.kernels.addDraws(sum, energy, DRAWS)
  })
  return sum
}
