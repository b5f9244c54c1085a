import type { Source } from '../../worksheet/index.js'

/** A step of a utility with the time that it has for it. */
export interface ApplicationClock {
  readonly step: string
  /** Business days; null where the procedure names none. */
  readonly federalDays: number | null
  readonly newYorkDays: number | null
  readonly note: string
}

/** Where the clocks come from. */
export const CLOCK_SOURCES = {
  federal: {
    document: 'federal small-generator procedures',
    place: 'Attachment 5, 10 kW inverter process (steps)',
    standing: 'read',
  },
  newYork: {
    document: 'New York standardized interconnection requirements',
    place: 'process up to 50 kW',
    standing: 'read',
  },
} as const satisfies Readonly<Record<string, Source>>

/** Days are business days. */
export const APPLICATION_CLOCKS: readonly ApplicationClock[] = [
  { step: 'the utility acknowledges the application', federalDays: 3, newYorkDays: null, note: '' },
  {
    step: 'the utility says whether it is complete',
    federalDays: 10,
    newYorkDays: 10,
    note: 'in New York together with eligibility and approval',
  },
  { step: 'technical screens', federalDays: 15, newYorkDays: null, note: '' },
  {
    step: 'witness test or inspection after the certificate of completion',
    federalDays: 10,
    newYorkDays: null,
    note: '',
  },
  {
    step: 'operation',
    federalDays: null,
    newYorkDays: null,
    note: 'only after the written authorisation of the utility, with the witness test done or waived',
  },
]

/** Rated AC output up to which the short procedures hold, kW; above it another procedure and other forms. */
export const SIZE_LEVELS: readonly { readonly name: string; readonly upToKw: number; readonly source: Source }[] = [
  { name: 'federal 10 kW inverter process', upToKw: 10, source: CLOCK_SOURCES.federal },
  { name: 'New York process for small systems', upToKw: 50, source: CLOCK_SOURCES.newYork },
]
