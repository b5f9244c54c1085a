import type { ArrangedPlane } from '../../roof/index.js'
import { sheetSource } from '../sheet-source.js'
import type { PacketInput } from '../inputs.js'
import { inches, plainNumber, type Block } from '../layout/index.js'
import { own, pitchIn12Of, type Inches } from '../../values/index.js'
import { roofLegend } from './roof-legend.js'
import { mountPatterns } from './mount-patterns.js'
import { railHeightBlocks } from './rail-heights.js'
import { objectBlocks } from './roof-objects.js'

/** Equal distances in a row from which they are written as one. */
const LEAST_EQUAL = 3

/**
 * The notes of a roof plan: facts, legend, mounts and what the plan obeys.
 *
 * @param rails Table of the rails, or the sheet that has it.
 */
export function roofNotes(input: PacketInput, plane: ArrangedPlane, rails: readonly Block[] | string): Block[] {
  const { project } = input
  const framing = own(project.structure?.framing, plane.id)
  const arrays = Object.entries(project.arrays).filter(([, array]) => array.roof_plane === plane.id)
  const facts: [string, string][] = [
    ['Faces', `${plainNumber(plane.azimuthDeg, 1)}° from true north`],
    ['Slope', `${plainNumber(pitchIn12Of(plane.tiltDeg), 1)} in 12 (${plainNumber(plane.tiltDeg, 1)}°)`],
    ['Area', `${plainNumber(plane.areaFt2, 0)} ft² along the slope`],
    ['Modules', `${plane.modules}, covering ${plainNumber(plane.coveredShare * 100, 0)} % of the plane`],
    ...wholeRoof(input),
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
    ...roofLegend(input, plane),
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'list',
      numbered: true,
      items: [...notes(plane, input), ...(typeof rails === 'string' ? elsewhere(plane, rails) : [])],
    },
    ...(typeof rails === 'string' ? [] : rails),
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

/** What stands on another sheet. */
function elsewhere({ keepOuts }: ArrangedPlane, sheet: string): string[] {
  const objects = keepOuts.some(({ kind }) => kind === 'obstruction')
  return [
    `Rails and mounts: sheet ${sheet}.`,
    ...(objects ? [`Places of the things on the roof: sheet ${sheet}.`] : []),
  ]
}

/** Rails of a plane with their mounts and heights, and things on it; `isNamed` when the table stands beside those of other planes. */
export function railBlocks(input: PacketInput, plane: ArrangedPlane, isNamed: boolean): Block[] {
  const values = input.mounts?.values
  if (values === undefined) return objectBlocks(input, plane, isNamed)
  const rows = mountPatterns(input, plane).map(({ letter, rails, stopsIn }) => {
    const [first, ...others] = values.rails.filter((rail) => rails.includes(rail.id))
    const names = rails.map((id) => id.replace(`${plane.id}.`, ''))
    return first === undefined
      ? []
      : [
          letter,
          `${others.length === 0 ? '' : `${rails.length} rails: `}${names.join(', ')}`,
          inches(first.length_in, 8),
          `${inches(first.overhang_left_in, 8)} / ${inches(first.overhang_right_in, 8)}`,
          placesText(stopsIn.slice(1, -1)),
        ]
  })
  return [
    { kind: 'heading', text: isNamed ? `Rails and mounts, roof plane ${plane.id}` : 'Rails and mounts' },
    {
      kind: 'table',
      columns: [
        { heading: 'Row', share: 0.11 },
        { heading: 'Rails', share: 0.26 },
        { heading: 'Length', share: 0.18 },
        { heading: 'Free ends', share: 0.2 },
        { heading: 'Mounts, from the left end of the eave', share: 0.35 },
      ],
      rows,
      whole: true,
    },
    ...railHeightBlocks(input, plane, isNamed),
    ...objectBlocks(input, plane, isNamed),
  ]
}

/** Places along the eave, equal distances in a row as one: `59", then 14 at 24" to 395"`. */
function placesText(places: readonly Inches[]): string {
  const found: string[] = []
  let index = 0
  while (index < places.length) {
    const at = places[index] ?? 0
    const steps = equalSteps(places.slice(index))
    if (steps < LEAST_EQUAL) {
      found.push(inches(at, 8))
      index += 1
    } else {
      const step = (places[index + 1] ?? at) - at
      found.push(inches(at, 8), `then ${steps} at ${inches(step, 8)} to ${inches(places[index + steps] ?? 0, 8)}`)
      index += steps + 1
    }
  }
  return found.join(', ')
}

/** Share of the whole roof, which the free strip at a ridge may hang on, and sprinklers. */
function wholeRoof({ project, arrangement }: PacketInput): [string, string][] {
  const share = arrangement.values.roofCoverageShare
  if (share === null) return []
  const sprinklered = project.roof_access?.sprinklered
  const words = sprinklered === undefined ? '' : sprinklered ? '; sprinklers throughout' : '; no sprinklers'
  return [['Whole roof', `modules over ${plainNumber(share * 100, 0)} % of it, seen from above${words}`]]
}

/** How many steps of the same length lead on from the first of some places. */
function equalSteps(places: readonly Inches[]): number {
  const lengths = places.slice(1).map((place, index) => place - (places[index] ?? 0))
  const other = lengths.findIndex((length) => Math.abs(length - (lengths[0] ?? 0)) >= 1 / 16)
  return other === -1 ? lengths.length : other
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
