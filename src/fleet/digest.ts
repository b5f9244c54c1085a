import { digestOf } from '../seal/index.js'

/** A short fingerprint for names and journals: 32 of the 64 digits. */
export const digest = (parts: readonly string[]): string => digestOf(parts).slice(0, 32)
