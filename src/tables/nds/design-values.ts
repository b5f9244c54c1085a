import type { NominalSize } from './lumber.js'

/** Visual grades of dimension lumber. */
export type LumberGrade =
  | 'Select Structural'
  | 'No. 1 & Btr'
  | 'No. 1'
  | 'No. 2'
  | 'No. 3'
  | 'Stud'
  | 'Construction'
  | 'Standard'
  | 'Utility'

/** Reference design values of one grade, psi, before any factor. */
export interface DesignValues {
  /** Fb, bending. */
  readonly bendingPsi: number
  /** Ft, tension along the grain. */
  readonly tensionPsi: number
  /** Fv, shear along the grain. */
  readonly shearPsi: number
  /** Fc-perp, bearing across the grain. */
  readonly bearingPsi: number
  /** Fc, compression along the grain. */
  readonly compressionPsi: number
  /** E, for deflection. */
  readonly elasticityPsi: number
  /** Emin, for stability. */
  readonly stabilityPsi: number
}

type ByGrade = Readonly<Partial<Record<LumberGrade, DesignValues>>>

/** One line of a table, in its order: Fb, Ft, Fv, Fc-perp, Fc, E, Emin. */
const row = (
  ...[fb, ft, fv, across, fc, e, eMin]: readonly [number, number, number, number, number, number, number]
): DesignValues => ({
  bendingPsi: fb,
  tensionPsi: ft,
  shearPsi: fv,
  bearingPsi: across,
  compressionPsi: fc,
  elasticityPsi: e,
  stabilityPsi: eMin,
})

/**
 * Dimension lumber 2 to 4 in thick but for Southern Pine, before the size factor.
 *
 * Redwood holds the lower values (open grain), Hem-Fir (North) the smaller of its own and Hem-Fir, as its values were changed
 * in 2025. Construction, Standard and Utility are grades of lumber up to 4 in wide.
 *
 * @source NDS Supplement 2018 table 4A (secondary: two open encodings; Western Cedars Select Structural and No. 3, Douglas
 *   Fir-Larch (North) and Hem-Fir (North) from memory)
 */
export const LUMBER_VALUES: Readonly<Record<string, ByGrade>> = {
  'Douglas Fir-Larch': {
    'Select Structural': row(1500, 1000, 180, 625, 1700, 1_900_000, 690_000),
    'No. 1 & Btr': row(1200, 800, 180, 625, 1550, 1_800_000, 660_000),
    'No. 1': row(1000, 675, 180, 625, 1500, 1_700_000, 620_000),
    'No. 2': row(900, 575, 180, 625, 1350, 1_600_000, 580_000),
    'No. 3': row(525, 325, 180, 625, 775, 1_400_000, 510_000),
    Stud: row(700, 450, 180, 625, 850, 1_400_000, 510_000),
    Construction: row(1000, 650, 180, 625, 1650, 1_500_000, 550_000),
    Standard: row(575, 375, 180, 625, 1400, 1_400_000, 510_000),
    Utility: row(275, 175, 180, 625, 900, 1_300_000, 470_000),
  },
  'Douglas Fir-Larch (North)': {
    'Select Structural': row(1350, 825, 180, 625, 1900, 1_900_000, 690_000),
    'No. 1': row(850, 500, 180, 625, 1400, 1_600_000, 580_000),
    'No. 2': row(850, 500, 180, 625, 1400, 1_600_000, 580_000),
    'No. 3': row(475, 300, 180, 625, 825, 1_400_000, 510_000),
    Stud: row(650, 400, 180, 625, 900, 1_400_000, 510_000),
  },
  'Douglas Fir-South': {
    'Select Structural': row(1350, 900, 180, 520, 1600, 1_400_000, 510_000),
    'No. 1': row(925, 600, 180, 520, 1450, 1_300_000, 470_000),
    'No. 2': row(850, 525, 180, 520, 1350, 1_200_000, 440_000),
    'No. 3': row(500, 300, 180, 520, 775, 1_100_000, 400_000),
    Stud: row(675, 425, 180, 520, 850, 1_100_000, 400_000),
  },
  'Hem-Fir': {
    'Select Structural': row(1400, 925, 150, 405, 1500, 1_600_000, 580_000),
    'No. 1 & Btr': row(1100, 725, 150, 405, 1350, 1_500_000, 550_000),
    'No. 1': row(975, 625, 150, 405, 1350, 1_500_000, 550_000),
    'No. 2': row(850, 525, 150, 405, 1300, 1_300_000, 470_000),
    'No. 3': row(500, 300, 150, 405, 725, 1_200_000, 440_000),
    Stud: row(675, 400, 150, 405, 800, 1_200_000, 440_000),
    Construction: row(975, 600, 150, 405, 1550, 1_300_000, 470_000),
    Standard: row(550, 325, 150, 405, 1300, 1_200_000, 440_000),
    Utility: row(250, 150, 150, 405, 850, 1_100_000, 400_000),
  },
  'Hem-Fir (North)': {
    'Select Structural': row(1300, 775, 145, 405, 1500, 1_600_000, 580_000),
    'No. 1': row(975, 575, 145, 405, 1350, 1_500_000, 550_000),
    'No. 2': row(850, 525, 145, 405, 1300, 1_300_000, 470_000),
    'No. 3': row(500, 300, 145, 405, 725, 1_200_000, 440_000),
    Stud: row(675, 400, 145, 405, 800, 1_200_000, 440_000),
  },
  'Spruce-Pine-Fir': {
    'Select Structural': row(1250, 700, 135, 425, 1400, 1_500_000, 550_000),
    'No. 1': row(875, 450, 135, 425, 1150, 1_400_000, 510_000),
    'No. 2': row(875, 450, 135, 425, 1150, 1_400_000, 510_000),
    'No. 3': row(500, 250, 135, 425, 650, 1_200_000, 440_000),
    Stud: row(675, 350, 135, 425, 725, 1_200_000, 440_000),
    Construction: row(1000, 500, 135, 425, 1400, 1_300_000, 470_000),
    Standard: row(550, 275, 135, 425, 1150, 1_200_000, 440_000),
    Utility: row(275, 125, 135, 425, 750, 1_100_000, 400_000),
  },
  'Spruce-Pine-Fir (South)': {
    'Select Structural': row(1300, 575, 135, 335, 1200, 1_300_000, 470_000),
    'No. 1': row(875, 400, 135, 335, 1050, 1_200_000, 440_000),
    'No. 2': row(775, 350, 135, 335, 1000, 1_100_000, 400_000),
    'No. 3': row(450, 200, 135, 335, 575, 1_000_000, 370_000),
    Stud: row(600, 275, 135, 335, 625, 1_000_000, 370_000),
    Construction: row(875, 400, 135, 335, 1200, 1_000_000, 370_000),
    Standard: row(500, 225, 135, 335, 1000, 900_000, 330_000),
    Utility: row(225, 100, 135, 335, 675, 900_000, 330_000),
  },
  'Eastern Softwoods': {
    'Select Structural': row(1250, 575, 140, 335, 1200, 1_200_000, 440_000),
    'No. 1': row(775, 350, 140, 335, 1000, 1_100_000, 400_000),
    'No. 2': row(575, 275, 140, 335, 825, 1_100_000, 400_000),
    'No. 3': row(350, 150, 140, 335, 475, 900_000, 330_000),
    Stud: row(450, 200, 140, 335, 525, 900_000, 330_000),
  },
  'Western Woods': {
    'Select Structural': row(900, 400, 135, 335, 1050, 1_200_000, 440_000),
    'No. 1': row(675, 300, 135, 335, 950, 1_100_000, 400_000),
    'No. 2': row(675, 300, 135, 335, 900, 1_000_000, 370_000),
    'No. 3': row(375, 175, 135, 335, 525, 900_000, 330_000),
    Stud: row(525, 225, 135, 335, 575, 900_000, 330_000),
  },
  'Western Cedars': {
    'Select Structural': row(1000, 600, 155, 425, 1000, 1_100_000, 400_000),
    'No. 1': row(725, 425, 155, 425, 825, 1_000_000, 370_000),
    'No. 2': row(700, 425, 155, 425, 650, 1_000_000, 370_000),
    'No. 3': row(400, 250, 155, 425, 375, 900_000, 330_000),
    Stud: row(550, 325, 155, 425, 400, 900_000, 330_000),
  },
  Redwood: {
    'Select Structural': row(1100, 625, 160, 425, 1100, 1_100_000, 400_000),
    'No. 1': row(775, 450, 160, 425, 900, 1_100_000, 400_000),
    'No. 2': row(725, 425, 160, 425, 700, 1_000_000, 370_000),
    'No. 3': row(425, 250, 160, 425, 400, 900_000, 330_000),
    Stud: row(575, 325, 160, 425, 450, 900_000, 330_000),
  },
}

