import { StageError } from '../../worksheet/index.js'
import { finite } from '../system/index.js'

/** A nameplate as the project states it, in one of three ways. */
export interface Nameplate {
  readonly rating_va?: number | undefined
  readonly rating_w?: number | undefined
  readonly current_a?: number | undefined
  readonly voltage_v?: number | undefined
}

/** A load with the place that it comes from. */
export interface Rating {
  readonly va: number
  readonly from: string
}

/**
 * Apparent power of a nameplate.
 *
 * @param heats Whether it takes no more VA than W, so that a rating in W may be used.
 * @throws StageError when it is stated in none or more than one way, or in W where the VA are more.
 */
export function nameplateVa(plate: Nameplate, where: string, heats: boolean): Rating {
  const ways = [plate.rating_va, plate.rating_w, plate.current_a].filter((value) => value !== undefined)
  if (ways.length !== 1)
    throw new StageError(
      where,
      `the rating is stated ${ways.length === 0 ? 'not at all' : `in ${ways.length} ways`}; rating_va, rating_w, or current_a with voltage_v is wanted`,
      'Read it on the nameplate and state it once',
    )
  if (plate.rating_w !== undefined && !heats)
    throw new StageError(
      `${where}.rating_w`,
      'motors and compressors take more VA than W, so a rating in W is not enough',
      'State rating_va, or current_a and voltage_v from the nameplate',
    )
  const { current_a: amperes, voltage_v: volts } = plate
  if ((amperes === undefined) !== (volts === undefined))
    throw new StageError(where, 'current_a and voltage_v belong together', 'State both from the nameplate, or neither')
  if (amperes !== undefined && volts !== undefined)
    return { va: positiveVa(amperes * volts, where), from: `${where}: ${amperes} A x ${volts} V` }
  const key = plate.rating_va === undefined ? 'rating_w' : 'rating_va'
  return { va: positiveVa(plate.rating_va ?? plate.rating_w ?? Number.NaN, `${where}.${key}`), from: `${where}.${key}` }
}

function positiveVa(value: number, where: string): number {
  if (finite(value, where) > 0) return value
  throw new StageError(where, `the rating is ${value} VA; it must be above 0`, 'Read it on the nameplate')
}
