/** Subjects of the cautions that the program words in one place. */
export type PlanCaution = 'height' | 'live-conductors' | 'authority' | 'electrician' | 'structural-engineer'

/** One line with a check box. */
export interface PlanTask {
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
  readonly rafter: number
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
  /** What one module fewer in the string reads; null for a single module. */
  readonly one_module_less_v: number | null
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
  readonly ac_voltage: { readonly nominal_v: number; readonly low_v: number; readonly high_v: number }
  readonly first_week: readonly FirstWeek[]
}
