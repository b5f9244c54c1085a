import { RAFTER_SPANS_2021, RAFTER_DEFLECTION } from '../../tables/irc/index.js'
import { LOAD_DURATION, type NominalSize } from '../../tables/nds/index.js'
import type { Feet, Inches, PoundsPerSquareFoot } from '../../values/index.js'
import { woodStrength, type Wood } from './wood-strength.js'

/** Even load that a span table is for. */
export interface TableLoad {
  /** Roof live load of 20 psf, or ground snow, psf. */
  readonly loadPsf: PoundsPerSquareFoot
  readonly isSnow: boolean
  readonly ceilingAttached: boolean
  /** 10 or 20 psf in the tables. */
  readonly deadPsf: PoundsPerSquareFoot
}

/**
 * Largest span of evenly loaded rafters by the basis of the code's tables, in.
 *
 * @returns The smaller of bending and deflection; undefined when the wood is not known.
 * @source IRC 2021 tables R802.4.1(1) to (8), whose cells it gives within 1 in but for 14 of 2,957 (secondary)
 */
export function formulaSpanIn(wood: Wood, load: TableLoad): Inches | undefined {
  const strength = woodStrength(wood)
  if (strength === undefined) return undefined
  const share = wood.spacingIn / 12
  const perFt = (load.loadPsf + load.deadPsf) * share
  const duration = load.isSnow ? LOAD_DURATION.snow : LOAD_DURATION.roofLive
  const bending = 12 * Math.sqrt((8 * strength.bendingPsi * duration * strength.sectionModulusIn3) / (12 * perFt))
  const limit = load.ceilingAttached ? RAFTER_DEFLECTION.other : RAFTER_DEFLECTION.steepOpen
  const stiffness = strength.elasticityPsi * strength.momentOfInertiaIn4
  const deflection = 12 * Math.cbrt(stiffness / (22.5 * (limit / 12) * load.loadPsf * share))
  return Math.min(bending, deflection)
}

/** What a table says of a rafter. */
export interface TableSpan {
  readonly table: string
  readonly loadPsf: PoundsPerSquareFoot
  readonly deadPsf: PoundsPerSquareFoot
  readonly spacingIn: Inches
  /** At least this where the table prints only that it is over 26 ft. */
  readonly spanFt: Feet
  readonly formulaFt: Feet
}

const SIZES: readonly NominalSize[] = ['2x6', '2x8', '2x10', '2x12']
const SPACINGS = [12, 16, 24] as const
const OVER_FT = 26

/**
 * The span that the code's tables allow for a rafter: the next higher load, dead load and spacing that a table has.
 *
 * @returns Undefined when no table covers it.
 * @source IRC 2021 tables R802.4.1(1) to (8) (secondary)
 */
export function tableSpan(wood: Wood, load: TableLoad): TableSpan | undefined {
  const size = SIZES.indexOf(wood.nominalSize)
  const spacing = SPACINGS.findIndex((held) => held >= wood.spacingIn - 1e-9)
  const dead = load.deadPsf <= 10 ? 0 : load.deadPsf <= 20 ? 1 : -1
  if (size < 0 || spacing < 0 || dead < 0 || wood.wet || wood.temperatureFactor < 1 || wood.incised) return undefined
  const table = RAFTER_SPANS_2021.find(
    (each) =>
      each.isSnow === load.isSnow &&
      each.ceilingAttached === load.ceilingAttached &&
      each.loadPsf >= load.loadPsf - 1e-9,
  )
  const byGrade: Readonly<Record<string, string | undefined>> = table?.spans[wood.species ?? ''] ?? {}
  const cell = byGrade[wood.grade ?? '']?.split(' ')[12 * dead + 4 * spacing + size]
  if (table === undefined || cell === undefined) return undefined
  const [deadPsf, spacingIn] = [dead === 0 ? 10 : 20, SPACINGS[spacing] ?? wood.spacingIn]
  const asked = { loadPsf: table.loadPsf, isSnow: load.isSnow, ceilingAttached: load.ceilingAttached, deadPsf }
  return {
    table: table.table,
    loadPsf: table.loadPsf,
    deadPsf,
    spacingIn,
    spanFt: Number(cell) === 0 ? OVER_FT : Number(cell) / 12,
    formulaFt: (formulaSpanIn({ ...wood, spacingIn }, asked) ?? 0) / 12,
  }
}
