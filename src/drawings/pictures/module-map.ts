import type { Arrangement } from '../../roof/index.js'
import type { SystemModule } from '../../yield/index.js'
import { label, TYPE_PT } from '../layout/index.js'
import type { Primitive, Sheet } from '../model/index.js'
import { drawPlane, takenText, type DrawnPlane } from './map-plane.js'
import { LOSS_CLASSES } from './loss-shade.js'

/** What a picture of the modules' yields is drawn from. */
export interface ModuleMapInput {
  readonly arrangement: Arrangement
  /** Every module of the system. */
  readonly modules: readonly SystemModule[]
}

const MARGIN = 36
const GAP = 30
const HEAD = 82
/** Planes beside each other end before this, points; a wider plane makes the picture wider. */
const WIDEST = 1152
const NARROWEST = 620
const ROW_PT = 11

/** The roof with every module in its place, its yearly energy and what shade takes of it. */
export function moduleMap({ arrangement, modules }: ModuleMapInput): Sheet {
  const byId = new Map(modules.map((module) => [module.id, module]))
  const planes = Object.values(arrangement.planes)
    .map((plane) => ({ plane, placements: arrangement.modules.filter(({ roofPlane }) => roofPlane === plane.id) }))
    .filter(({ placements }) => placements.length > 0)
    .map(({ plane, placements }) => drawPlane(plane, placements, byId))
  const placed = new Set(arrangement.modules.map(({ id }) => id))
  const { drawn, widthPt, bottom } = besideEachOther(planes)
  const list = unplacedList(
    modules.filter(({ id }) => !placed.has(id)),
    bottom,
  )
  const heightPt = bottom + list.heightPt + MARGIN
  return {
    id: 'Modules',
    title: 'yearly energy of each module',
    size: { name: 'picture', widthPt, heightPt },
    frame: { x: 0, y: 0, width: widthPt, height: heightPt },
    scaleNote: '',
    viewports: [],
    paper: [...titles(), ...drawn, ...list.drawn],
  }
}

/** Rows of planes, each as far left as it fits. */
function besideEachOther(planes: readonly DrawnPlane[]): { drawn: Primitive[]; widthPt: number; bottom: number } {
  const drawn: Primitive[] = []
  let [left, top, tallest, widest] = [MARGIN, HEAD, 0, NARROWEST - MARGIN]
  for (const plane of planes) {
    if (left > MARGIN && left + plane.widthPt > WIDEST - MARGIN) {
      ;[left, top, tallest] = [MARGIN, top + tallest + GAP, 0]
    }
    drawn.push(...plane.at(left, top))
    widest = Math.max(widest, left + plane.widthPt)
    tallest = Math.max(tallest, plane.heightPt)
    left += plane.widthPt + GAP
  }
  return { drawn, widthPt: Math.ceil(widest + MARGIN), bottom: Math.ceil(top + tallest) }
}

/** Arrays whose modules have no places: one line each, as all of their modules are taken to see the same. */
function unplacedList(modules: readonly SystemModule[], bottom: number): { drawn: Primitive[]; heightPt: number } {
  if (modules.length === 0) return { drawn: [], heightPt: 0 }
  const arrays = [...new Set(modules.map(({ array }) => array))]
  const rows = arrays.map((array) => {
    const own = modules.filter((module) => module.array === array)
    const span = (written: (module: SystemModule) => string): string => {
      const ordered = own.toSorted((a, b) => a.ac_kwh - b.ac_kwh).map(written)
      const [first, last] = [ordered[0] ?? '', ordered.at(-1) ?? '']
      return first === last ? first : `${first} to ${last}`
    }
    const energy = span((module) => module.ac_kwh.toFixed(0))
    const light = span((module) => takenText(module.light_loss_pct))
    const mismatch = span((module) => takenText(module.mismatch_loss_pct))
    return `${array}: ${own.length} module${own.length === 1 ? '' : 's'}, ${energy} kWh a year each; light ${light} %, mismatch ${mismatch} %`
  })
  const top = bottom + 16
  return {
    drawn: [
      label(MARGIN, top, 'Arrays whose modules have no places', { sizePt: TYPE_PT.head, face: 'bold' }),
      ...rows.map((text, index) => label(MARGIN, top + 16 + index * ROW_PT, text)),
    ],
    heightPt: 16 + 16 + rows.length * ROW_PT,
  }
}

function titles(): Primitive[] {
  return [
    label(MARGIN, 16, 'Yearly energy of each module, and what shade takes', { sizePt: TYPE_PT.title, face: 'bold' }),
    label(
      MARGIN,
      37,
      'kWh AC in the first year. Light: taken by shade, of that on the free plane. Mism.: taken by part shadows and by other modules of the string.',
      { sizePt: TYPE_PT.small },
    ),
    label(MARGIN, 59, 'Both losses together:', { valign: 'middle' }),
    ...LOSS_CLASSES.flatMap(({ says, look }, index): Primitive[] => {
      const x = MARGIN + 88 + index * 94
      return [
        { kind: 'rectangle', x, y: 53, width: 20, height: 12, pen: 'thin', ...look },
        label(x + 25, 59, says, { valign: 'middle' }),
      ]
    }),
  ]
}
