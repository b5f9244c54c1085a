/** What follows a number and belongs to it, with the marks of a sentence behind it. */
const UNIT =
  /^(?:A|V|W|kW|kWh|ft|ft2|ft\u00B2|in|in2|in3|lb|lb-in|lb-ft|psf|psi|ksi|mph|AWG|kcmil|%|%\/C|\u00B0C|deg|C|K|m|ohm\/kft|ohm\/km)[.,;:)]*$/u
/** A number, as the end of a word: `(22`, `120/240`, `1.53`. */
const NUMBER = /(?:^|[^\p{L}])\d[\d.,/-]*$/u
/** A fraction behind a whole number: `13/16"`. */
const FRACTION = /^\d+\/\d+"?[.,;:)]*$/u
/** Documents that are named with a number or a year. */
const DOCUMENT = /^\(?(?:ASCE|NEC|NDS|IRC|IBC|IEBC|IFC|NFPA|UL)$/u

/**
 * The words of a line between which it may break. A number stays with its unit (`22000 A`), a fraction with its number
 * (`13 1/2"`), a share with its whole (`22 of 40 %`), an edition with its document (`ASCE 7-16`), a label with its number.
 */
export function unbroken(text: string): string[] {
  const words = text.split(' ')
  return words.reduce<string[]>((found, word, index) => {
    const before = found.at(-1)
    if (before !== undefined && staysWith(words, index)) found.splice(-1, 1, `${before} ${word}`)
    else found.push(word)
    return found
  }, [])
}

/** Whether a word stands on the line of the word before it. */
function staysWith(words: readonly string[], index: number): boolean {
  const [before = '', word = '', next = '', last = ''] = words.slice(index - 1, index + 3)
  if (NUMBER.test(before)) {
    if (UNIT.test(word) || FRACTION.test(word)) return true
    return word === 'of' && NUMBER.test(next) && last.startsWith('%')
  }
  if (before === 'of') return NUMBER.test(word) && next.startsWith('%') && NUMBER.test(words[index - 2] ?? '')
  if (before === '≤' || before === '≥') return true
  if (/^labels?$/u.test(before)) return /^\d/u.test(word)
  if (before === 'deg') return word.startsWith('C')
  return DOCUMENT.test(before) && /^\d/u.test(word)
}
