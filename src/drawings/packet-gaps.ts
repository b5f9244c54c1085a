import type { Finding } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { PacketInput } from './inputs.js'
import { attachmentFacts } from './sheets/attachment-facts.js'

/** What a building department will ask for and the project does not state yet; each stops the packet. */
export function packetGaps(input: Pick<PacketInput, 'project' | 'arrangement'>): Finding[] {
  const { project, arrangement } = input
  const gaps: (readonly [missing: boolean, id: string, where: string, message: string, fix: string])[] = [
    [
      project.document?.date === undefined,
      'no-date',
      'document.date',
      'the sheets have no date of issue',
      'State document.date; nothing is taken from the clock.',
    ],
    [
      project.codes?.electrical === undefined,
      'no-electrical-code',
      'codes.electrical',
      'no edition of the electrical code is stated',
      'Ask the building department which edition it has adopted.',
    ],
    [
      project.codes?.residential === undefined,
      'no-residential-code',
      'codes.residential',
      'no edition of the residential or fire code is stated',
      'Ask the building department which edition it has adopted.',
    ],
    [
      project.site.address === undefined,
      'no-address',
      'site.address',
      'the sheets have no address of the site',
      'State site.address.',
    ],
    [
      project.site_plan === undefined,
      'no-site-plan',
      'site_plan',
      'there is no site plan, so sheet C-101 cannot be drawn',
      'State the lot, the buildings and the equipment under site_plan; the assessor’s map shows the lot.',
    ],
    [
      arrangement.values.modules.length === 0,
      'no-roof-plan',
      'arrays',
      'no module has a place on a roof plane, so there is no roof plan',
      'Give each array an arrangement and its plane an outline.',
    ],
    [
      attachmentFacts(input) === undefined,
      'no-attachment',
      'structure',
      'rail, mount or framing is not stated, so sheet S-501 cannot be drawn',
      'State structure.rail, structure.mount and structure.framing with their equipment.',
    ],
  ]
  const unplaced = arrangement.values.modules
    .filter((module) => own(arrangement.values.planes, module.roofPlane) === undefined)
    .map((module) => module.roofPlane)
  return [
    ...gaps
      .filter(([missing]) => missing)
      .map(([, id, where, message, fix]) => ({ severity: 'error' as const, id: `permit.${id}`, where, message, fix })),
    ...[...new Set(unplaced)].map((plane) => ({
      severity: 'error' as const,
      id: 'permit.no-outline',
      where: `roof_planes.${plane}.outline`,
      message: `roof plane ${plane} has no outline, so its roof plan cannot be drawn`,
      fix: 'State the outline of the plane.',
    })),
  ]
}
