import { type Feet, feetOf, type Inches } from '../../values/index.js'
import type { RafterCase } from './rafter-cases.js'
import { placeAt, type SolvedPart } from './rafter-parts.js'
import type { RafterPlace } from './rafter-place.js'
import { type LoadShare, sharesAt } from './rafter-sums.js'

export type RafterCheckName = 'bending' | 'shear' | 'bearing' | 'deflection'

/** The worst of one check of a rafter. */
export interface RafterCheck {
  readonly check: RafterCheckName
  readonly combination: string
  readonly demand: number
  readonly capacity: number
  readonly unit: 'psi' | 'in'
  readonly ratio: number
  /** Horizontal distance from the lower support, ft; negative on the overhang. */
  readonly atFt: Feet
  readonly place: RafterPlace
  /** What the figures are made of, for the proof. */
  readonly loadDuration: number
  /** CL of bending, 1 for other checks. */
  readonly stability: number
  /** lb-in for bending, lb for shear and bearing, in for deflection. */
  readonly action: number
  /** Whether a load without the array governs. */
  readonly isBare: boolean
}

/** What a rafter carries of what it can, combination by combination. */
export interface CombinationLine {
  readonly name: string
  readonly momentLbIn: number
  readonly stressPsi: number
  readonly allowablePsi: number
  readonly loadDuration: number
  readonly atFt: Feet
  /** What each load brings to the moment there, its factor in it. */
  readonly shares: () => readonly LoadShare[]
}

/** A line that holds its shares and no longer the beam that they are read from. */
export function withShares(line: CombinationLine): CombinationLine {
  const shares = line.shares()
  return { ...line, shares: () => shares }
}

export interface Figures {
  readonly demand: number
  readonly capacity: number
  readonly action: number
}

/** The worst of each check of a rafter and of each combination. */
export interface WorstOfRafter {
  readonly checks: readonly RafterCheck[]
  /** The worst bending of each combination. */
  readonly lines: readonly CombinationLine[]
  /** Largest force that lifts the rafter off the wall, lb; 0 when none does. */
  readonly upliftAtWallLb: number
}

/** Keeps the worst of each check. */
export class Worst {
  private readonly checks = new Map<RafterCheckName, RafterCheck>()
  private readonly lines = new Map<string, CombinationLine>()
  private readonly wallIn: Inches
  private liftLb = 0

  constructor(wallIn: Inches) {
    this.wallIn = wallIn
  }

  bending(
    solved: SolvedPart,
    each: RafterCase,
    xIn: Inches,
    { moment, stress, limit, stability }: { moment: number; stress: number; limit: number; stability: number },
  ): void {
    this.keep('bending', solved, each, xIn, { demand: stress, capacity: limit, action: moment }, stability)
    const held = this.lines.get(each.name)
    if (held !== undefined && held.stressPsi / held.allowablePsi >= stress / limit) return
    const atFt = feetOf(xIn - this.wallIn)
    const shares = (): LoadShare[] => sharesAt(solved, each, xIn)
    this.lines.set(each.name, {
      name: each.name,
      momentLbIn: moment,
      stressPsi: stress,
      allowablePsi: limit,
      loadDuration: each.loadDuration,
      atFt,
      shares,
    })
  }

  lift(lb: number): void {
    this.liftLb = Math.max(this.liftLb, lb)
  }

  keep(
    check: RafterCheckName,
    { part }: SolvedPart,
    each: RafterCase,
    xIn: Inches,
    { demand, capacity, action }: Figures,
    stability = 1,
  ): void {
    const ratio = demand / capacity
    const held = this.checks.get(check)
    if (held !== undefined && held.ratio >= ratio) return
    this.checks.set(check, {
      check,
      combination: each.name,
      demand,
      capacity,
      unit: check === 'deflection' ? 'in' : 'psi',
      ratio,
      atFt: feetOf(xIn - this.wallIn),
      place: placeAt(part, xIn),
      loadDuration: check === 'bearing' || check === 'deflection' ? 1 : each.loadDuration,
      stability,
      action,
      isBare: each.name.endsWith('without the array'),
    })
  }

  result(): WorstOfRafter {
    return {
      checks: [...this.checks.values()],
      lines: [...this.lines.values()],
      upliftAtWallLb: this.liftLb,
    }
  }
}
