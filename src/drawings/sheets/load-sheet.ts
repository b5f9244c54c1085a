import type { Framing } from '../../project/index.js'
import type { MountValues } from '../../structure/index.js'
import { own, radiansOf } from '../../values/index.js'
import { flowBlocks, inches, plainNumber, type Block, type SheetDraft } from '../layout/index.js'
import { continued, type SheetJob } from './job.js'
import { lb, psf, memberTable, mountTable, checkTable } from './load-tables.js'

/**
 * Sheet L-101: what an engineer needs to judge the rafters or trusses: geometry, loads of each mount before they are combined,
 * sums by member, what was checked, what was taken for granted and what nobody saw.
 */
export function loadSheets(job: SheetJob): SheetDraft[] {
  const values = job.input.mounts?.values
  if (values === undefined) return []
  const planes = [...new Set(values.mounts.map(({ plane }) => plane))]
  const blocks = [
    ...planes.flatMap((plane) => planeBlocks(job, values, plane)),
    { kind: 'heading' as const, text: 'Taken for granted, to be confirmed' },
    { kind: 'list' as const, numbered: true, items: assumed(job) },
    { kind: 'heading' as const, text: 'Not seen or not judged here' },
    { kind: 'list' as const, numbered: true, items: NOT_SEEN },
    { kind: 'heading' as const, text: 'Finding of the engineer' },
    { kind: 'facts' as const, facts: ENGINEER },
  ]
  return flowBlocks(blocks, job.stationery.body).map((paper, page) => ({
    id: continued('L-101', page),
    title: page === 0 ? 'Loads on the roof framing' : 'Loads on the roof framing, continued',
    scale: 'None',
    paper,
  }))
}

const NOT_SEEN = [
  'Condition of the members: rot, cracks, notches, splices, earlier alterations. Photographs from the attic belong to this sheet.',
  'Joints of the members with walls, ridge and ties, and the walls and foundations below.',
  "Trusses are not judged here: plates, webs and bottom chords are their designer's.",
]

const ENGINEER: [string, string][] = [
  ['Name, licence, date', '______________________________________________'],
  ['Observed by, on, from attic', '______________________________________________'],
  ['Opinion', '______________________________________________'],
  ['Seal', ''],
]

function planeBlocks(job: SheetJob, values: MountValues, plane: string): Block[] {
  const framing = own(job.input.project.structure?.framing, plane)
  const mounts = values.mounts.filter((mount) => mount.plane === plane)
  const member = framing?.kind === 'truss' ? 'Truss' : 'Rafter'
  return [
    { kind: 'heading', text: `Plane ${plane}: ${framing?.kind === 'truss' ? 'trusses' : 'rafters'}` },
    { kind: 'facts', facts: framingFacts(job, values, plane, framing) },
    { kind: 'heading', text: `Plane ${plane}: ${member.toLowerCase()} by ${member.toLowerCase()}, sums of its mounts` },
    memberTable(mounts, member),
    { kind: 'heading', text: `Plane ${plane}: each mount` },
    mountTable(mounts, member),
    ...checkTable(values, plane),
  ]
}

function framingFacts(
  job: SheetJob,
  values: MountValues,
  plane: string,
  framing: Framing | undefined,
): [string, string][] {
  const { project } = job.input
  const loads = values.loads.planes[plane]
  const truss = framing?.truss
  const stated = (text: string | undefined): string => text ?? 'not stated'
  return [
    [
      'Members',
      [framing?.nominal_size, framing?.species, framing?.grade].filter((each) => each !== undefined).join(', '),
    ],
    [
      'Spacing',
      framing?.spacing_in === undefined
        ? 'not stated'
        : `${inches(framing.spacing_in)}, first at ${inches(framing.first_offset_in ?? 0)} from the left end of the eave`,
    ],
    [
      'Spans',
      framing?.kind === 'truss'
        ? 'of the truss'
        : `${[framing?.span_ft, ...(framing?.further_spans_ft ?? [])].filter((each) => each !== undefined).join(' + ')} ft on the horizontal`,
    ],
    ['Slope', `${plainNumber(loads?.slope_deg ?? 0, 1)} degrees`],
    [
      'Loads by',
      `${values.edition}; wind ${stated(project.structure?.wind?.basic_speed_mph?.toString())} mph, exposure ${stated(project.structure?.wind?.exposure)}; ground snow ${stated(project.structure?.snow?.ground_psf?.toString())} psf`,
    ],
    [
      'Dead load',
      `roof as it stands ${psf(framing?.existing_dead_psf ?? 0)} of surface; array ${psf(loads?.array_dead_psf ?? 0)} of its surface`,
    ],
    ['Snow on the modules', `${psf(loads?.snow_psf ?? 0)} on the horizontal`],
    ...(truss === undefined
      ? []
      : ([
          ['Truss design drawing', stated(truss.drawing)],
          [
            'Designed for',
            `top chord live ${stated(truss.top_chord_live_psf?.toString())}, dead ${stated(truss.top_chord_dead_psf?.toString())}, bottom chord dead ${stated(truss.bottom_chord_dead_psf?.toString())} psf`,
          ],
          ...trussComparison(values, plane, truss),
        ] as [string, string][])),
  ]
}

/** What the top chord was designed for beside what it would carry; printed, not a verdict. */
function trussComparison(values: MountValues, plane: string, truss: NonNullable<Framing['truss']>): [string, string][] {
  const loads = values.loads.planes[plane]
  const { top_chord_dead_psf: dead, panel_length_ft: panelFt } = truss
  const rows: [string, string][] = []
  if (loads !== undefined && dead !== undefined) {
    const added = loads.array_dead_psf / Math.cos(radiansOf(loads.slope_deg))
    rows.push(['Array on the horizontal', `${psf(added)}, beside ${psf(dead)} of top chord dead load in the design`])
  }
  const most = Math.max(0, ...values.mounts.filter((m) => m.plane === plane).map((m) => m.dead_lb + m.snow_lb))
  if (panelFt !== undefined) {
    rows.push([
      'Mount between panel points',
      `up to ${lb(most)} lb down: P L / 4 = ${lb((most * panelFt) / 4)} lb-ft in a panel of ${panelFt} ft`,
    ])
  }
  return rows
}

/** Assumptions of the calculation, then the rules behind the figures. */
function assumed({ input }: SheetJob): string[] {
  const own = input.mounts?.assumptions ?? []
  return [
    'Snow is the worst case on the place of each mount at the level of the stated ground snow, vertical; wind is at strength level, at right angles to the roof; ASD down and up are the governing combinations at right angles.',
    'x runs along the eave from its left end as seen from outside, y up the slope.',
    ...own
      .filter(({ path }) => path.startsWith('structure') || path.startsWith('codes'))
      .map(({ path, value, unit, why }) => `${path}: ${value}${unit === '' ? '' : ` ${unit}`} (${why})`),
  ]
}
