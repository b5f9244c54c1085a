/** Subjects of the cautions that the program words in one place. */
export type PlanCaution =
  | 'height'
  | 'live-conductors'
  | 'energised-batteries'
  | 'authority'
  | 'electrician'
  | 'structural-engineer'

/** What is live while a step is done. */
export type PlanState = 'not_proved_dead' | 'dead' | 'open_strings_live' | 'closed_strings_off' | 'on_after_permission'

/** One line with a check box. */
export interface PlanTask {
  /** Stable name of a task of safety or of a test, '' for the others: `test.insulation`. */
  readonly id: string
  readonly says: string
  /** Source of the number or rule, '' when the line is plain craft. */
  readonly source: string
}

export interface PlanQuantity {
  readonly what: string
  readonly count: number
  readonly unit: string
}

/** One step of the work, in order. */
export interface PlanStep {
  readonly id: string
  readonly title: string
  readonly kind: 'work' | 'inspection'
  readonly state: PlanState
  readonly tools: readonly string[]
  readonly quantities: readonly PlanQuantity[]
  readonly tasks: readonly PlanTask[]
  readonly cautions: readonly PlanCaution[]
  /** Where the work stops until somebody else has acted; null when it goes straight on. */
  readonly stop: string | null
}

export interface MountPosition {
  readonly mount: string
  readonly plane: string
  readonly rail: string
  /** The one it stands on, or the nearest. */
  readonly rafter: number
  readonly stands_on: 'rafter' | 'seam' | 'sheathing'
  /** From the left end of the eave, and up the slope. */
  readonly x_in: number
  readonly y_in: number
}

/** Open-circuit voltage to expect on the meter. */
export interface VoltageReading {
  readonly what: string
  readonly modules: number
  readonly cell_c: number
  readonly voc_v: number
  /** What the meter may show: 5 % to each side, and nearer to the full string than to one with a module fewer. */
  readonly low_v: number
  readonly high_v: number
  /** What one module fewer in the string reads; null for a single module. */
  readonly one_module_less_v: number | null
}

/** Insulation resistance of one string against ground. */
export interface InsulationValue {
  readonly what: string
  /** 1.25 x Voc at standard test conditions, V. */
  readonly raised_voc_v: number
  /** Test voltage of the table, and what may be used: no more than the maximum system voltage; null when that is not stated. */
  readonly table_test_v: number
  readonly test_v: number | null
  readonly max_system_v: number | null
  readonly least_mohm: number
}

/** Currents of one string in full sun at 25 C cells. */
export interface CurrentReading {
  readonly what: string
  readonly isc_a: number | null
  readonly imp_a: number | null
  /** Change of Isc with the cells' temperature, percent per C; null when the data sheet is not stated to have it. */
  readonly isc_pct_per_c: number | null
}

export interface FirstWeek {
  readonly month: number
  readonly expected_kwh: number
  readonly p10_kwh: number
  readonly p90_kwh: number
}

/** Result of `plan-work`; names and units are part of the JSON format. */
export interface WorkPlanValues {
  readonly steps: readonly PlanStep[]
  readonly mounts: readonly MountPosition[]
  readonly readings: readonly VoltageReading[]
  readonly insulation: readonly InsulationValue[]
  readonly currents: readonly CurrentReading[]
  readonly ac_voltage: { readonly nominal_v: number; readonly low_v: number; readonly high_v: number }
  readonly first_week: readonly FirstWeek[]
}
