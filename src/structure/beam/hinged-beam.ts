import { at } from '../../values/index.js'
import { beamForcesAt } from './beam-shape.js'
import { solveContinuousBeam, type BeamKink, type BeamModel } from './continuous-beam.js'

/**
 * A beam with hinges between its supports: the beam with those kinks that leave no moment at the hinges.
 *
 * @param hingesIn Places of the hinges, in; every piece between them on two supports.
 * @throws RangeError when the pieces would turn about a support (a defect of the caller).
 * @source Force method: the moment at each hinge of the beam without hinges, taken away by kinks of the three-moment equation
 */
export function hingedBeam(beam: BeamModel, hingesIn: readonly number[]): BeamModel {
  if (hingesIn.length === 0) return beam
  const momentsOf = (one: BeamModel): number[] => {
    const solution = solveContinuousBeam(one)
    return hingesIn.map((x) => beamForcesAt(one, solution, x).momentLbIn)
  }
  const free = momentsOf(beam)
  const unit = hingesIn.map((xIn) => momentsOf({ ...beam, loads: [], kinks: [{ xIn, timesStiffness: 1 }] }))
  const matrix = hingesIn.map((_, row) => hingesIn.map((_hinge, column) => at(at(unit, column), row)))
  const angles = solveLinear(
    matrix,
    free.map((moment) => -moment),
  )
  const kinks: BeamKink[] = hingesIn.map((xIn, index) => ({ xIn, timesStiffness: at(angles, index) }))
  return { ...beam, kinks }
}

/** Gaussian elimination with pivots; the sets are as large as a rail has joints. */
function solveLinear(matrix: readonly (readonly number[])[], known: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, at(known, index)])
  const n = rows.length
  for (let column = 0; column < n; column++) {
    let pivot = column
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(at(at(rows, row), column)) > Math.abs(at(at(rows, pivot), column))) pivot = row
    }
    const [here, swapped] = [at(rows, column), at(rows, pivot)]
    if (Math.abs(at(swapped, column)) < 1e-12) throw new RangeError('a piece between hinges turns about its support')
    rows[pivot] = here
    rows[column] = swapped
    for (let row = 0; row < n; row++) {
      if (row === column) continue
      const factor = at(at(rows, row), column) / at(swapped, column)
      rows[row] = at(rows, row).map((value, index) => value - factor * at(swapped, index))
    }
  }
  return rows.map((row, index) => at(row, n) / at(row, index))
}
