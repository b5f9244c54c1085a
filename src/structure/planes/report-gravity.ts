import { ROOF_LIVE_LOAD_PSF } from '../../tables/irc/index.js'
import type { PoundsPerSquareFoot } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { gravityChangePct } from '../loads/index.js'
import { planeAreaFt2 } from '../model/index.js'
import type { FramingSpec } from '../rafters/index.js'
import type { PlaneModel } from './plane-model.js'

/** Writes the change of the plane's whole gravity load on the worksheet. */
export function reportGravity(
  plane: PlaneModel,
  framing: FramingSpec,
  arrayDeadPsf: PoundsPerSquareFoot,
  snowPsf: PoundsPerSquareFoot,
  worksheet: Worksheet,
): void {
  const roofAreaFt2 = planeAreaFt2(plane.geometry)
  const arrayAreaFt2 = plane.modules.reduce((sum, m) => sum + m.widthFt * m.heightFt, 0)
  const input = {
    roofAreaFt2,
    arrayAreaFt2,
    existingDeadPsf: framing.existingDeadPsf,
    livePsf: ROOF_LIVE_LOAD_PSF,
    snowPsf,
    arrayDeadPsf,
  }
  worksheet.step({
    id: `structure.${plane.geometry.id}.gravity-change`,
    says: 'Change of the gravity load of the plane, live load left out under the modules',
    formula:
      'change = area of array (array + snow - larger of 20 psf and snow) / (area of plane (D + larger of 20 psf and snow))',
    inputs: [
      { symbol: 'area of plane', value: roofAreaFt2, unit: 'ft2', from: `roof_planes.${plane.geometry.id}.outline` },
      { symbol: 'area of array', value: arrayAreaFt2, unit: 'ft2', from: 'arrays' },
      { symbol: 'array', value: arrayDeadPsf, unit: 'psf', from: 'equipment' },
      {
        symbol: 'D',
        value: framing.existingDeadPsf,
        unit: 'psf',
        from: `structure.framing.${plane.geometry.id}.existing_dead_psf`,
      },
      { symbol: 'snow', value: snowPsf, unit: 'psf', from: `structure.${plane.geometry.id}.snow` },
    ],
    result: { symbol: 'change', value: gravityChangePct(input), unit: '%' },
    source: { document: 'IBC 2018', place: '1607.13.5.1', standing: 'secondary' },
    limits: 'for information; the check is that of the worst rafter',
  })
}
