/** Load of the dwelling as the JSON output has it. */
export interface LoadValues {
  readonly method: string
  readonly section: string
  readonly load_va: number
  readonly load_a: number
  /** Least rating of a main or service disconnect: the load, and the least service of a one-family dwelling. */
  readonly needed_a: number
  readonly least_service_a: number
  /** Without the loads that the project adds; null where the method does not tell. */
  readonly before_a: number | null
}

/** Available fault current at the service as the JSON output has it. */
export interface FaultValues {
  readonly line_to_line_a: number
  readonly line_to_neutral_a: number
  /** The larger of the two, which devices at the service have to interrupt. */
  readonly governs_a: number
  readonly how: string
}
