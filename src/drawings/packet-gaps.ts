import type { Finding } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { PacketInput } from './inputs.js'
import { attachmentFacts } from './sheets/attachment-facts.js'

type Stated = Pick<PacketInput, 'project' | 'arrangement'>

/** Something that a packet cannot do without. */
interface Need {
  readonly id: string
  readonly missing: (stated: Stated) => boolean
  readonly where: string
  readonly message: string
  readonly fix: string
}

const NEEDS: readonly Need[] = [
  {
    id: 'permit.no-date',
    missing: ({ project }) => project.document?.date === undefined,
    where: 'document.date',
    message: 'the sheets have no date of issue',
    fix: 'State document.date; nothing is taken from the clock.',
  },
  {
    id: 'permit.no-electrical-code',
    missing: ({ project }) => project.codes?.electrical === undefined,
    where: 'codes.electrical',
    message: 'no edition of the electrical code is stated',
    fix: 'Ask the building department which edition it has adopted.',
  },
  {
    id: 'permit.no-residential-code',
    missing: ({ project }) => project.codes?.residential === undefined,
    where: 'codes.residential',
    message: 'no edition of the residential or fire code is stated',
    fix: 'Ask the building department which edition it has adopted.',
  },
  {
    id: 'permit.no-address',
    missing: ({ project }) => project.site.address === undefined,
    where: 'site.address',
    message: 'the sheets have no address of the site',
    fix: 'State site.address.',
  },
  {
    id: 'permit.no-site-plan',
    missing: ({ project }) => project.site_plan === undefined,
    where: 'site_plan',
    message: 'there is no site plan, so sheet C-101 cannot be drawn',
    fix: 'State the lot, the buildings and the equipment under site_plan; the assessor’s map shows the lot.',
  },
  {
    id: 'permit.no-roof-plan',
    missing: ({ arrangement }) => arrangement.values.modules.length === 0,
    where: 'arrays',
    message: 'no module has a place on a roof plane, so there is no roof plan',
    fix: 'Give each array an arrangement and its plane an outline.',
  },
  {
    id: 'permit.no-attachment',
    missing: (stated) => attachmentFacts(stated) === undefined,
    where: 'structure',
    message: 'rail, mount or framing is not stated, so sheet S-501 cannot be drawn',
    fix: 'State structure.rail, structure.mount and structure.framing with their equipment.',
  },
]

/** What a building department will ask for and the project does not state yet; each stops the packet. */
export function packetGaps(stated: Stated): Finding[] {
  const { planes, modules } = stated.arrangement.values
  const unplaced = new Set(
    modules.map(({ roofPlane }) => roofPlane).filter((plane) => own(planes, plane) === undefined),
  )
  return [
    ...NEEDS.filter(({ missing }) => missing(stated)).map((need): Finding => {
      const { missing: _, ...told } = need
      return { severity: 'error', ...told }
    }),
    ...[...unplaced].map((plane): Finding => ({
      severity: 'error',
      id: 'permit.no-outline',
      where: `roof_planes.${plane}.outline`,
      message: `roof plane ${plane} has no outline, so its roof plan cannot be drawn`,
      fix: 'State the outline of the plane.',
    })),
  ]
}
