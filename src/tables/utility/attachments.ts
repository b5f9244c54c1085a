/** Where an attachment can come from. */
export type AttachmentSource =
  | 'one_line'
  | 'three_line'
  | 'site_plan'
  | 'module_sheets'
  | 'inverter_sheets'
  | 'listing'
  | 'authorisation_document'
  | 'insurance_document'
  | 'agreement_document'
  | 'verification_document'
  | 'later'

/** Something that goes with an application, or follows it. */
export interface AttachmentRule {
  readonly id: string
  readonly what: string
  readonly askedBy: string
  readonly from: AttachmentSource
  /** Who supplies it. */
  readonly who: string
}

/**
 * What utilities want beside the form, and after the work.
 *
 * @source Federal Attachment 5 and New York up to 50 kW (from memory); attachments on an older page of a New York utility (read).
 */
export const ATTACHMENTS: readonly AttachmentRule[] = [
  {
    id: 'one_line',
    what: 'one-line diagram with meter, disconnects, breaker ratings, inverter and grounding',
    askedBy: 'all (New York: three-line)',
    from: 'one_line',
    who: 'installer',
  },
  { id: 'three_line', what: 'three-line diagram', askedBy: 'New York', from: 'three_line', who: 'installer' },
  {
    id: 'site_plan',
    what: 'site plan with meter, disconnect, inverter and street',
    askedBy: 'many',
    from: 'site_plan',
    who: 'installer',
  },
  { id: 'module_sheets', what: 'data sheets of the modules', askedBy: 'all', from: 'module_sheets', who: 'maker' },
  {
    id: 'inverter_sheets',
    what: 'data sheets of the inverters',
    askedBy: 'all',
    from: 'inverter_sheets',
    who: 'maker',
  },
  { id: 'listing', what: 'listing report or certificate to UL 1741', askedBy: 'most', from: 'listing', who: 'maker' },
  {
    id: 'verification',
    what: "maker's verification test procedure",
    askedBy: 'New York',
    from: 'verification_document',
    who: 'maker',
  },
  {
    id: 'authorisation',
    what: 'letter of the customer that authorises the installer',
    askedBy: 'New York, where the installer applies',
    from: 'authorisation_document',
    who: 'customer',
  },
  { id: 'insurance', what: 'proof of insurance', askedBy: 'some', from: 'insurance_document', who: 'customer' },
  {
    id: 'agreement',
    what: 'signed interconnection agreement',
    askedBy: 'all',
    from: 'agreement_document',
    who: 'customer and utility',
  },
  { id: 'completion', what: 'certificate of completion', askedBy: 'all', from: 'later', who: 'installer' },
  { id: 'inspection', what: 'passed inspection', askedBy: 'all', from: 'later', who: 'authority' },
  { id: 'photographs', what: 'photographs of disconnect and labels', askedBy: 'some', from: 'later', who: 'installer' },
  {
    id: 'commissioning',
    what: 'record of the commissioning tests (write-handover)',
    askedBy: 'some',
    from: 'later',
    who: 'installer',
  },
]
