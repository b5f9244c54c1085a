import type { Source, SourceStanding } from '../../worksheet/index.js'

/** How the lines of a layer run unless a figure says otherwise. */
export type Linetype = 'CONTINUOUS' | 'DASHED' | 'HIDDEN' | 'CENTER' | 'PHANTOM' | 'DOT'

/** A layer of a drawing for a CAD program. */
export interface Layer {
  /** Discipline, major group, minor groups: `E-PVAR-MODL`. */
  readonly name: string
  readonly holds: string
  /** Number of the colour in the palette of 255 that CAD programs share. */
  readonly color: number
  readonly weightMm: number
  readonly linetype: Linetype
  /** What the name, colour and weight rest on; `own` is a group of four letters that the guideline lets the user add. */
  readonly standing: SourceStanding | 'own'
  readonly plots?: false
}

/** @source Layer guideline of the US national CAD standard */
export const LAYER_SOURCE: Source = {
  document: 'US National CAD Standard, layer guidelines',
  place: 'names from memory or from public layer lists; the standard itself was not read',
  standing: 'from memory',
}

type Row = readonly [
  name: string,
  holds: string,
  color: number,
  weightMm: number,
  linetype: Linetype,
  standing: Layer['standing'],
]

const layer = ([name, holds, color, weightMm, linetype, standing]: Row): Layer => ({
  name,
  holds,
  color,
  weightMm,
  linetype,
  standing,
})

/** The layers of the packet by what lies on them. */
export const LAYERS = {
  lotLine: layer(['C-PROP-LINE', 'Lot lines', 7, 0.5, 'PHANTOM', 'from memory']),
  building: layer(['C-BLDG', 'Outlines of buildings', 7, 0.5, 'CONTINUOUS', 'from memory']),
  driveway: layer(['C-DRIV', 'Driveways', 8, 0.25, 'CONTINUOUS', 'from memory']),
  street: layer(['C-ROAD', 'Streets of the vicinity sketch', 8, 0.25, 'CONTINUOUS', 'from memory']),
  siteObject: layer(['C-SITE-OBJT', 'Trees and other things that shade', 3, 0.25, 'HIDDEN', 'own']),
  overhead: layer(['E-SITE-OVHD', 'Overhead lines, their supports and zones', 1, 0.35, 'CONTINUOUS', 'from memory']),
  roofOutline: layer(['A-ROOF-OTLN', 'Outlines of roof planes', 7, 0.5, 'CONTINUOUS', 'from memory']),
  roofObject: layer(['A-ROOF-EQPM', 'Vents, skylights, chimneys', 8, 0.25, 'CONTINUOUS', 'from memory']),
  roofPath: layer(['A-ROOF-PATH', 'Fire access pathways, setbacks, ladder places', 1, 0.25, 'DASHED', 'own']),
  module: layer(['E-PVAR-MODL', 'Modules', 5, 0.25, 'CONTINUOUS', 'own']),
  rail: layer(['E-PVAR-RAIL', 'Rails and splices', 8, 0.18, 'CENTER', 'own']),
  rafter: layer(['S-FRAM-RAFT', 'Rafters', 8, 0.18, 'HIDDEN', 'own']),
  mount: layer(['S-ANCH-MNTS', 'Mounts and their fasteners', 1, 0.35, 'CONTINUOUS', 'own']),
  detail: layer(['S-DETL', 'Structural details', 7, 0.35, 'CONTINUOUS', 'from memory']),
  equipment: layer(['E-POWR-EQPM', 'Inverters, disconnects, meters, boxes', 1, 0.35, 'CONTINUOUS', 'secondary']),
  panel: layer(['E-POWR-PANL', 'Panels', 1, 0.35, 'CONTINUOUS', 'secondary']),
  circuit: layer(['E-POWR-CIRC', 'Conductors and raceways', 1, 0.25, 'CONTINUOUS', 'secondary']),
  ground: layer(['E-GRND', 'Grounding', 3, 0.25, 'DASHED', 'from memory']),
  oneLine: layer(['E-1LIN', 'One-line diagram', 7, 0.35, 'CONTINUOUS', 'from memory']),
  oneLineExisting: layer(['E-1LIN-E', 'One-line diagram, what is there already', 8, 0.25, 'CONTINUOUS', 'from memory']),
  warningLabel: layer(['E-ANNO-LABL', 'Warning labels and plaques', 7, 0.35, 'CONTINUOUS', 'own']),
  text: layer(['G-ANNO-TEXT', 'Text', 3, 0.25, 'CONTINUOUS', 'secondary']),
  dimension: layer(['G-ANNO-DIMS', 'Dimensions', 3, 0.18, 'CONTINUOUS', 'secondary']),
  note: layer(['G-ANNO-NOTE', 'Notes and leaders', 3, 0.18, 'CONTINUOUS', 'secondary']),
  keynote: layer(['G-ANNO-KEYN', 'Keyed notes', 3, 0.18, 'CONTINUOUS', 'from memory']),
  symbol: layer(['G-ANNO-SYMB', 'North arrows, scale bars, marks', 3, 0.25, 'CONTINUOUS', 'from memory']),
  legend: layer(['G-ANNO-LEGN', 'Legends', 3, 0.18, 'CONTINUOUS', 'from memory']),
  schedule: layer(['G-ANNO-SCHD', 'Schedules and tables', 3, 0.18, 'CONTINUOUS', 'from memory']),
  revision: layer(['G-ANNO-REVC', 'Clouds and marks of revisions', 1, 0.35, 'CONTINUOUS', 'from memory']),
  title: layer(['G-ANNO-TITL', 'Titles of drawings', 3, 0.25, 'CONTINUOUS', 'secondary']),
  titleBlock: layer(['G-ANNO-TTLB', 'Frame and title block', 7, 0.5, 'CONTINUOUS', 'from memory']),
  noPlot: {
    ...layer(['G-ANNO-NPLT', 'Edges of views, not plotted', 9, 0.18, 'CONTINUOUS', 'from memory']),
    plots: false,
  },
} as const satisfies Readonly<Record<string, Layer>>

export type LayerKey = keyof typeof LAYERS

/** Layers of what is written about things; all else holds the things themselves. */
const ANNOTATION: ReadonlySet<LayerKey> = new Set([
  'text',
  'dimension',
  'note',
  'keynote',
  'symbol',
  'legend',
  'schedule',
  'revision',
  'title',
  'titleBlock',
  'noPlot',
  'warningLabel',
])

export const isAnnotation = (key: LayerKey): boolean => ANNOTATION.has(key)
