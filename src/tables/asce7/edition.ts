/** Editions of ASCE/SEI 7, Minimum Design Loads, that are held as data. */
export type LoadEdition = 'ASCE 7-10' | 'ASCE 7-16' | 'ASCE 7-22'

export type Exposure = 'B' | 'C' | 'D'
