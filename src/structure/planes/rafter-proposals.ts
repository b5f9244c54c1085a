import type { ModulePlacement } from '../../roof/index.js'
import { at, feetOf } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import {
  checkRafters,
  highestRatio,
  sistersOf,
  type CheckedRafter,
  type FramingSpec,
  type RafterInput,
  type RafterResult,
} from '../rafters/index.js'
import { layRails, type LaidRail, type LayoutRules, type RailToLay } from '../rails/index.js'

/** A change that would spare the hardest rafter of a plane, with the ratio that it reaches. */
export interface RafterProposal {
  readonly rafter: number
  readonly what: string
  /** Highest ratio of any check of any rafter of the plane afterwards; of the rafter itself for a sister. */
  readonly ratio: number
}

/** A plane whose rafters do not carry the array, and ways to work it out anew. */
export interface FailingPlane {
  readonly id: string
  readonly modules: readonly ModulePlacement[]
  readonly toLay: readonly RailToLay[]
  readonly rules: LayoutRules
  readonly laid: readonly LaidRail[]
  readonly input: RafterInput
  readonly result: RafterResult
  /** Highest ratio under a layout of the same modules. */
  readonly ratioOf: (laid: readonly LaidRail[]) => number
  /** The same mounts on other framing, with the snow that belongs to it. */
  readonly inputWith: (framing: FramingSpec) => RafterInput
  /** Highest ratio with other modules; undefined when no rail can be laid under them. */
  readonly ratioWith: (modules: readonly ModulePlacement[]) => number | undefined
}

/** The rafter with the highest ratio. */
function hardest(rafters: readonly CheckedRafter[]): CheckedRafter | undefined {
  const ratio = ({ checks }: CheckedRafter): number => Math.max(...checks.map((check) => check.ratio))
  return rafters.toSorted((a, b) => ratio(b) - ratio(a))[0]
}

/**
 * Computed ways out where rafters fail: mounts on every rafter, fewer modules over the hardest one, a second rafter beside it, a
 * purlin in the middle of its longest span.
 */
export function rafterProposals(plane: FailingPlane): RafterProposal[] {
  const rafter = hardest(plane.result.rafters)
  if (rafter === undefined || highestRatio([rafter]) <= 1) return []
  const { number, spans } = rafter
  const proposals: RafterProposal[] = []
  const every = layRails(plane.toLay, { ...plane.rules, spacingIn: plane.rules.rafterSpacingIn, optimise: false })
  if (every.some((rail, index) => rail.supportsIn.length > (plane.laid[index]?.supportsIn.length ?? 0))) {
    proposals.push({ rafter: number, what: 'a mount on every rafter', ratio: plane.ratioOf(every) })
  }
  const fewer = fewerModules(plane, rafter)
  if (fewer !== undefined) proposals.push(fewer)
  const { supportsIn } = spans
  const longest = supportsIn
    .slice(1)
    .map((to, index) => ({ from: at(supportsIn, index), to }))
    .reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a))
  const lengthFt = feetOf(longest.to - longest.from)
  for (const { size, ratio } of sistersOf(plane.input.framing, rafter)) {
    const what = `a ${size} of the same wood nailed beside each failing rafter over its whole span of ${lengthFt.toFixed(1)} ft`
    proposals.push({ rafter: number, what, ratio })
  }
  const purlin = plane.inputWith(withPurlin(plane.input.framing))
  proposals.push({
    rafter: number,
    what: `a braced purlin in the middle of the span of ${lengthFt.toFixed(1)} ft, onto a bearing wall`,
    ratio: highestRatio(checkRafters(purlin).rafters),
  })
  return proposals
}

/** The row over the hardest rafter without which the plane is best, its modules over that rafter left out. */
function fewerModules(plane: FailingPlane, { number, xIn }: CheckedRafter): RafterProposal | undefined {
  const xFt = feetOf(xIn)
  const over = plane.modules.filter((m) => m.xFt <= xFt && xFt <= m.xFt + m.widthFt)
  const tried = over.flatMap((left): (RafterProposal & { ratio: number })[] => {
    const ratio = plane.ratioWith(plane.modules.filter((module) => module !== left))
    return ratio === undefined ? [] : [{ rafter: number, what: `without module ${left.id}`, ratio }]
  })
  return tried.toSorted((a, b) => a.ratio - b.ratio)[0]
}

/** The same rafters with one more support in the middle of the longest stated span. */
function withPurlin(framing: FramingSpec): FramingSpec {
  const longest = framing.spansFt.reduce((best, span, index) => (span > at(framing.spansFt, best) ? index : best), 0)
  const half = at(framing.spansFt, longest) / 2
  return { ...framing, spansFt: framing.spansFt.flatMap((span, index) => (index === longest ? [half, half] : [span])) }
}

/** Says what would help. */
export function reportProposals(id: string, proposals: readonly RafterProposal[], worksheet: Worksheet): void {
  if (proposals.length === 0) return
  const list = proposals
    .map(({ what, ratio }) => `${what}: ${(100 * ratio).toFixed(0)} %${ratio <= 1 ? '' : ' (still over)'}`)
    .join('; ')
  worksheet.find({
    severity: 'note',
    id: 'structure.rafter-proposals',
    message: `plane '${id}': what would spare rafter ${proposals[0]?.rafter ?? 0}, with the use that it reaches, each for an engineer's eye: ${list}`,
    where: `structure.framing.${id}`,
    fix: 'Choose one with a structural engineer; nailing, seats and what stands below are not checked here.',
  })
}