/**
 * Southern Pine by size; the size factor is in the values.
 *
 * @source Southern Pine use guide with the 2013 values, NDS Supplement 2018 table 4B (secondary)
 */
export const SOUTHERN_PINE_VALUES: Readonly<Record<NominalSize, ByGrade>> = {
  '2x4': {
    'Select Structural': row(2350, 1650, 175, 565, 1900, 1_800_000, 660_000),
    'No. 1': row(1500, 1000, 175, 565, 1650, 1_600_000, 580_000),
    'No. 2': row(1100, 675, 175, 565, 1450, 1_400_000, 510_000),
    'No. 3': row(650, 400, 175, 565, 850, 1_300_000, 470_000),
    Stud: row(650, 400, 175, 565, 850, 1_300_000, 470_000),
  },
  '2x6': {
    'Select Structural': row(2100, 1450, 175, 565, 1800, 1_800_000, 660_000),
    'No. 1': row(1350, 875, 175, 565, 1550, 1_600_000, 580_000),
    'No. 2': row(1000, 600, 175, 565, 1400, 1_400_000, 510_000),
    'No. 3': row(575, 350, 175, 565, 800, 1_300_000, 470_000),
    Stud: row(575, 350, 175, 565, 800, 1_300_000, 470_000),
  },
  '2x8': {
    'Select Structural': row(1950, 1350, 175, 565, 1700, 1_800_000, 660_000),
    'No. 1': row(1250, 800, 175, 565, 1500, 1_600_000, 580_000),
    'No. 2': row(925, 550, 175, 565, 1350, 1_400_000, 510_000),
    'No. 3': row(525, 325, 175, 565, 775, 1_300_000, 470_000),
  },
  '2x10': {
    'Select Structural': row(1700, 1150, 175, 565, 1650, 1_800_000, 660_000),
    'No. 1': row(1050, 700, 175, 565, 1450, 1_600_000, 580_000),
    'No. 2': row(800, 475, 175, 565, 1300, 1_400_000, 510_000),
    'No. 3': row(475, 275, 175, 565, 750, 1_300_000, 470_000),
  },
  '2x12': {
    'Select Structural': row(1600, 1100, 175, 565, 1650, 1_800_000, 660_000),
    'No. 1': row(1000, 650, 175, 565, 1400, 1_600_000, 580_000),
    'No. 2': row(750, 450, 175, 565, 1250, 1_400_000, 510_000),
    'No. 3': row(450, 250, 175, 565, 725, 1_300_000, 470_000),
  },
}
