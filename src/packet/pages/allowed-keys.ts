/*
 * What a page needs to look as it does, by the kind of its objects: ISO 32000-1:2008, clauses 7.8.3 (resources), 8.4.5
 * (graphics state), 8.7 (patterns, shadings), 8.9 and 8.10 (images, forms), 9 (fonts); from memory. Whatever is not
 * named is not taken over: actions, scripts, links, files, forms, media, metadata, references to other files.
 */

export interface Shape {
  /** What the object has to be. */
  readonly is: 'dictionary' | 'stream' | 'dictionary or stream'
  /**
   * Keys that are taken over, with the kind of their values: a name of `SHAPES`, `NAME by name`, `list of NAME`,
   * `image or colours`, or `data`, which is copied as it stands, less what `NEVER` names.
   */
  readonly keys: Readonly<Record<string, string>>
}

const data = (...names: readonly string[]): Record<string, string> =>
  Object.fromEntries(names.map((name) => [name, 'data']))

export const SHAPES = {
  resources: {
    is: 'dictionary',
    keys: {
      ExtGState: 'graphics by name',
      ColorSpace: 'data',
      Pattern: 'pattern by name',
      Shading: 'shading by name',
      XObject: 'drawing by name',
      Font: 'font by name',
      Properties: 'empty by name',
      ...data('ProcSet'),
    },
  },
  graphics: {
    is: 'dictionary',
    keys: {
      ...data('Type', 'LW', 'LC', 'LJ', 'ML', 'D', 'RI', 'OP', 'op', 'OPM', 'BG', 'BG2', 'UCR', 'UCR2', 'TR', 'TR2'),
      ...data('HT', 'FL', 'SM', 'SA', 'BM', 'CA', 'ca', 'AIS', 'TK'),
      Font: 'list of font',
      SMask: 'mask',
    },
  },
  mask: { is: 'dictionary', keys: { ...data('Type', 'S', 'BC', 'TR'), G: 'drawing' } },
  pattern: {
    is: 'dictionary or stream',
    keys: {
      ...data('Type', 'PatternType', 'PaintType', 'TilingType', 'BBox', 'XStep', 'YStep', 'Matrix'),
      Resources: 'resources',
      Shading: 'shading',
      ExtGState: 'graphics',
    },
  },
  shading: {
    is: 'dictionary or stream',
    keys: {
      ...data('ShadingType', 'ColorSpace', 'Background', 'BBox', 'AntiAlias', 'Coords', 'Domain', 'Function'),
      ...data('Extend', 'Matrix', 'BitsPerCoordinate', 'BitsPerComponent', 'BitsPerFlag', 'Decode', 'VerticesPerRow'),
    },
  },
  /** An image or a form: an XObject. */
  drawing: {
    is: 'stream',
    keys: {
      ...data('Type', 'Name', 'Width', 'Height', 'ColorSpace', 'BitsPerComponent', 'Intent', 'ImageMask'),
      ...data('Decode', 'Interpolate', 'SMaskInData', 'Matte', 'FormType', 'BBox', 'Matrix', 'Group'),
      Mask: 'image or colours',
      SMask: 'drawing',
      Resources: 'resources',
    },
  },
  font: {
    is: 'dictionary',
    keys: {
      ...data('Type', 'Subtype', 'Name', 'BaseFont', 'FirstChar', 'LastChar', 'Widths', 'FontDescriptor', 'Encoding'),
      ...data('ToUnicode', 'CIDSystemInfo', 'DW', 'W', 'DW2', 'W2', 'CIDToGIDMap', 'FontBBox', 'FontMatrix'),
      DescendantFonts: 'list of font',
      CharProcs: 'glyph by name',
      Resources: 'resources',
    },
  },
  glyph: { is: 'stream', keys: {} },
  content: { is: 'stream', keys: {} },
  empty: { is: 'dictionary', keys: {} },
} as const satisfies Record<string, Shape>

/** Of every stream. `F` would be a file beside this one. */
export const STREAM_KEYS: ReadonlySet<string> = new Set(['Filter', 'DecodeParms'])

/** Keys that are left out of plain data, and out of plain data only: elsewhere a font may bear such a name. */
export const NEVER: ReadonlySet<string> = new Set(['JS', 'AA', 'AF', 'EF', 'Metadata'])

/** Types of dictionaries that plain data cannot hold. */
export const NEVER_TYPES: ReadonlySet<string> = new Set([
  'Action',
  'Annot',
  'Catalog',
  'EmbeddedFile',
  'F',
  'Filespec',
  'Page',
  'Pages',
])
