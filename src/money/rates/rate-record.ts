/** One tier of a period of a rate record. */
export interface RateTier {
  readonly max?: number
  readonly unit?: string
  readonly rate?: number
  readonly adj?: number
  readonly sell?: number
}

/** By period, then by tier. */
export type RateStructure = readonly (readonly RateTier[])[]

/** 12 months of 24 hours: the period of each, counted from 0. */
export type RateSchedule = readonly (readonly number[])[]

/**
 * A record of the public national database of utility rates, as far as this program knows its fields.
 *
 * @source Documentation of the service, versions 3 to 8, as a public typed client copies it (secondary).
 */
export interface RateRecord {
  readonly label?: string
  readonly utility?: string
  readonly name?: string
  readonly sector?: string
  readonly servicetype?: string
  readonly country?: string
  readonly approved?: boolean
  readonly startdate?: number
  readonly enddate?: number
  readonly source?: string
  readonly uri?: string
  readonly energyratestructure?: RateStructure
  readonly energyweekdayschedule?: RateSchedule
  readonly energyweekendschedule?: RateSchedule
  readonly energytoulabels?: unknown
  readonly fueladjustmentsmonthly?: readonly number[]
  readonly flatdemandstructure?: RateStructure
  readonly flatdemandmonths?: readonly number[]
  readonly flatdemandunit?: string
  readonly demandratestructure?: RateStructure
  readonly demandweekdayschedule?: RateSchedule
  readonly demandweekendschedule?: RateSchedule
  readonly demandrateunit?: string
  readonly demandwindow?: number
  readonly demandratchetpercentage?: readonly number[]
  readonly demandreactivepowercharge?: number
  readonly coincidentratestructure?: RateStructure
  readonly fixedchargefirstmeter?: number
  readonly fixedchargeunits?: string
  readonly fixedchargeeaaddl?: number
  readonly fixedmonthlycharge?: number
  readonly mincharge?: number
  readonly minchargeunits?: string
  readonly minmonthlycharge?: number
  readonly annualmincharge?: number
  readonly usenetmetering?: boolean
  readonly dgrules?: string
  readonly sell?: unknown
  readonly [other: string]: unknown
}

/** What a field has to be. */
export type FieldKind = 'text' | 'number' | 'yes or no' | 'tiers' | 'schedule' | 'twelve' | 'any'

/** Fields that are read, with what they have to be. */
export const FIELDS: Readonly<Record<string, FieldKind>> = {
  label: 'text',
  utility: 'text',
  name: 'text',
  sector: 'text',
  servicetype: 'text',
  country: 'text',
  approved: 'yes or no',
  startdate: 'number',
  enddate: 'number',
  source: 'text',
  uri: 'text',
  energyratestructure: 'tiers',
  energyweekdayschedule: 'schedule',
  energyweekendschedule: 'schedule',
  energytoulabels: 'any',
  fueladjustmentsmonthly: 'twelve',
  flatdemandstructure: 'tiers',
  flatdemandmonths: 'twelve',
  flatdemandunit: 'text',
  demandratestructure: 'tiers',
  demandweekdayschedule: 'schedule',
  demandweekendschedule: 'schedule',
  demandrateunit: 'text',
  demandwindow: 'number',
  demandratchetpercentage: 'twelve',
  demandreactivepowercharge: 'number',
  coincidentratestructure: 'tiers',
  coincidentrateschedule: 'any',
  coincidentrateunit: 'any',
  fixedchargefirstmeter: 'number',
  fixedchargeunits: 'text',
  fixedchargeeaaddl: 'number',
  fixedmonthlycharge: 'number',
  mincharge: 'number',
  minchargeunits: 'text',
  minmonthlycharge: 'number',
  annualmincharge: 'number',
  usenetmetering: 'yes or no',
  dgrules: 'text',
  sell: 'any',
}

/** Fields that change no bill: who wrote the record, and whom the rate is for. */
export const HARMLESS: readonly string[] = [
  'is_default',
  'supercedes',
  'sourceparent',
  'eiaid',
  'basicinformationcomments',
  'revisions',
  'openei_eia_name',
  'usagerestrictions',
  'latest_update',
  'demandunits',
  'peakkwcapacityhistory',
  'peakkwhusagehistory',
]

/** Fields that say who may take the rate. */
export const ELIGIBILITY: readonly string[] = [
  'peakkwcapacitymin',
  'peakkwcapacitymax',
  'peakkwhusagemin',
  'peakkwhusagemax',
  'voltageminimum',
  'voltagemaximum',
  'voltagecategory',
  'phasewiring',
]

/** Fields in which people write rules that no other field can say. */
export const COMMENTS: readonly string[] = [
  'description',
  'energycomments',
  'demandcomments',
  'energyattrs',
  'demandattrs',
  'fixedattrs',
]
