import type { ConductorMaterial } from '../../tables/nec/index.js'
import { SUPPLY_TAP, type Circuit, practice, type Job } from '../system/index.js'
import type { RacewaySegment } from './raceway-segment.js'
import { inchesOf } from '../../values/index.js'

/** Length that is taken when none is stated, ft. */
const USUAL_LENGTH_FT = 10

/** The way of the conductors of a supply-side connection, with what is not stated as assumptions. */
export function supplyTapSegment(job: Job, tap: Circuit): RacewaySegment {
  const { connection } = job.electrical
  const stated = connection?.tap ?? {}
  const where = 'electrical.connection.tap'
  const assume = <T extends string>(key: string, value: T, why: string): T =>
    job.worksheet.assume({ path: `${where}.${key}`, value, unit: '', why, source: practice('') })
  const lengthFt =
    connection?.overcurrent_device_distance_ft ??
    job.worksheet.assume({
      path: 'electrical.connection.overcurrent_device_distance_ft',
      value: USUAL_LENGTH_FT,
      unit: 'ft',
      why: 'The longest that the editions with a limit allow in a dwelling; it counts for wire, voltage and straps only',
      source: job.nec('supplySide'),
    })
  return {
    id: `${SUPPLY_TAP}.to_device`,
    run: SUPPLY_TAP,
    where,
    sizeWhere: 'electrical.connection.conductor_size',
    lengthWhere: 'electrical.connection.overcurrent_device_distance_ft',
    stated: {
      ...stated,
      location:
        stated.location ??
        assume('location', 'outdoor_wall', 'Beside the meter on the outside wall, wet inside the raceway'),
      raceway: stated.raceway ?? assume('raceway', 'EMT', 'Metal raceway ahead of the first overcurrent device'),
      insulation: stated.insulation ?? assume('insulation', 'THWN-2', 'THWN-2, rated 90 deg C wet and dry'),
      material: supplyTapMaterial(job),
      length_ft: lengthFt,
      ...(connection?.conductor_size === undefined ? {} : { size_awg: connection.conductor_size }),
    },
    circuits: [tap],
    // The neutral of a service goes to its disconnect, 250.24(C).
    neutral: true,
    developedIn: inchesOf(lengthFt),
  }
}

/** Metal of the conductors of a supply-side connection, with copper as an assumption where none is stated. */
export function supplyTapMaterial(job: Job): ConductorMaterial {
  return (
    job.electrical.connection?.conductor_material ??
    job.worksheet.assume({
      path: 'electrical.connection.conductor_material',
      value: 'copper' as const,
      unit: '',
      why: 'Copper where no metal is stated',
      source: practice(''),
    })
  )
}
