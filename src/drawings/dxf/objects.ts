import type { Box, PaperSize } from '../model/index.js'
import { POINTS_PER_INCH } from '../model/index.js'
import { MM_PER_INCH } from '../../values/index.js'
import type { Pair } from './pairs.js'
import { FIXED } from './tables.js'

/** Least and greatest coordinates, inches. */
export type Extents = Box

/** A class that is no entity. */
const CLASSES: readonly (readonly [name: string, program: string])[] = [
  ['ACDBDICTIONARYWDFLT', 'AcDbDictionaryWithDefault'],
  ['ACDBPLACEHOLDER', 'AcDbPlaceHolder'],
  ['LAYOUT', 'AcDbLayout'],
]

export const classesSection: readonly Pair[] = [
  [0, 'SECTION'],
  [2, 'CLASSES'],
  ...CLASSES.flatMap(([name, program]): Pair[] => [
    [0, 'CLASS'],
    [1, name],
    [2, program],
    [3, 'ObjectDBX Classes'],
    [90, 0],
    [280, 0],
    [281, 0],
  ]),
  [0, 'ENDSEC'],
]

/** Settings of the file. @param paper Extents of the sheet. */
export function headerSection(model: Extents, paper: Extents, seed: string): Pair[] {
  const settings: readonly (readonly [string, ...Pair[]])[] = [
    ['$ACADVER', [1, 'AC1015']],
    ['$DWGCODEPAGE', [3, 'ANSI_1252']],
    ['$INSBASE', [10, 0], [20, 0], [30, 0]],
    ['$EXTMIN', [10, model.x], [20, model.y], [30, 0]],
    ['$EXTMAX', [10, model.x + model.width], [20, model.y + model.height], [30, 0]],
    ['$LIMMIN', [10, model.x], [20, model.y]],
    ['$LIMMAX', [10, model.x + model.width], [20, model.y + model.height]],
    ['$LTSCALE', [40, 1]],
    ['$MEASUREMENT', [70, 0]],
    ['$INSUNITS', [70, 1]],
    ['$LUNITS', [70, 4]],
    ['$LUPREC', [70, 4]],
    ['$AUNITS', [70, 0]],
    ['$LWDISPLAY', [290, 1]],
    ['$PSLTSCALE', [70, 0]],
    ['$TILEMODE', [70, 1]],
    ['$PEXTMIN', [10, paper.x], [20, paper.y], [30, 0]],
    ['$PEXTMAX', [10, paper.x + paper.width], [20, paper.y + paper.height], [30, 0]],
    ['$HANDSEED', [5, seed]],
  ]
  return [
    [0, 'SECTION'],
    [2, 'HEADER'],
    ...settings.flatMap(([name, ...values]): Pair[] => [[9, name], ...values]),
    [0, 'ENDSEC'],
  ]
}

function dictionary(
  handle: string,
  owner: string,
  entries: readonly (readonly [name: string, handle: string])[],
): Pair[] {
  return [
    [0, 'DICTIONARY'],
    [5, handle],
    [330, owner],
    [100, 'AcDbDictionary'],
    [281, 1],
    ...entries.flatMap(([name, of]): Pair[] => [
      [3, name],
      [350, of],
    ]),
  ]
}

/** Dictionaries and layouts. @param name Of the layout: the number of the sheet. */
export function objectsSection(name: string, size: PaperSize, model: Extents, paper: Extents): Pair[] {
  return [
    [0, 'SECTION'],
    [2, 'OBJECTS'],
    ...dictionary(FIXED.root, '0', [
      ['ACAD_GROUP', FIXED.groups],
      ['ACAD_LAYOUT', FIXED.layouts],
      ['ACAD_PLOTSTYLENAME', FIXED.plotStyles],
    ]),
    ...dictionary(FIXED.groups, FIXED.root, []),
    [0, 'ACDBDICTIONARYWDFLT'],
    [5, FIXED.plotStyles],
    [330, FIXED.root],
    [100, 'AcDbDictionary'],
    [281, 1],
    [3, 'Normal'],
    [350, FIXED.plotStyle],
    [100, 'AcDbDictionaryWithDefault'],
    [340, FIXED.plotStyle],
    [0, 'ACDBPLACEHOLDER'],
    [5, FIXED.plotStyle],
    [330, FIXED.plotStyles],
    ...dictionary(FIXED.layouts, FIXED.root, [
      ['Model', FIXED.modelLayout],
      [name, FIXED.paperLayout],
    ]),
    ...layout('Model', 0, FIXED.modelLayout, FIXED.model, size, model),
    ...layout(name, 1, FIXED.paperLayout, FIXED.paper, size, paper),
    [0, 'ENDSEC'],
  ]
}

function layout(
  name: string,
  order: number,
  handle: string,
  block: string,
  { name: paper, widthPt, heightPt }: PaperSize,
  extents: Extents,
): Pair[] {
  const mm = (points: number): number => (points / POINTS_PER_INCH) * MM_PER_INCH
  const [width, height] = [widthPt / POINTS_PER_INCH, heightPt / POINTS_PER_INCH]
  const plot: readonly Pair[] = [
    [1, ''],
    [2, 'none_device'],
    [4, paper],
    [6, ''],
    ...[40, 41, 42, 43].map((code): Pair => [code, 0]),
    [44, mm(widthPt)],
    [45, mm(heightPt)],
    ...[46, 47, 48, 49, 140, 141].map((code): Pair => [code, 0]),
    [142, 1],
    [143, 1],
    // Scale of the plot from the list of scales: 16 is 1 to 1; 1024 marks the model.
    [70, order === 0 ? 1024 : 0],
    [72, 0],
    [73, 0],
    [74, 5],
    [7, ''],
    [75, 16],
    [147, 1],
    [148, 0],
    [149, 0],
  ]
  return [
    [0, 'LAYOUT'],
    [5, handle],
    [330, FIXED.layouts],
    [100, 'AcDbPlotSettings'],
    ...plot,
    [100, 'AcDbLayout'],
    [1, name],
    [70, 1],
    [71, order],
    [10, 0],
    [20, 0],
    [11, width],
    [21, height],
    [12, 0],
    [22, 0],
    [32, 0],
    [14, extents.x],
    [24, extents.y],
    [34, 0],
    [15, extents.x + extents.width],
    [25, extents.y + extents.height],
    [35, 0],
    [146, 0],
    [13, 0],
    [23, 0],
    [33, 0],
    [16, 1],
    [26, 0],
    [36, 0],
    [17, 0],
    [27, 1],
    [37, 0],
    [76, 0],
    [330, block],
  ]
}
