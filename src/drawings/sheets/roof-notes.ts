import type { ArrangedPlane } from '../../roof/index.js'
import { formatSource } from '../../worksheet/index.js'
import type { PacketInput } from '../inputs.js'
import { inches, label, plainNumber, TYPE_PT, type Block } from '../layout/index.js'
import { xy, type Primitive } from '../model/index.js'
import { own, pitchIn12Of } from '../../values/index.js'
import { mountPatterns } from './mount-patterns.js'

/** The column beside a roof plan: facts, legend, mounts and what the plan obeys. */
export function roofNotes(input: PacketInput, plane: ArrangedPlane): Block[] {
  const { project } = input
  const framing = own(project.structure?.framing, plane.id)
  const arrays = Object.entries(project.arrays).filter(([, array]) => array.roof_plane === plane.id)
  const facts: [string, string][] = [
    ['Faces', `${plainNumber(plane.azimuthDeg, 1)}° from true north`],
    ['Slope', `${plainNumber(pitchIn12Of(plane.tiltDeg), 1)} in 12 (${plainNumber(plane.tiltDeg, 1)}°)`],
    ['Area', `${plainNumber(plane.areaFt2, 0)} ft² along the slope`],
    ['Modules', `${plane.modules}, covering ${plainNumber(plane.coveredShare * 100, 0)} % of the plane`],
    ...arrays.map(([id, array]): [string, string] => [`Array ${id}`, moduleText(input, array.module)]),
  ]
  if (framing?.nominal_size !== undefined && framing.spacing_in !== undefined) {
    facts.push([
      'Rafters',
      `${framing.nominal_size} at ${inches(framing.spacing_in)} on centre, first at ${inches(framing.first_offset_in ?? 0)} from the left end`,
    ])
  }
  return [
    { kind: 'heading', text: `Roof plane ${plane.id}` },
    { kind: 'facts', facts },
    { kind: 'heading', text: 'Legend' },
    ...legend(input, plane),
    ...mountBlocks(input, plane),
    { kind: 'heading', text: 'Notes' },
    { kind: 'list', numbered: true, items: notes(plane, input) },
  ]
}

function moduleText(input: PacketInput, id: string): string {
  const module = own(input.project.equipment.modules, id)
  if (module === undefined) return id
  const size =
    module.length_in === undefined || module.width_in === undefined
      ? ''
      : `, ${inches(module.length_in)} by ${inches(module.width_in)}`
  return `${module.name ?? id}, ${module.pmax_w} W${size}`
}

function legend(input: PacketInput, plane: ArrangedPlane): Block[] {
  const rows: [string, (x: number, y: number) => Primitive[]][] = [
    [
      'Module with its row and column (row 1 is the lowest)',
      (x, y) => [{ kind: 'rectangle', x, y, width: 20, height: 9, pen: 'medium', fill: 'light' }],
    ],
  ]
  if (input.mounts !== undefined) {
    rows.push(
      [
        'Rail',
        (x, y) => [{ kind: 'path', points: [xy(x, y + 4.5), xy(x + 20, y + 4.5)], pen: 'heavy', color: 'grey' }],
      ],
      [
        'Mount on a rafter',
        (x, y) => [{ kind: 'circle', center: xy(x + 10, y + 4.5), radiusPt: 2.2, pen: 'thin', fill: 'black' }],
      ],
    )
  }
  if (own(input.project.structure?.framing, plane.id) !== undefined) {
    rows.push([
      'Rafter',
      (x, y) => [
        { kind: 'path', points: [xy(x, y + 4.5), xy(x + 20, y + 4.5)], pen: 'hair', dash: 'center', color: 'grey' },
      ],
    ])
  }
  if (plane.pathways.length > 0) {
    rows.push([
      'Fire access pathway',
      (x, y) => [
        {
          kind: 'rectangle',
          x,
          y,
          width: 20,
          height: 9,
          pen: 'thin',
          dash: 'dashed',
          hatch: { angleDeg: 135, gapPt: 4, cross: true },
        },
      ],
    ])
  }
  rows.push([
    'Strip that stays free',
    (x, y) => [
      { kind: 'rectangle', x, y, width: 20, height: 9, pen: 'thin', dash: 'dashed', hatch: { angleDeg: 45, gapPt: 5 } },
    ],
  ])
  rows.push([
    'Raceway, where shown',
    (x, y) => [{ kind: 'path', points: [xy(x, y + 4.5), xy(x + 20, y + 4.5)], pen: 'heavy', dash: 'dashed' }],
  ])
  const step = 19
  return [
    {
      kind: 'figure',
      heightPt: rows.length * step,
      draw: (x, y, width) =>
        rows.flatMap(([text, draw], index) => [
          ...draw(x, y + index * step),
          label(x + 28, y + index * step + 4.5, text, {
            sizePt: TYPE_PT.small,
            valign: 'middle',
            maxWidthPt: width - 28,
          }),
        ]),
    },
  ]
}

function mountBlocks(input: PacketInput, plane: ArrangedPlane): Block[] {
  const values = input.mounts?.values
  if (values === undefined) return []
  const patterns = mountPatterns(input, plane)
  const rows = values.rails
    .filter((rail) => rail.plane === plane.id)
    .map((rail) => {
      const pattern = patterns.find((each) => each.rails.includes(rail.id))
      const places = pattern?.stopsIn.slice(1, -1) ?? []
      return [
        rail.id.replace(`${plane.id}.`, ''),
        pattern?.letter ?? '',
        inches(rail.length_in, 8),
        `${inches(rail.overhang_left_in, 8)} / ${inches(rail.overhang_right_in, 8)}`,
        places.map((place) => inches(place, 8)).join('  '),
      ]
    })
  return [
    { kind: 'heading', text: 'Rails and mounts' },
    {
      kind: 'table',
      columns: [
        { heading: 'Rail', share: 0.18 },
        { heading: 'Row', share: 0.14 },
        { heading: 'Length', share: 0.16 },
        { heading: 'Free ends', share: 0.18 },
        { heading: 'Mounts, from the left end of the eave', share: 0.34 },
      ],
      rows,
    },
  ]
}

function notes(plane: ArrangedPlane, input: PacketInput): string[] {
  const strips = plane.keepOuts.filter((keepOut) => keepOut.kind === 'edge' && keepOut.clearanceIn > 0)
  const told = new Map(strips.map((each) => [`${each.name} ${each.clearanceIn}`, each]))
  return [
    'Lengths are measured along the roof surface, up the slope is up on the sheet.',
    ...[...told.values()].map(
      (each) => `${inches(each.clearanceIn)} stay free along ${each.name}: ${formatSource(each.source)}.`,
    ),
    'Pathways lie over framing that carries a firefighter, clear of vents, raceways and other things in the way.',
    'Locate each rafter before a hole is drilled; a hole that misses is sealed and flashed.',
    ...(input.mounts === undefined
      ? ['Rails and mounts are not shown: the structural part of the project is not complete.']
      : []),
  ]
}
