import type { Project } from '../../project/index.js'
import { MOUNT_CLEARANCE_IN, MOUNT_EDGE_IN, railEndIn, sheetSpanIn, staggerRails } from '../../roof/index.js'
import { StageError, type Source, type Worksheet } from '../../worksheet/index.js'
import { chosenMount, chosenRail, railStrength } from './equipment-spec.js'
import type { LayoutRules } from '../rails/index.js'
import { need } from '../model/index.js'
import type { RailKit } from './plane-rails.js'
import type { Inches } from '../../values/index.js'

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }
const SHEET = 'It stands on the data sheet of the rail.'

/**
 * The rail and mount of the project with their strength and placing rules.
 *
 * @throws StageError when a needed value of a sheet is missing.
 */
export function railKit(project: Project, worksheet: Worksheet): RailKit {
  const rail = chosenRail(project)
  const mount = chosenMount(project)
  const { structure } = project
  const strength = railStrength(rail, worksheet)
  for (const [missing, id, what] of [
    [strength.momentYLbIn, 'rail-along-slope-not-checked', 'bending of the rail along the slope'],
    [strength.shearLb, 'rail-shear-not-checked', 'shear of the rail'],
    [rail.product.clamp?.mid_uplift_lb, 'clamp-not-checked', 'the module clamps'],
    [mount.product.capacity_lateral_lb, 'mount-lateral-not-checked', 'the load along the slope on the mount itself'],
  ] as const) {
    if (missing !== undefined) continue
    worksheet.find({
      severity: 'warning',
      id: `structure.${id}`,
      message: `the equipment does not state what is needed to check ${what}`,
      where: id.startsWith('mount') ? mount.at : rail.at,
      fix: 'Add the values of the data sheet.',
    })
  }
  return {
    rail,
    mount,
    railStrength: strength,
    endAllowanceIn: railEndIn(project, worksheet),
    longestSpanIn: sheetSpanIn(rail.product),
    mountEdgeIn:
      structure?.mount_edge_in ??
      worksheet.assume({
        path: 'structure.mount_edge_in',
        value: MOUNT_EDGE_IN,
        unit: 'in',
        why: 'a flashing needs room to the edge of the roof',
        source: PRACTICE,
      }),
    mountClearanceIn:
      structure?.mount_clearance_in ??
      worksheet.assume({
        path: 'structure.mount_clearance_in',
        value: MOUNT_CLEARANCE_IN,
        unit: 'in',
        why: 'flashing of the mount and of a vent shall not overlap',
        source: PRACTICE,
      }),
  }
}

/** What the person may ask of this run. */
export interface SpaceMountsOptions {
  /** Wished largest distance between mounts, in; wins over the project file. */
  readonly spacingIn?: Inches
  /** Ids under documents whose file is there; a check stands on an engineer's document only when it is among them. */
  readonly documents?: ReadonlySet<string>
  /** Look for the fewest mounts whose exact check passes. */
  readonly optimise?: boolean
}

/**
 * Rules for placing mounts on one plane.
 *
 * @throws StageError when the free end is not limited by the sheet, or the wished spacing is less than the rafter spacing.
 */
export function layoutRules(
  project: Project,
  kit: RailKit,
  rafterSpacingIn: Inches,
  options: SpaceMountsOptions,
  worksheet: Worksheet,
): LayoutRules {
  const { structure } = project
  const { product, at } = kit.rail
  const sheet = need(product.max_cantilever_in, `${at}.max_cantilever_in`, 'the largest free end of the rail', SHEET)
  const spacingIn = options.spacingIn ?? structure?.mount_spacing_in
  if (spacingIn !== undefined && spacingIn < rafterSpacingIn - 1e-9) {
    throw new StageError(
      'structure.mount_spacing_in',
      `a mount spacing of ${spacingIn} in is less than the rafter spacing of ${rafterSpacingIn} in`,
      'Mounts stand on rafters: state a multiple of the rafter spacing.',
    )
  }
  return {
    layout:
      structure?.mount_layout ??
      worksheet.assume({
        path: 'structure.mount_layout',
        value: 'staggered',
        unit: '',
        why: 'neighbouring rails on different rafters halve what one rafter gets',
        source: PRACTICE,
      }),
    staggerRails: staggerRails(project),
    spacingIn: options.optimise === true ? undefined : spacingIn,
    optimise: options.optimise ?? false,
    maxCantileverIn: Math.min(sheet, structure?.max_cantilever_in ?? Infinity),
    maxCantileverOfSpan: product.max_cantilever_of_span ?? Infinity,
    longestSpanIn:
      options.optimise === true && spacingIn !== undefined ? Math.min(kit.longestSpanIn, spacingIn) : kit.longestSpanIn,
    rafterSpacingIn,
  }
}
