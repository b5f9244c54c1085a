import type { AcBranch, Inverter, InverterUnit } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Amperes } from '../../values/index.js'
import {
  balancedPairs,
  highestLineA,
  inTurn,
  onePair,
  serviceOf,
  type Job,
  type Lines,
  type PairCurrents,
} from '../system/index.js'

/** Lines of a branch whose inverters take the three pairs in turn. */
export const TURNS = 'ABC' as const

/**
 * Lines of a branch; undefined on a single-phase service.
 *
 * @throws StageError when a three-phase service has a branch that does not say, or a single-phase service one that does.
 */
export function branchLines(
  job: Job,
  { phases: stated, where }: Pick<AcBranch, 'phases'> & { readonly where: string },
  inverter: Inverter,
): Lines | undefined {
  if (serviceOf(job).phases === 1) return refuseLines(stated, where)
  if (stated === undefined)
    throw new StageError(
      `${where}.phases`,
      'the lines of the branch are not stated, and its current depends on them',
      'State AB, BC or CA for a two-wire branch, or ABC when its trunk brings all three lines to the inverters in turn',
    )
  if (inverter.phases === 3 && stated !== TURNS)
    throw new StageError(`${where}.phases`, `three-phase inverters have no place on ${stated} alone`, 'State ABC')
  return stated
}

/** Lines of the output of an inverter unit; undefined on a single-phase service. */
export function unitLines(
  job: Job,
  where: string,
  { phases: stated }: InverterUnit,
  inverter: Inverter,
): Lines | undefined {
  if (serviceOf(job).phases === 1) return refuseLines(stated, where)
  if (inverter.phases === 3) {
    if (stated === undefined) return TURNS
    throw new StageError(`${where}.phases`, `a three-phase inverter is on all lines, not on ${stated}`, 'Take it out')
  }
  if (stated === undefined)
    throw new StageError(
      `${where}.phases`,
      'the two lines of the single-phase inverter on a three-phase service are not stated',
      'State AB, BC or CA; spread equal inverters over the three pairs',
    )
  return stated
}

function refuseLines(stated: Lines | undefined, where: string): undefined {
  if (stated === undefined) return undefined
  throw new StageError(
    `${where}.phases`,
    `lines ${stated} belong to a three-phase service, and the project states a single-phase one`,
    'Take it out, or state electrical.service.phases: 3 and system: wye',
  )
}

/** Currents between the lines of equal inverters. @param eachA Rated current of one in each of its lines, A. */
export function pairsOn(lines: Lines | undefined, count: number, eachA: Amperes, inverter: Inverter): PairCurrents {
  const allA = count * eachA
  switch (lines) {
    case undefined:
    case 'AB':
      return onePair(allA)
    case 'BC':
      return { ab: 0, bc: allA, ca: 0 }
    case 'CA':
      return { ab: 0, bc: 0, ca: allA }
    case 'ABC':
      return inverter.phases === 3 ? balancedPairs(allA) : inTurn(count, eachA)
  }
}

/**
 * Most equal inverters whose highest line current is within a limit: n = limit / I, or n x sqrt(3) x I in each pair when
 * they take the three pairs in turn.
 */
export function mostInverters(lines: Lines | undefined, inverter: Inverter, eachA: Amperes, limitA: Amperes): number {
  if (lines !== TURNS || inverter.phases === 3) return Math.floor(limitA / eachA + 1e-9)
  const fits = (count: number): boolean => highestLineA(inTurn(count, eachA)) <= limitA * (1 + 1e-9)
  let most = 0
  while (fits(most + 1)) most += 1
  return most
}
