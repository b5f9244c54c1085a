/**
 * Flags of fields, `Ff`: the number of the bit, counted from 1.
 *
 * @source ISO 32000-1:2008, 12.7.3.1, 12.7.4; from memory, compared with lists of flags by others (secondary).
 */
export const FIELD_FLAG = {
  readOnly: 1,
  required: 2,
  multiline: 13,
  password: 14,
  fileSelect: 21,
  comb: 25,
  richText: 26,
  radio: 16,
  pushButton: 17,
  combo: 18,
  edit: 19,
  multiSelect: 22,
} as const

/** Flags of a widget, `F`. @source ISO 32000-1:2008, table 165; from memory. */
export const WIDGET_FLAG = { hidden: 2, print: 3, noView: 6 } as const

/** Whether a flag is set in a number of flags. */
export function hasFlag(flags: number, bit: number): boolean {
  return (flags & (1 << (bit - 1))) !== 0
}
