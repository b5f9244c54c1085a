import type { ArrangedPlane } from '../../roof/index.js'
import { sheetSource } from '../sheet-source.js'
import type { PacketInput } from '../inputs.js'
import { inches, plainNumber, type Block } from '../layout/index.js'
import { own, pitchIn12Of } from '../../values/index.js'
import { roofLegend } from './roof-legend.js'
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
      framing.kind === 'truss' ? 'Trusses' : 'Rafters',
      `${framing.nominal_size} at ${inches(framing.spacing_in)} on centre, first at ${inches(framing.first_offset_in ?? 0)} from the left end`,
    ])
  }
  return [
    { kind: 'heading', text: `Roof plane ${plane.id}` },
    { kind: 'facts', facts },
    { kind: 'heading', text: 'Legend' },
    roofLegend(input, plane),
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
      (each) => `${inches(each.clearanceIn)} stay free along ${each.name}: ${sheetSource(each.source)}.`,
    ),
    'Pathways lie over framing that carries a firefighter, clear of vents, raceways and other things in the way.',
    ...(input.mounts === undefined || input.mounts.values.fastener.into === 'rafter'
      ? ['Locate each rafter before a hole is drilled; a hole that misses is sealed and flashed.']
      : [`Mounts stand on the ${input.mounts.values.fastener.into} at the places shown, not on rafters.`]),
    ...(input.mounts === undefined
      ? ['Rails and mounts are not shown: the structural part of the project is not complete.']
      : []),
  ]
}
