import type { Mount } from '../../project/index.js'
import type { MountValues } from '../../structure/index.js'
import { inches, plainNumber, type Block } from '../layout/index.js'
import { attachmentDifferences } from './attachment-differences.js'
import { type AttachmentFacts } from './attachment-facts.js'
import { type SheetJob } from './job.js'
import { framingRows } from './framing-rows.js'
import { rafterDocuments } from './rafter-documents.js'

/** How the mounts of a kind are set. */
const SETTING: Readonly<Record<NonNullable<Mount['kind']>, readonly string[]>> = {
  rafter_screw: [
    'Drill the lead hole at right angles to the roof, fill it with sealant, and turn the screw in; never drive it with a hammer.',
    'A screw that does not bite is in no rafter: take it out, seal the hole, flash it, and find the rafter.',
  ],
  standing_seam_clamp: [
    'Set each clamp square on the seam and tighten its setscrews to the torque of its sheet for this metal and gauge; it makes no hole.',
    'No clamp sits on the end of a panel or bridges two panels; what the panel needs to move stays free.',
  ],
  tile_hook: [
    'Lift the tile, find the rafter, screw the base on with both screws in line with the grain, and grind the tile so that it lies flat.',
    'The hook keeps its gap to the tile below; the underlay is sealed round its base.',
  ],
  deck: [
    'Set each mount where its test holds: on sound, dry sheathing of the stated kind and thickness, with all of its screws.',
    'A screw that spins holds nothing: move the mount, seal and flash the holes.',
  ],
}

const NOTES = [
  'Rail, clamp and foot profiles are drawn in general form; their sheets show their true shape and torque.',
  'The listing of rail, clamps and feet covers bonding of module frames and rails, or bonding jumpers are added.',
]

export function blocks(job: SheetJob, facts: AttachmentFacts): Block[] {
  const values = job.input.mounts?.values
  const different = attachmentDifferences(job.input.project)
  const rows = [
    roofRow(facts, different.length > 0),
    ...different,
    ...productRows(facts),
    ...(values === undefined ? [] : mountRows(values)),
    ...framingRows(job.input.project),
    ...rafterDocuments(job.input).map((text): Row => ['Rafters', text]),
  ]
  return [
    { kind: 'heading', text: 'Attachment' },
    { kind: 'facts', facts: rows },
    { kind: 'heading', text: 'Notes' },
    { kind: 'list', numbered: true, items: [...SETTING[facts.mount.kind ?? 'rafter_screw'], ...NOTES] },
  ]
}

type Row = [string, string]

const roofRow = ({ planeId }: AttachmentFacts, isDifferent: boolean): Row => [
  'Roof plane',
  isDifferent ? `${planeId}; the others but for the sizes that stand below` : `${planeId} (typical of all)`,
]

/** What is screwed to the roof, as the project states it. */
function productRows({ mountId, mount, railId, rail }: AttachmentFacts): Row[] {
  const { lag } = mount
  const rows: Row[] = [
    ['Mount', [mount.name ?? mountId, mount.sheet].filter((each) => each !== undefined).join('; ')],
    ['Rail', [rail.name ?? railId, rail.alloy, rail.sheet].filter((each) => each !== undefined).join('; ')],
  ]
  const { fire } = rail
  if (fire?.class !== undefined) {
    rows.push([
      'Fire class',
      `${fire.class} with modules of fire type ${(fire.module_types ?? []).join(', ')}; listing ${fire.listing ?? 'not stated'}`,
    ])
  }
  if (mount.kind !== undefined) rows.push(['Kind of mount', mount.kind.replaceAll('_', ' ')])
  if (mount.test_report?.id !== undefined) {
    rows.push(['Test report', `${mount.test_report.id}, ${mount.test_report.date ?? 'no date'}`])
  }
  const torque = mount.seam_clamp?.setscrew_torque_lb_in
  if (torque !== undefined) rows.push(['Setscrew torque', `${plainNumber(torque)} lb-in`])
  if (lag === undefined || !hasLags(mount)) return rows
  rows.push(['Lag screw', `${lag.count} of ${lag.size} x ${inches(lag.length_in)} per mount`])
  if (lag.lead_hole_in !== undefined) rows.push(['Lead hole', inches(lag.lead_hole_in)])
  return rows
}

/** Whether lag screws hold it. */
function hasLags({ kind }: Mount): boolean {
  return kind === undefined || kind === 'rafter_screw' || kind === 'tile_hook'
}

/** What the mounts were computed to. */
function mountRows(values: MountValues): Row[] {
  const { lag, fastener, weakest_link: weakest } = values
  const screws: Row[] =
    lag === null
      ? [['Fastener', `${fastener.each} x ${fastener.name} per mount, into the ${fastener.into}`]]
      : [
          ['Thread in the rafter', `${inches(lag.thread_in_rafter_in)} without the tip`],
          ['Lead hole allowed', `${inches(lag.lead_hole_least_in, 64)} to ${inches(lag.lead_hole_most_in, 64)}`],
          ['From the middle of the rafter', `at most ${inches(lag.centring_tolerance_in)}`],
        ]
  return [
    ...screws,
    [
      'Largest distance of mounts',
      Object.entries(values.max_span_in)
        .map(([zone, span]) => `${zone.replaceAll('_', ' ')}: ${inches(span)}`)
        .join('; '),
    ],
    ['Weakest link', `${weakest.name} at ${weakest.where}, ${plainNumber(100 * weakest.ratio, 0)} % used`],
    [
      'Added dead load',
      `${plainNumber(values.added_dead_load_psf)} psf of module area; array ${plainNumber(values.array_weight_lb, 0)} lb`,
    ],
  ]
}

export function checkBlocks({ checks }: MountValues): Block[] {
  return [
    { kind: 'heading', text: 'Checks' },
    {
      kind: 'table',
      columns: [
        { heading: 'Part', share: 0.24 },
        { heading: 'Demand', share: 0.16, align: 'right' },
        { heading: 'Limit', share: 0.16, align: 'right' },
        { heading: 'Limit is', share: 0.13 },
        { heading: 'Used', share: 0.09, align: 'right' },
        { heading: 'Where', share: 0.32 },
      ],
      rows: checks.map((check) => [
        check.name,
        `${plainNumber(check.demand)} ${check.unit}`,
        `${plainNumber(check.capacity)} ${check.unit}`,
        check.limit_is,
        `${plainNumber(100 * check.ratio, 0)} %`,
        check.where,
      ]),
    },
  ]
}
