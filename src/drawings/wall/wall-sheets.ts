import { requiredLabels, type LabelPlace, type RequiredLabel } from '../labels/required-labels.js'
import {
  ARCHITECT_SCALES,
  feetInches,
  flowBlocks,
  inches,
  largestScale,
  type Block,
  type SheetDraft,
} from '../layout/index.js'
import { inPart, onLayer } from '../model/index.js'
import type { Project } from '../../project/index.js'
import { columns } from '../sheets/columns.js'
import { continued, type SheetJob } from '../sheets/job.js'
import { feetOf } from '../../values/index.js'
import { drawWall, extentOf, wallHeightPt } from './draw-wall.js'
import { equipmentWalls, outlineOf, type EquipmentWall, type WallPiece } from './equipment-walls.js'
import { neededSpace, needsSpace } from './working-space.js'

/** Most that a wall may take of the height of the sheet, and room beside it for words, points. */
const SHARE = 0.75
const BESIDE_PT = 240

/** Sheet E-606: walls with equipment to scale, with heights and working space; none while no height is stated. */
export function wallSheets({ input, stationery }: SheetJob): SheetDraft[] {
  const { body, unitPt } = stationery
  const walls = equipmentWalls(input.project.site_plan).filter(({ pieces }) =>
    pieces.some(({ stated }) => outlineOf(stated) !== undefined),
  )
  if (walls.length === 0) return []
  const labels = input.wire === undefined ? [] : requiredLabels(input.project, input.wire.values)
  const extents = walls.map(extentOf)
  const scale = largestScale(
    ARCHITECT_SCALES,
    Math.max(...extents.map(({ fromFt, toFt }) => toFt - fromFt)),
    Math.max(...extents.map(({ highFt }) => highFt)),
    { width: body.width - BESIDE_PT, height: body.height * SHARE - 82 },
    unitPt,
  )
  const blocks = walls.flatMap((wall): Block[] => [
    { kind: 'heading', text: `Wall of ${wall.building} with equipment, seen from outside` },
    {
      kind: 'figure',
      heightPt: wallHeightPt(extentOf(wall), scale),
      draw: (x, y, width) =>
        inPart(
          { kind: 'Figure', says: wallSays(wall) },
          onLayer(
            'equipment',
            drawWall(wall, scale, [x, y, width], (piece) => numbersAt(labels, wall, piece)),
          ),
        ),
    },
    table(wall),
  ])
  const notes: Block = {
    kind: 'list',
    items: [
      'Heights are above the ground in front of the equipment; of a meter to its middle. Numbers are those of the labels on sheet E-604.',
      ...meterNote(input.project.drawings?.meter),
      'Dotted: working space in front of equipment, 110.26(A): as wide as the equipment and at least 30 in, which need not be in the middle; 6\'-6" high or as high as the equipment; 36 in deep at condition 1, nothing live or grounded opposite.',
    ],
  }
  return flowBlocks([...blocks, notes], body).map((paper, index) => ({
    id: continued('E-606', index),
    title: index === 0 ? 'Equipment elevation' : 'Equipment elevation, continued',
    scale: scale.note,
    paper,
  }))
}

/** The figure in words; heights and working spaces stand in the table below it. */
function wallSays({ building, lengthFt, pieces }: EquipmentWall): string {
  const each = pieces.map(({ name, alongFt }) => `${name} at ${feetInches(alongFt)}`)
  return `Wall of ${building}, ${feetInches(lengthFt)} long, seen from outside, with its equipment measured from the left end: ${each.join(', ')}; the table below it has heights and working space.`
}

/** What the utility asks of its meter. */
function meterNote(rule: NonNullable<Project['drawings']>['meter']): string[] {
  if (rule === undefined) return []
  const { center_min_in: least, center_max_in: most, clear_front_in: front } = rule
  const bounds = [
    least === undefined ? '' : `at least ${feetInches(feetOf(least))}`,
    most === undefined ? '' : `at most ${feetInches(feetOf(most))}`,
  ].filter((each) => each !== '')
  const parts = [
    bounds.length === 0 ? '' : `its middle ${bounds.join(' and ')} above the ground`,
    front === undefined ? '' : `${inches(front)} clear in front of it`,
  ].filter((each) => each !== '')
  return parts.length === 0 ? [] : [`The utility asks of the meter: ${parts.join(', ')}.`]
}

/** Where labels of a piece are fixed, as the label sheet calls it. */
function placeOf({ stated }: WallPiece, labels: readonly RequiredLabel[]): LabelPlace | undefined {
  switch (stated.kind) {
    case 'utility_meter':
      return 'meter'
    case 'pv_disconnect':
    case 'combiner':
    case 'inverter':
    case 'storage_disconnect':
      return stated.kind
    case 'main_panel': {
      const panels = labels.flatMap(({ places, placeTitles }) =>
        places.flatMap((place, index) => (place.startsWith('panel:') ? [{ place, title: placeTitles[index] }] : [])),
      )
      const named = panels.find(({ title }) => title === stated.name)
      return named?.place ?? (panels.length === 0 ? 'main_panel' : undefined)
    }
    case 'production_meter':
    case 'junction_box':
    case 'storage':
    case 'isolating_device':
    case 'backup_panel':
    case 'gas_meter':
      return undefined
  }
}

/** Numbers of the labels at a piece; of several alike on a wall the first has them. */
function numbersAt(labels: readonly RequiredLabel[], { pieces }: EquipmentWall, piece: WallPiece): number[] {
  const place = placeOf(piece, labels)
  const first = pieces.find((each) => placeOf(each, labels) === place)
  return place === undefined || first !== piece
    ? []
    : labels.filter(({ places }) => places.includes(place)).map(({ number }) => number)
}

function table({ pieces }: EquipmentWall): Block {
  return {
    kind: 'table',
    columns: columns(
      ['Equipment', 0.18],
      ['Lower edge', 0.1],
      ['Upper edge', 0.1],
      ['Width', 0.08],
      ['Highest grip', 0.1],
      ['Space needed: depth, width, height', 0.18],
      ['Space stated', 0.16],
      ['Working space', 0.1],
    ),
    rows: pieces.map(({ name, stated }) => {
      const { bottom_in: bottom, height_in: height, width_in: width, handle_in: handle } = stated
      return [
        name,
        bottom === undefined ? 'not stated' : feetInches(feetOf(bottom)),
        bottom === undefined || height === undefined ? 'not stated' : feetInches(feetOf(bottom + height)),
        width === undefined ? 'not stated' : inches(width),
        handle === undefined ? '' : feetInches(feetOf(handle)),
        ...spaceCells(stated),
      ]
    }),
  }
}

function spaceCells(stated: WallPiece['stated']): string[] {
  if (!needsSpace(stated)) return ['', '', '']
  const needed = neededSpace(stated)
  const clear = [stated.clear_depth_in, stated.clear_width_in, stated.clear_height_in] as const
  const least = [needed.depthIn, needed.widthIn, needed.heightIn]
  const short = clear.some((each, index) => each !== undefined && each < (least[index] ?? 0))
  const known = clear.every((each) => each !== undefined)
  return [
    least.map((each) => inches(each)).join(', '),
    clear.map((each) => (each === undefined ? 'not stated' : inches(each))).join(', '),
    short ? 'TOO SMALL' : known ? 'holds' : 'to be measured',
  ]
}
