/** How far a field is filled: `blank` is left to the hand that signs, `none` says that there is nothing to state. */
export type FieldState = 'stated' | 'missing' | 'blank' | 'none'

/** One answer of an application for interconnection. */
export interface ApplicationField {
  /** Stable name, for a mapping: `meter_number`. */
  readonly id: string
  readonly section: string
  readonly label: string
  readonly state: FieldState
  /** null where the field is missing or left blank. */
  readonly value: string | number | null
  /** Unit of a number; '' for words and pure numbers. */
  readonly unit: string
  /** Key of the project file, or how it was worked out; '' where there is no value. */
  readonly from: string
  /** Key to state it under; null when it is stated or left blank. */
  readonly missing: string | null
  /** Who can supply it. */
  readonly supplied_by: string
  /** Which forms ask for it. */
  readonly asked_by: string
  /** What else to know; '' mostly. */
  readonly note: string
}

/** Something that goes with the application. */
export interface ApplicationAttachment {
  readonly id: string
  readonly what: string
  readonly asked_by: string
  /** `packet`: a sheet of draw-permit; `documents`: under documents; `later`: follows the work. */
  readonly state: 'packet' | 'documents' | 'missing' | 'later'
  readonly where: string
  readonly supplied_by: string
}

/** A step of the utility with its time, in business days. */
export interface ApplicationClockValue {
  readonly step: string
  readonly federal_business_days: number | null
  readonly new_york_business_days: number | null
  readonly note: string
}

/** Result of `write-application`; names and units are part of the JSON format. */
export interface ApplicationValues {
  readonly fields: readonly ApplicationField[]
  readonly attachments: readonly ApplicationAttachment[]
  readonly clocks: readonly ApplicationClockValue[]
  /** Facts on the standards, each with its source and how far it was read. */
  readonly standards: readonly { readonly says: string; readonly source: string }[]
  readonly stated: number
  readonly missing: number
}
