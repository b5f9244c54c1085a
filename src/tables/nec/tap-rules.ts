/** A way to run tap conductors without a device at their start. */
export interface TapRule {
  readonly rule: string
  /** Part of section 240.21(B). */
  readonly detail: string
  readonly formula: string
  /** Longest tap, ft; undefined without a limit. */
  readonly withinFt: number | undefined
  /** Share of the feeder device that its ampacity must reach; undefined where it does not enter. */
  readonly ratio: number | undefined
  /** Whether that share counts only for a tap that leaves the enclosure. */
  readonly onlyOutside: boolean
  readonly countsLoad: boolean
  readonly oneDevice: boolean
  /** Whether it must lie in a raceway. */
  readonly raceway: boolean
  readonly outdoors: boolean
}

/**
 * The ways of 240.21(B) that a house uses.
 *
 * @source NEC 240.21(B)(1), (B)(2), (B)(5): 2017 and 2023 read
 */
export const tapRules: readonly TapRule[] = [
  {
    rule: '10 ft tap',
    detail: '(1)',
    formula: 'max(E, L, F / 10) <= Z; in a raceway; F / 10 only outside its enclosure',
    withinFt: 10,
    ratio: 1 / 10,
    onlyOutside: true,
    countsLoad: true,
    oneDevice: false,
    raceway: true,
    outdoors: false,
  },
  {
    rule: '25 ft tap',
    detail: '(2)',
    formula: 'max(E, L, F / 3) <= Z; one device',
    withinFt: 25,
    ratio: 1 / 3,
    onlyOutside: false,
    countsLoad: true,
    oneDevice: true,
    raceway: false,
    outdoors: false,
  },
  {
    rule: 'outside tap',
    detail: '(5)',
    formula: 'max(E, L) <= Z; outdoors; one device',
    withinFt: undefined,
    ratio: undefined,
    onlyOutside: false,
    countsLoad: true,
    oneDevice: true,
    raceway: false,
    outdoors: true,
  },
]
