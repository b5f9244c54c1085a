/** `pass` and `fail` by a limit; `look`: no limit decides, or it comes near one; `open`: not measured yet. */
export type Verdict = 'pass' | 'fail' | 'look' | 'open'

/** One line of a test: what is expected, and what was read. */
export interface RecordRow {
  readonly what: string
  readonly expected: string
  readonly limit: string
  /** null: still to be measured. */
  readonly measured: string | null
  readonly verdict: Verdict
  /** Why the verdict; '' when the limit says it. */
  readonly why: string
  /** Key of the project file of the reading. */
  readonly where: string
}

/** A test of the record. */
export interface RecordTest {
  readonly id: string
  readonly number: string
  readonly title: string
  readonly state: string
  /** Why this system has no such test; null when it has. */
  readonly left_out: string | null
  readonly tasks: readonly { readonly says: string; readonly source: string }[]
  readonly rows: readonly RecordRow[]
}

/** Open-circuit voltage of a string by cell temperature, V. */
export interface VocAtTemperature {
  readonly what: string
  readonly cell_c: number
  readonly voc_v: number
  readonly low_v: number
  readonly high_v: number
}

export interface SerialNumber {
  readonly kind: 'module' | 'inverter' | 'other'
  readonly unit: string
  readonly serial: string | null
}

/** A row of a table as texts by column. */
export interface HandoverTable {
  readonly columns: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** Result of `write-handover`; names and units are part of the JSON format. */
export interface HandoverValues {
  /** Day of the tests, year-month-day; null when it is not stated. */
  readonly date: string | null
  readonly facts: readonly (readonly [label: string, value: string])[]
  readonly people: readonly (readonly [role: string, who: string])[]
  readonly conditions: readonly (readonly [label: string, value: string])[]
  readonly instruments: HandoverTable
  readonly tests: readonly RecordTest[]
  readonly voc_table: readonly VocAtTemperature[]
  readonly counts: Readonly<Record<Verdict, number>>
  readonly torques: readonly RecordRow[]
  readonly as_built: {
    readonly equipment: HandoverTable
    readonly strings: HandoverTable
    readonly conductors: HandoverTable
  }
  readonly serials: readonly SerialNumber[]
  readonly maintenance: readonly {
    readonly when: string
    readonly what: string
    readonly who: string
    readonly source: string
  }[]
  readonly emergency: EmergencySheet
  readonly owner: OwnerSummary
  readonly energising: readonly string[]
  readonly switching_off: readonly string[]
  /** Figures of safe work, each with its source and standing. */
  readonly safety: readonly { readonly says: string; readonly source: string }[]
}

/** What those need who come with a hose. */
export interface EmergencySheet {
  readonly address: string
  readonly shut_down: readonly string[]
  readonly where: readonly (readonly [what: string, place: string])[]
  readonly stays_live: readonly string[]
  readonly call: readonly string[]
}

/** What the owner needs on one page. */
export interface OwnerSummary {
  readonly months: readonly { readonly month: number; readonly expected_kwh: number; readonly week: string }[]
  readonly year_kwh: number
  readonly look_at: readonly string[]
  readonly switch_off: readonly string[]
  readonly call: readonly (readonly [role: string, who: string])[]
  readonly warranties: readonly string[]
}
