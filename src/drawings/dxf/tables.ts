import { CAP_HEIGHT, DASH_PT, LAYERS, POINTS_PER_INCH, type Dash, type Linetype } from '../model/index.js'
import { TEXT_STYLES } from './entities.js'
import { linetypeName, type Handles } from './entity-head.js'
import type { Pair } from './pairs.js'

/** Handles of the records that every file has. */
export const FIXED = {
  blockRecords: '1',
  layers: '2',
  styles: '3',
  linetypes: '5',
  views: '6',
  ucs: '7',
  vports: '8',
  appIds: '9',
  dimStyles: 'A',
  root: 'C',
  groups: 'D',
  plotStyles: 'E',
  plotStyle: 'F',
  layouts: '1A',
  paper: '1B',
  paperBegin: '1C',
  paperEnd: '1D',
  modelLayout: '1E',
  model: '1F',
  modelBegin: '20',
  modelEnd: '21',
  paperLayout: '22',
  byBlock: '23',
  byLayer: '24',
  textPlain: '25',
} as const

/** A style of dimensions: heights are those on paper, times the scale. */
export interface DimStyle {
  readonly name: string
  /** Inches of the thing for an inch of paper. */
  readonly scale: number
}

function table(
  name: string,
  handle: string,
  records: readonly (readonly Pair[])[],
  extra: readonly Pair[] = [],
): Pair[] {
  return [
    [0, 'TABLE'],
    [2, name],
    [5, handle],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, records.length],
    ...extra,
    ...records.flat(),
    [0, 'ENDTAB'],
  ]
}

function record(type: string, handle: string, owner: string, subclass: string, name: string): Pair[] {
  return [
    [0, type],
    [type === 'DIMSTYLE' ? 105 : 5, handle],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, subclass],
    [2, name],
    [70, 0],
  ]
}

/** What the model tab shows when the file is opened. */
export interface FirstView {
  readonly x: number
  readonly y: number
  readonly height: number
  readonly aspect: number
}

/** @param blocks Names and handles of the records of the blocks, with those of their layouts. */
export function tablesSection(
  handles: Handles,
  dimStyles: readonly DimStyle[],
  blocks: readonly { readonly name: string; readonly record: string; readonly layout?: string }[],
  view: FirstView,
): Pair[] {
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...table('VPORT', FIXED.vports, [vport(handles.next(), view)]),
    ...table('LTYPE', FIXED.linetypes, linetypes(handles)),
    ...table('LAYER', FIXED.layers, layers(handles)),
    ...table('STYLE', FIXED.styles, textStyles(handles)),
    ...table('VIEW', FIXED.views, []),
    ...table('UCS', FIXED.ucs, []),
    ...table('APPID', FIXED.appIds, [record('APPID', handles.next(), FIXED.appIds, 'AcDbRegAppTableRecord', 'ACAD')]),
    ...table(
      'DIMSTYLE',
      FIXED.dimStyles,
      [{ name: 'Standard', scale: 1 }, ...dimStyles].map((style) => dimStyle(style, handles.next())),
      [
        [100, 'AcDbDimStyleTable'],
        [71, 0],
      ],
    ),
    ...table(
      'BLOCK_RECORD',
      FIXED.blockRecords,
      blocks.map(({ name, record: handle, layout = '0' }): Pair[] => [
        [0, 'BLOCK_RECORD'],
        [5, handle],
        [330, FIXED.blockRecords],
        [100, 'AcDbSymbolTableRecord'],
        [100, 'AcDbBlockTableRecord'],
        [2, name],
        [340, layout],
      ]),
    ),
    [0, 'ENDSEC'],
  ]
}

function vport(handle: string, view: FirstView): Pair[] {
  return [
    ...record('VPORT', handle, FIXED.vports, 'AcDbViewportTableRecord', '*ACTIVE'),
    ...pairsOf([10, 0], [20, 0], [11, 1], [21, 1], [12, view.x], [22, view.y], [13, 0], [23, 0], [14, 1], [24, 1]),
    ...pairsOf([15, 1], [25, 1], [16, 0], [26, 0], [36, 1], [17, 0], [27, 0], [37, 0], [40, view.height]),
    ...pairsOf([41, view.aspect], [42, 50], [43, 0], [44, 0], [50, 0], [51, 0], [71, 0], [72, 1000], [73, 1], [74, 3]),
    ...pairsOf([75, 0], [76, 0], [77, 0], [78, 0]),
  ]
}

