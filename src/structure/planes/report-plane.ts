import type { Worksheet } from '../../worksheet/index.js'
import type { PlaneModel } from './plane-model.js'
import {
  pressureCoefficient,
  arrayEdgeFactor,
  solarEqualisation,
  LARGEST_AREA_FT2,
  windPressurePsf,
} from '../wind/index.js'
import type { SiteLoads } from '../loads/index.js'
import { reportSnow } from './report-snow.js'
import type { Inches, PoundsPerSquareFoot, SquareFeet } from '../../values/index.js'

/** A zone as it is reported: the area and exposure that its loads were taken at. */
export interface ReportedZone {
  readonly zone: string
  readonly exposed: boolean
  readonly areaFt2: SquareFeet
  readonly upliftPsf: PoundsPerSquareFoot
  readonly downPsf: PoundsPerSquareFoot
  readonly spanIn: Inches
  readonly governs: string
}

/** Writes snow and wind by zone of one plane on the worksheet. */
export function reportPlane(
  site: SiteLoads,
  plane: PlaneModel,
  zones: readonly ReportedZone[],
  worksheet: Worksheet,
): void {
  reportSnow(site, plane, worksheet)
  for (const zone of zones) reportZone(site, plane, zone, worksheet)
}

function reportZone(site: SiteLoads, plane: PlaneModel, zone: ReportedZone, worksheet: Worksheet): void {
  const { edition } = site
  const id = `structure.${plane.geometry.id}.zone-${zone.zone}`
  const area = Math.min(zone.areaFt2, LARGEST_AREA_FT2)
  const solar = edition !== 'ASCE 7-10'
  for (const direction of ['uplift', 'down'] as const) {
    const coefficient = pressureCoefficient(plane.wind.shape, zone.zone, area, direction)
    if (coefficient === undefined) continue
    worksheet.step({
      id: `${id}.${direction}`,
      says: `Wind ${direction === 'uplift' ? 'away from' : 'towards'} the roof in zone ${zone.zone}, strength level`,
      formula: solar ? 'p = larger of qh |GCp| gammaE gammaa and 16 psf' : 'p = larger of qh (|GCp| + 0.18) and 16 psf',
      inputs: [
        { symbol: 'qh', value: plane.wind.velocityPressurePsf, unit: 'psf', from: 'structure.qh' },
        { symbol: 'A', value: area, unit: 'ft2', from: 'mount spacing times carried width' },
        { symbol: 'GCp', value: coefficient.value, unit: '', from: `figure ${coefficient.figure}` },
        ...(solar
          ? [
              { symbol: 'gammaE', value: arrayEdgeFactor(zone.exposed), unit: '', from: 'section 29.4.4' },
              { symbol: 'gammaa', value: solarEqualisation(area), unit: '', from: 'figure 29.4-8' },
            ]
          : []),
      ],
      result: {
        symbol: 'p',
        value: windPressurePsf(plane.wind, zone.zone, area, zone.exposed, direction),
        unit: 'psf',
      },
      source: {
        document: edition,
        place: solar
          ? `eq. 29.4-7, figures ${coefficient.figure} and 29.4-8`
          : `eq. 30.4-1, figure ${coefficient.figure}`,
        standing: coefficient.standing,
      },
    })
  }
  worksheet.step({
    id: `${id}.span`,
    says: `Largest mount spacing in zone ${zone.zone}, in steps of the rafters, seams or lines that mounts stand on; the next one fails by: ${zone.governs}`,
    formula: 'largest multiple of their spacing up to which every check passes',
    inputs: [
      { symbol: 'uplift', value: zone.upliftPsf, unit: 'psf', from: `${id}.uplift` },
      { symbol: 'down', value: zone.downPsf, unit: 'psf', from: `${id}.down` },
    ],
    result: { symbol: 's', value: zone.spanIn, unit: 'in' },
    source: {
      document: 'Statics of continuous beams',
      place: '1.25 wL at a mount, w L^2 / 8 in the rail',
      standing: 'read',
    },
  })
}
