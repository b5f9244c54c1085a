/** Scripts whose letters stand beside each other from left to right, each with one shape. */
const PLAIN_SCRIPT = /^[\p{scx=Latn}\p{scx=Grek}\p{scx=Cyrl}\p{scx=Armn}\p{scx=Geor}\p{scx=Zyyy}]$/u
/** Marks that are set over or under a letter, and what is not seen. */
const SET_BY_SHAPING = /^[\p{M}\p{Cf}\p{Cc}\p{Co}\p{Cn}]$/u

/**
 * Whether the glyph of a character, set behind the one before it, is how the character is written. Hebrew and Arabic run the
 * other way, Arabic letters join, and marks take their place from their letter, none of which is done here: a font that has
 * such a glyph would show it wrongly.
 */
export function isDrawnAlone(character: string): boolean {
  return PLAIN_SCRIPT.test(character) && !SET_BY_SHAPING.test(character)
}
