import { StageError } from '../../worksheet/index.js'
import { racewayTableKind } from './choose-raceway.js'
import type { RacewaySegment, StatedSegment } from './raceway-segment.js'
import { methodRow } from './wiring-method.js'

/** Keys that mean something for cables only. */
const OF_CABLES = ['in_insulation', 'bundled_cables', 'cables_spaced'] as const
/** Keys that mean something for raceways only. */
const OF_RACEWAYS = ['trade_size', 'nipple', 'other_conductors', 'conductor_diameter_in'] as const

/**
 * Refuses keys that would do nothing with the wiring method of a segment.
 *
 * @throws StageError for such a key, or where the inside of FMC or IMC is stated by halves.
 */
export function checkMethodKeys({ stated, where }: RacewaySegment): void {
  const { form, name } = methodRow(stated.raceway)
  const refuse = (key: string, why: string, fix: string): never => {
    throw new StageError(`${where}.${key}`, why, fix)
  }
  for (const key of OF_CABLES)
    if (form !== 'cable' && stated[key] !== undefined)
      refuse(key, `${key} counts for cables, this is ${name}`, `Delete ${key}, or name a cable under raceway`)
  if (form === 'cable')
    for (const key of OF_RACEWAYS)
      if (stated[key] !== undefined) refuse(key, `${key} does not go with ${name}, which is no raceway`, otherKey(key))
  if (stated.cables_spaced === true && (stated.bundled_cables ?? 0) > 0)
    refuse('bundled_cables', 'cables that are spaced do not lie with others', 'Delete cables_spaced or bundled_cables')
  if (stated.markings !== undefined && !takesMarkings(stated))
    refuse('markings', `what ${name} is marked with changes nothing`, 'Delete markings')
  checkInside(stated, refuse)
}

const otherKey = (key: string): string =>
  key === 'other_conductors' ? 'State bundled_cables for other cables beside these' : `Delete ${key}`

const takesMarkings = ({ raceway }: StatedSegment): boolean => {
  const { wet, sun, buried, array } = methodRow(raceway)
  return [wet, sun, buried, array].includes('marked')
}

function checkInside(stated: StatedSegment, refuse: (key: string, why: string, fix: string) => never): void {
  const { inside_area_in2: areaIn2, inside_area_source: from, raceway: method } = stated
  const noTable = methodRow(method).form === 'raceway' && racewayTableKind(method) === undefined
  for (const key of ['inside_area_in2', 'inside_area_source'] as const)
    if (!noTable && stated[key] !== undefined)
      refuse(key, `the inside area of ${method} is not stated, it is in the tables or does not matter`, `Delete ${key}`)
  if (!noTable) return
  if (stated.trade_size === undefined)
    refuse(
      'trade_size',
      `the trade size of ${method} is not chosen: no table of its inside is held`,
      'State trade_size',
    )
  if ((areaIn2 === undefined) !== (from === undefined))
    refuse(
      areaIn2 === undefined ? 'inside_area_in2' : 'inside_area_source',
      'the inside area and its source go together',
      'State both, or neither',
    )
}
