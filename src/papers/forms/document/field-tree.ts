import { PDFNull, type PDFDict, type PDFObject } from '@cantoo/pdf-lib'
import { dictsOf, textOf, valueOf } from './pdf-object.js'

/** A field that holds a value. */
export interface Leaf {
  readonly name: string
  readonly dict: PDFDict
  readonly widgets: readonly PDFDict[]
  /** The value of a key of it or of the nearest one above it that has the key. */
  readonly inherited: (key: string) => PDFObject | undefined
}

const DEEPEST = 60
const MOST_FIELDS = 20_000

/**
 * The fields of the tree that hold values: those whose kids, if any, are widgets.
 *
 * @throws Error when the tree leads back to itself or is too large.
 */
export function collectLeaves(acroForm: PDFDict): Leaf[] {
  const leaves: Leaf[] = []
  const seen = new Set<PDFDict>()
  const visit = (dict: PDFDict, above: readonly PDFDict[], parents: readonly string[]): void => {
    if (seen.has(dict) || above.length > DEEPEST || seen.size > MOST_FIELDS) {
      throw new Error('the tree of fields leads back to itself or is too large')
    }
    seen.add(dict)
    const partial = textOf(valueOf(dict, 'T'))
    const names = partial === undefined || partial === '' ? parents : [...parents, partial]
    const kids = dictsOf(valueOf(dict, 'Kids'), dict.context).map((kid) => kid.dict)
    const chain = [dict, ...above]
    const fields = kids.filter(isField)
    for (const field of fields) visit(field, chain, names)
    const widgets = kids.filter((kid) => !isField(kid))
    if (fields.length > 0 && widgets.length === 0) return
    leaves.push({
      name: names.join('.'),
      dict,
      // A field without kids is its own widget.
      widgets: kids.length === 0 ? [dict] : widgets,
      inherited: (key) => {
        for (const each of chain) {
          const value = valueOf(each, key)
          if (value !== undefined && value !== PDFNull) return value
        }
        return undefined
      },
    })
  }
  for (const { dict } of dictsOf(valueOf(acroForm, 'Fields'), acroForm.context)) visit(dict, [], [])
  // A branch with nothing below it holds no value.
  return leaves.filter((leaf) => leaf.inherited('FT') !== undefined)
}

/** A kid with a name of its own, or with kids, is a field; any other one is a place of the field above it. */
function isField(dict: PDFDict): boolean {
  return valueOf(dict, 'T') !== undefined || valueOf(dict, 'Kids') !== undefined
}
