import { boundsOf, cornersOf, flattenSheet, POINTS_PER_INCH, type Mark, type Sheet, type XY } from '../model/index.js'
import { makeHandles, type Owner } from './entity-head.js'
import { viewportEntity } from './viewport-entity.js'
import { classesSection, headerSection, objectsSection, type Extents } from './objects.js'
import { writePairs, type Pair } from './pairs.js'
import { makeDrawer, type Block, type Drawn } from './sheet-entities.js'
import { modelViews, paperSpace, type ModelView } from './spaces.js'
import { FIXED, tablesSection, type DimStyle } from './tables.js'

const MODEL: Owner = { record: FIXED.model, onPaper: false }
const PAPER: Owner = { record: FIXED.paper, onPaper: true }
/** First handle that is not fixed. */
const FIRST_HANDLE = 0x100

/**
 * A sheet as an ASCII DXF file of the year 2000 (AC1015). What is drawn to scale stands in the model at real size in
 * inches; the layout, named after the sheet, is the paper in inches with its frame, tables and notes, and shows the model
 * through windows at their scales. A sheet with nothing to scale stands in the model at the size of the paper.
 *
 * @returns ASCII text with line feeds, the same for the same sheet.
 */
export function renderDxf(sheet: Sheet): string {
  const { marks } = flattenSheet(sheet, true)
  const views = modelViews(sheet)
  const handles = makeHandles(FIRST_HANDLE)
  const { blocks, draw } = makeDrawer(handles)
  const [model, paper]: [Drawn, Drawn] = [
    { pairs: [], reach: [] },
    { pairs: [], reach: [] },
  ]
  const isDiagram = sheet.viewports.length === 0
  for (const [index, view] of views.entries()) {
    const own = isDiagram ? marks : marks.filter((mark) => mark.view === index)
    draw({ marks: own, space: view.space, owner: MODEL, hides: view.hides, dimStyle: styleOf(view).name }, model)
  }
  paper.pairs.push(...windows(sheet, views, handles.next))
  const onPaper: readonly Mark[] = isDiagram ? [] : marks.filter((mark) => mark.view === undefined)
  draw({ marks: onPaper, space: paperSpace(sheet), owner: PAPER, hides: true, dimStyle: 'Standard' }, paper)
  const page = cornersOf({ x: 0, y: 0, width: sheet.size.widthPt, height: sheet.size.heightPt }).map(
    paperSpace(sheet).point,
  )
  const [inModel, inPaper] = [extentsOf(model.reach), boundsOf(page)]
  const styles = new Map(views.map((view) => [styleOf(view).name, styleOf(view)]))
  const before: Pair[] = [
    ...tablesSection(
      handles,
      [...styles.values()],
      [
        { name: '*Model_Space', record: FIXED.model, layout: FIXED.modelLayout },
        { name: '*Paper_Space', record: FIXED.paper, layout: FIXED.paperLayout },
        ...blocks,
      ],
      {
        x: inModel.x + inModel.width / 2,
        y: inModel.y + inModel.height / 2,
        height: Math.max(inModel.height, inModel.width / SCREEN_ASPECT) * 1.05,
        aspect: SCREEN_ASPECT,
      },
    ),
    [0, 'SECTION'],
    [2, 'BLOCKS'],
    ...blockPairs('*Model_Space', FIXED.model, [FIXED.modelBegin, FIXED.modelEnd], 0, []),
    ...blockPairs('*Paper_Space', FIXED.paper, [FIXED.paperBegin, FIXED.paperEnd], 0, []),
    ...blocks.flatMap((block) => drawnBlock(block, [handles.next(), handles.next()])),
    [0, 'ENDSEC'],
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...model.pairs,
    ...paper.pairs,
    [0, 'ENDSEC'],
    ...objectsSection(sheet.id, sheet.size, inModel, inPaper),
  ]
  return writePairs([...headerSection(inModel, inPaper, handles.seed()), ...classesSection, ...before, [0, 'EOF']])
}

/** Width over height of what a viewer is taken to show first. */
const SCREEN_ASPECT = 1.5

const styleOf = ({ scale }: ModelView): DimStyle => ({ name: `GW-${Math.round(scale * 1000) / 1000}`, scale })

function extentsOf(points: readonly XY[]): Extents {
  return points.length === 0 ? { x: 0, y: 0, width: 0, height: 0 } : boundsOf(points)
}

/** The window that stands for the paper itself, and one for each view of the model. */
function windows({ size }: Sheet, views: readonly ModelView[], next: () => string): Pair[] {
  const [width, height] = [size.widthPt / POINTS_PER_INCH, size.heightPt / POINTS_PER_INCH]
  const center = { x: width / 2, y: height / 2 }
  return [
    ...viewportEntity({ center, width, height }, { center, height }, 1, next(), PAPER),
    ...views.flatMap((view, index) => viewportEntity(view.window, view.seen, index + 2, next(), PAPER)),
  ]
}

const drawnBlock = (block: Block, ends: readonly [string, string]): Pair[] =>
  blockPairs(block.name, block.record, ends, block.isAnonymous ? 1 : 0, block.pairs)

function blockPairs(
  name: string,
  record: string,
  [begin, end]: readonly [string, string],
  flags: number,
  pairs: readonly Pair[],
): Pair[] {
  const paper: Pair[] = name === '*Paper_Space' ? [[67, 1]] : []
  const head = (type: string, handle: string): Pair[] => [
    [0, type],
    [5, handle],
    [330, record],
    [100, 'AcDbEntity'],
    ...paper,
    [8, '0'],
  ]
  return [
    ...head('BLOCK', begin),
    [100, 'AcDbBlockBegin'],
    [2, name],
    [70, flags],
    [10, 0],
    [20, 0],
    [30, 0],
    [3, name],
    [1, ''],
    ...pairs,
    ...head('ENDBLK', end),
    [100, 'AcDbBlockEnd'],
  ]
}
