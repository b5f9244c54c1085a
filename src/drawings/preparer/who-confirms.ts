import type { Source } from '../../worksheet/index.js'

/** Who can confirm what a source says, by the document. */
const BY_DOCUMENT: readonly (readonly [document: RegExp, who: string])[] = [
  [/^(?:NEC|IRC|IFC|IBC|IEBC|CFC|NFPA)\b/u, 'the building department, with the adopted edition at hand'],
  [/^(?:ASCE|NDS|Aluminum Design Manual|ASTM|AISC)\b/u, 'a structural engineer, with the standard at hand'],
  [/sheet|instruction|brief of a maker/iu, 'the maker, by the sheet or manual of the product'],
  [/fault current/iu, 'the utility'],
]

/** Whom to ask about a source that was not read, and `the preparer, by checking it` where the trade offers nobody. */
export function whoConfirms(source: Source): string {
  return BY_DOCUMENT.find(([document]) => document.test(source.document))?.[1] ?? 'the preparer, by checking it'
}
