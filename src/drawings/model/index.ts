export { POINTS_PER_INCH } from '../../values/index.js'
export { boundsOf, cornersOf, figuresOverlap, inset, xy, type Box, type XY } from './geometry.js'
export { makeGrid, type Grid } from './grid.js'
export { flattenSheet } from './flatten.js'
export { hatchLines } from './hatch-lines.js'
export { LAYERS, type Layer, type LayerKey, type Linetype } from './layers.js'
export { rounded, type FlatSheet, type HatchMark, type Mark, type Part, type TextMark } from './mark.js'
export { COLORS, DASH_PT, PEN_PT, type Color, type Dash, type Pen } from './pens.js'
export { asSymbol, onLayer } from './on-layer.js'
export type { DrawnSymbol, Hatch, Look, Primitive, TextPrimitive } from './primitive.js'
export { cornersOfMark, LETTERS_ONLY, lieOn, obstaclesOf, strokesOf } from './obstacles.js'
export { onPaper, sheetSays, type PaperSize, type Sheet, type Viewport } from './sheet.js'
export { asArtifact, inPart } from './in-part.js'
export { ARTIFACT, rowCells, type Tag, type TagKind } from './tag.js'
export { blockHeightPt, textFigure, textMarks } from './text-block.js'
export {
  CAP_HEIGHT,
  DESCENT,
  inCapitals,
  missingGlyphs,
  printed,
  textWidthPt,
  wrapText,
  type Face,
} from './text-metrics.js'
export { unbroken } from './unbroken.js'
