import type { RoofProject } from '../../project/index.js'
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
export function railKit(project: RoofProject, worksheet: Worksheet): RailKit {
  const rail = chosenRail(project)
  const mount = chosenMount(project)
  const { structure } = project
  refuseSupport(structure?.module_support)
  const strength = railStrength(rail, worksheet)
  for (const [missing, id, what] of [
    [strength.momentYLbIn, 'rail-along-slope-not-checked', 'bending of the rail along the slope'],
    [strength.shearLb, 'rail-shear-not-checked', 'shear of the rail'],
    [rail.product.clamp?.mid_uplift_lb, 'clamp-not-checked', 'the module clamps'],
    [
      mount.product.kind === 'deck' ? 'by test' : mount.product.capacity_lateral_lb,
      'mount-lateral-not-checked',
      'the load along the slope on the mount itself',
    ],
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

/** Ways of holding modules for which there is no method here. */
function refuseSupport(support: NonNullable<RoofProject['structure']>['module_support']): void {
  if (support === undefined || support === 'two_rails') return
  throw new StageError(
    'structure.module_support',
    support === 'shared_rails'
      ? 'outside the method: a rail under the edges of two rows carries half of each, and whether the module may be clamped on that side with that load is not checked'
      : 'outside the method: without rails the frame of the module is the beam, and what it bears at its support points is not checked',
    'Put two rails under each row of modules, or ask the maker of the rack or a structural engineer.',
  )
}

/** What the person may ask of this run. */
export interface SpaceMountsOptions {
  /** Wished largest distance between mounts, in; wins over the project file. */
  readonly spacingIn?: Inches
  /** Ids under documents whose file is there; a check stands on an engineer's document only when it is among them. */
  readonly documents?: ReadonlySet<string>
  /** Why the file of a document that is there cannot be used, by id. */
  readonly documentTroubles?: ReadonlyMap<string, string>
  /** Look for the fewest mounts whose exact check passes. */
  readonly optimise?: boolean
}

/** What of it is a wish, and not a state of files. */
export type MountWishes = Omit<SpaceMountsOptions, 'documents' | 'documentTroubles'>

/**
 * Rules for placing mounts on one plane.
 *
 * @throws StageError when the free end is not limited by the sheet, or the wished spacing is less than the rafter spacing.
 */
export function layoutRules(
  project: RoofProject,
  kit: RailKit,
  lines: { readonly spacingIn: Inches; readonly on: string },
  options: SpaceMountsOptions,
  worksheet: Worksheet,
): LayoutRules {
  const { structure } = project
  const { product, at } = kit.rail
  const sheet = need(product.max_cantilever_in, `${at}.max_cantilever_in`, 'the largest free end of the rail', SHEET)
  const spacingIn = options.spacingIn ?? structure?.mount_spacing_in
  if (spacingIn !== undefined && spacingIn < lines.spacingIn - 1e-9) {
    const of = lines.on === 'seams' ? 'seam' : 'rafter'
    throw new StageError(
      'structure.mount_spacing_in',
      `a mount spacing of ${spacingIn} in is less than the ${of} spacing of ${lines.spacingIn} in`,
      `Mounts stand on ${lines.on}: state a multiple of the ${of} spacing.`,
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
    rafterSpacingIn: lines.spacingIn,
  }
}