const pairsOf = (...pairs: readonly Pair[]): readonly Pair[] => pairs

/** Strokes and gaps, points on paper; a stroke of no length is a dot. */
const STROKES: Readonly<
  Record<Exclude<Linetype, 'CONTINUOUS'>, { readonly says: string; readonly pt: readonly number[] }>
> = {
  DASHED: { says: 'Dashed __ __ __', pt: alternating('dashed') },
  HIDDEN: { says: 'Hidden _ _ _ _', pt: alternating('hidden') },
  CENTER: { says: 'Center ____ _ ____ _', pt: alternating('center') },
  PHANTOM: { says: 'Phantom ____ _ _ ____ _ _', pt: [10, -2, 2, -2, 2, -2] },
  DOT: { says: 'Dot . . . .', pt: [0, -2.6] },
}

function alternating(dash: Dash): number[] {
  return DASH_PT[dash].map((length, index) => (index % 2 === 0 ? length : -length))
}

function linetypes(handles: Handles): Pair[][] {
  const row = (handle: string, name: string, says: string, pt: readonly number[]): Pair[] => [
    ...record('LTYPE', handle, FIXED.linetypes, 'AcDbLinetypeTableRecord', name),
    [3, says],
    [72, 65],
    [73, pt.length],
    [40, pt.reduce((sum, length) => sum + Math.abs(length), 0) / POINTS_PER_INCH],
    ...pt.flatMap((length): Pair[] => [
      [49, length / POINTS_PER_INCH],
      [74, 0],
    ]),
  ]
  return [
    row(FIXED.byBlock, 'ByBlock', '', []),
    row(FIXED.byLayer, 'ByLayer', '', []),
    row(handles.next(), 'Continuous', 'Solid line', []),
    ...Object.entries(STROKES).map(([name, { says, pt }]) => row(handles.next(), name, says, pt)),
  ]
}

function layers(handles: Handles): Pair[][] {
  const zero: Pair[] = [
    ...record('LAYER', handles.next(), FIXED.layers, 'AcDbLayerTableRecord', '0'),
    [62, 7],
    [6, 'Continuous'],
    [370, -3],
    [390, FIXED.plotStyle],
  ]
  return [
    zero,
    ...Object.values(LAYERS).map((layer): Pair[] => [
      ...record('LAYER', handles.next(), FIXED.layers, 'AcDbLayerTableRecord', layer.name),
      [62, layer.color],
      [6, linetypeName(layer.linetype)],
      ...('plots' in layer ? [[290, 0] as const] : []),
      [370, layer.weightMm * 100],
      [390, FIXED.plotStyle],
    ]),
  ]
}

function textStyles(handles: Handles): Pair[][] {
  const row = (handle: string, name: string, file: string): Pair[] => [
    ...record('STYLE', handle, FIXED.styles, 'AcDbTextStyleTableRecord', name),
    [40, 0],
    [41, 1],
    [50, 0],
    [71, 0],
    [42, 0.1],
    [3, file],
    [4, ''],
  ]
  return [
    row(handles.next(), 'Standard', 'txt'),
    row(FIXED.textPlain, TEXT_STYLES.plain, 'DejaVuSansCondensed.ttf'),
    row(handles.next(), TEXT_STYLES.bold, 'DejaVuSansCondensed-Bold.ttf'),
  ]
}

/** As the packet draws them: slashes at the ends, text in the line, feet and inches. Lengths on paper. */
function dimStyle({ name, scale }: DimStyle, handle: string): Pair[] {
  const inch = (points: number): number => points / POINTS_PER_INCH
  return [
    ...record('DIMSTYLE', handle, FIXED.dimStyles, 'AcDbDimStyleTableRecord', name),
    ...pairsOf([40, scale], [41, inch(3)], [42, inch(2)], [43, inch(15)], [44, inch(3)], [46, inch(3)]),
    ...pairsOf([140, inch(7 * CAP_HEIGHT)], [141, 0], [142, inch(2.2)], [147, inch(1)]),
    ...pairsOf([71, 0], [72, 0], [73, 0], [74, 0], [75, 0], [76, 0], [77, 0], [78, 0], [79, 3]),
    ...pairsOf([172, 1], [271, 4], [277, 4], [340, FIXED.textPlain]),
  ]
}
