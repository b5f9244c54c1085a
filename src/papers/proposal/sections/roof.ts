import { roofPicture, type PicturedPlane } from '../../charts/index.js'
import { bodyWidthPt, type PageBlock } from '../../pages/index.js'
import type { Offer } from '../offer.js'

const MOST_PT = 210

/** The roof with its modules. */
export function roofBlocks({ arrangement, values, say, textPt }: Offer): PageBlock[] {
  const planes = Object.values(arrangement.planes)
    .map((plane) => ({ plane, modules: arrangement.modules.filter(({ roofPlane }) => roofPlane === plane.id) }))
    .filter(({ modules }) => modules.length > 0)
  const heading = { kind: 'heading', text: say.text('roof_title') } as const
  if (planes.length === 0) {
    const text = say.text('roof_none', { modules: say.number(values.size.modules) })
    return [heading, { kind: 'text', text }]
  }
  const turned = (degrees: number): string => say.number(degrees)
  const pictured = planes.map(({ plane, modules }): PicturedPlane => ({
    name: say.text('roof_plane', { plane: plane.id, modules: say.number(modules.length) }),
    facing: say.text('roof_facing', { azimuth: turned(plane.azimuthDeg), tilt: turned(plane.tiltDeg) }),
    azimuthDeg: plane.azimuthDeg,
    corners: plane.corners,
    things: plane.keepOuts.filter(({ kind }) => kind === 'obstruction').map(({ thing }) => thing),
    modules,
  }))
  const says = planes.map(({ plane, modules }) =>
    say.text('roof_plane_says', {
      plane: plane.id,
      modules: say.number(modules.length),
      azimuth: turned(plane.azimuthDeg),
      tilt: turned(plane.tiltDeg),
    }),
  )
  const picture = roofPicture(pictured, MOST_PT, textPt)
  return [
    heading,
    {
      kind: 'figure',
      says: say.text('roof_says', { planes: says.join('; ') }),
      caption: say.text('roof_caption'),
      // The narrower paper needs the most height.
      heightPt: Math.max(...(['letter', 'a4'] as const).map((size) => picture(bodyWidthPt(size)).heightPt)),
      draw: (x, y, widthPt) => picture(widthPt).draw(x, y),
    },
  ]
}
