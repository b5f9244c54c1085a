import type { FitAlternative } from './fit-alternative.js'
import type { KeepOut } from './keep-out.js'
import type { Pathway } from './pathways.js'
import type { ModulePlacement } from './placement.js'
import type { RoofSurface } from './roof-surface.js'
import type { Inches } from '../values/index.js'

/** A plane as it is laid out. */
export interface ArrangedPlane extends RoofSurface {
  /** Edge strips, obstructions and rescue openings that stay free. */
  readonly keepOuts: readonly KeepOut[]
  /** Pathways that the layout leaves free, where the code asks for any. */
  readonly pathways: readonly Pathway[]
  /** Strip below the ridge that fire access asks for, in; 0 when it asks for none. */
  readonly ridgeSetbackIn: Inches
  /** Share of the plane that modules may cover after strips, obstructions and pathways, 0 to 1. */
  readonly usableShare: number
  readonly modules: number
  /** Share of the plane that modules cover, 0 to 1. */
  readonly coveredShare: number
}

/** Where everything on the roof lies. */
export interface Arrangement {
  readonly modules: readonly ModulePlacement[]
  /** Planes that state an outline, by id. */
  readonly planes: Readonly<Record<string, ArrangedPlane>>
  /** Area of all modules over the area of the whole roof, both in plan view, 0 to 1; null when the roof's is unknown. */
  readonly roofCoverageShare: number | null
  /** Next best layouts of arrays that were fitted to their rafters, best first, by array; none when missing. */
  readonly alternatives?: Readonly<Record<string, readonly FitAlternative[]>>
}
