/*
 * Words in the name or the tooltip of a field that only the person who signs may fill. A habit of ours, on the safe
 * side: a field that is left out can be filled by hand, one that was filled cannot be unsaid.
 */

/** Of every field. */
export const SIGNING_WORDS: ReadonlySet<string> = new Set([
  'sign',
  'signs',
  'signed',
  'signing',
  'signer',
  'signers',
  'signatory',
  'signature',
  'signatures',
  'sig',
  'initials',
  'certify',
  'certifies',
  'certifying',
  'attest',
  'attests',
  'attested',
  'attestation',
  'attestations',
  'declare',
  'declares',
  'declarant',
  'declaration',
  'declarations',
  'affirm',
  'affirms',
  'affirmation',
  'affidavit',
  'swear',
  'sworn',
  'oath',
  'perjury',
  'notary',
  'notarized',
  'notarised',
  'witness',
  'hereby',
])

/** Of boxes, buttons and choices, which say yes to something. */
export const AGREEING_WORDS: ReadonlySet<string> = new Set([
  'agree',
  'agrees',
  'agreed',
  'agreement',
  'accept',
  'accepts',
  'acknowledge',
  'acknowledges',
  'acknowledgement',
  'acknowledgment',
  'authorize',
  'authorise',
  'certification',
  'confirm',
  'confirms',
  'consent',
  'consents',
  'understand',
  'warrant',
  'warrants',
])

/** Words that stand beside each other. */
export const SIGNING_PHRASES: readonly string[] = ['under penalty', 'penalty of', 'date of execution', 'executed on']
