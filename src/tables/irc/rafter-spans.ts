/** One line of the span table: largest horizontal spans, in, by dead load and size. */
export interface RafterSpanRow {
  readonly spacingIn: number
  readonly species: string
  readonly grade: string
  readonly spansIn: Readonly<Record<10 | 20, Readonly<Record<'2x4' | '2x6' | '2x8', number>>>>
}

const feet = (ft: number, inches: number): number => ft * 12 + inches

/**
 * Rafter spans for a roof live load of 20 psf with the ceiling attached (deflection span / 240); six of the table's lines.
 *
 * @source IBC 2018 table 2308.7.2(2), twin of IRC 2018 table R802.4.1(2) (read from a scan)
 */
export const RAFTER_SPANS_LIVE_20: readonly RafterSpanRow[] = [
  {
    spacingIn: 12,
    species: 'Douglas Fir-Larch',
    grade: 'No. 2',
    spansIn: {
      10: { '2x4': feet(9, 10), '2x6': feet(15, 6), '2x8': feet(20, 5) },
      20: { '2x4': feet(9, 10), '2x6': feet(14, 4), '2x8': feet(18, 2) },
    },
  },
  {
    spacingIn: 12,
    species: 'Hem-Fir',
    grade: 'No. 2',
    spansIn: {
      10: { '2x4': feet(9, 2), '2x6': feet(14, 5), '2x8': feet(19, 0) },
      20: { '2x4': feet(9, 2), '2x6': feet(14, 2), '2x8': feet(17, 11) },
    },
  },
  {
    spacingIn: 12,
    species: 'Southern Pine',
    grade: 'No. 2',
    spansIn: {
      10: { '2x4': feet(9, 5), '2x6': feet(14, 9), '2x8': feet(19, 6) },
      20: { '2x4': feet(9, 0), '2x6': feet(13, 6), '2x8': feet(17, 1) },
    },
  },
  {
    spacingIn: 12,
    species: 'Spruce-Pine-Fir',
    grade: 'No. 2',
    spansIn: {
      10: { '2x4': feet(9, 5), '2x6': feet(14, 9), '2x8': feet(19, 6) },
      20: { '2x4': feet(9, 5), '2x6': feet(14, 4), '2x8': feet(18, 2) },
    },
  },
  {
    spacingIn: 16,
    species: 'Douglas Fir-Larch',
    grade: 'No. 1',
    spansIn: {
      10: { '2x4': feet(9, 1), '2x6': feet(14, 4), '2x8': feet(18, 11) },
      20: { '2x4': feet(9, 1), '2x6': feet(13, 3), '2x8': feet(16, 10) },
    },
  },
  {
    spacingIn: 16,
    species: 'Douglas Fir-Larch',
    grade: 'No. 2',
    spansIn: {
      10: { '2x4': feet(8, 11), '2x6': feet(14, 1), '2x8': feet(18, 2) },
      20: { '2x4': feet(8, 6), '2x6': feet(12, 5), '2x8': feet(15, 9) },
    },
  },
]
