import type { Framing, Mount, Project, PvModule, Rail } from '../../project/index.js'
import { LUMBER_SIZES } from '../../tables/nds/index.js'
import type { PacketInput } from '../inputs.js'
import { inchesOf, own, type Inches } from '../../values/index.js'

/** Sizes of one attachment, in; what the project does not state is undefined and not dimensioned. */
export interface AttachmentFacts {
  readonly planeId: string
  readonly framing: Framing
  readonly mount: Mount
  readonly mountId: string
  readonly rail: Rail
  readonly railId: string
  readonly module: PvModule
  readonly breadthIn: Inches
  readonly depthIn: Inches
  readonly sheathingIn: Inches
  readonly coveringIn: Inches
  readonly baseIn: Inches
  readonly standoffIn: Inches
  readonly moduleIn: Inches
  /** Gap between neighbouring modules of a row, undefined when no two stand side by side. */
  readonly gapIn: Inches | undefined
  readonly threadInRafterIn: Inches | undefined
}

/** The attachment on the first plane with modules whose framing is stated, or undefined when parts are missing. */
export function attachmentFacts(
  input: Pick<PacketInput, 'project' | 'arrangement' | 'mounts'>,
): AttachmentFacts | undefined {
  const { project } = input
  const [railId, mountId] = [project.structure?.rail ?? '', project.structure?.mount ?? '']
  const rail = own(project.equipment.rails, railId)
  const mount = own(project.equipment.mounts, mountId)
  const array = Object.values(project.arrays).find(
    (each) => own(project.structure?.framing, each.roof_plane) !== undefined,
  )
  if (rail === undefined || mount === undefined || array === undefined) return undefined
  const framing = own(project.structure?.framing, array.roof_plane)
  const module = own(project.equipment.modules, array.module)
  if (framing?.nominal_size === undefined || module === undefined) return undefined
  return {
    planeId: array.roof_plane,
    framing,
    mount,
    mountId,
    rail,
    railId,
    module,
    ...LUMBER_SIZES[framing.nominal_size],
    sheathingIn: framing.sheathing_in ?? 0,
    coveringIn: framing.covering_in ?? 0,
    baseIn: mount.base_in ?? 0,
    standoffIn: array.standoff_in,
    moduleIn: module.thickness_in ?? 1.4,
    gapIn: moduleGapIn(input, project),
    threadInRafterIn: input.mounts?.values.lag?.thread_in_rafter_in,
  }
}

function moduleGapIn(input: Pick<PacketInput, 'arrangement'>, project: Project): Inches | undefined {
  const { modules } = input.arrangement.values
  const gaps = modules.flatMap((module) => {
    const next = modules.find(
      (other) =>
        other.array === module.array &&
        other.block === module.block &&
        other.row === module.row &&
        other.column === module.column + 1,
    )
    return next === undefined || own(project.arrays, module.array) === undefined
      ? []
      : [inchesOf(next.xFt - module.xFt - module.widthFt)]
  })
  return gaps.length === 0 ? undefined : Math.min(...gaps)
}
