import { plainNumber } from '../layout/index.js'

/** `terminals 45 lb-in`; nothing where none is stated, for which a note of the diagram says that the marking rules. */
export const torqueWords = (torqueLbIn: number | undefined): string =>
  torqueLbIn === undefined ? '' : `terminals ${plainNumber(torqueLbIn)} lb-in`
