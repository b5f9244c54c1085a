import type { Explanations } from './explanation.js'

/** Findings of the hand-over. */
export const HANDOVER: Explanations = {}
