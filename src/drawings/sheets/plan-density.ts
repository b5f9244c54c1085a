import { flattenSheet, type Primitive, type Sheet } from '../model/index.js'

/** Share of the words that may be left out which a plan has to show; below it the reader looks for them in vain. */
const LEAST_SHOWN = 0.5

/**
 * Whether a plan is too dense for its scale: a text of it had to become a keyed note or found no place at all, or fewer than
 * half of the words that may be left out (names of modules, distances of mounts and rails) stand on it.
 */
export function isTooDense(sheet: Sheet): boolean {
  const { marks, collisions } = flattenSheet(sheet)
  if (collisions.length > 0 || marks.some(({ layer }) => layer === 'keynote')) return true
  const left = new Map<string, number>()
  for (const mark of marks)
    if (mark.kind === 'text' && mark.view !== undefined) left.set(mark.text, (left.get(mark.text) ?? 0) + 1)
  const wanted = sheet.viewports.flatMap(({ primitives }) => primitives.flatMap(optionalWords))
  const shown = wanted.filter((text) => {
    const count = left.get(text) ?? 0
    left.set(text, count - 1)
    return count > 0
  })
  return shown.length < LEAST_SHOWN * wanted.length
}

function optionalWords(each: Primitive): string[] {
  return (each.kind === 'text' || each.kind === 'dimension') && each.optional === true ? [each.text] : []
}
