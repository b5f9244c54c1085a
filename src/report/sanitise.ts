/*
 * Names and notes of a project file are a stranger's text. What a terminal would take as a command (escape sequences,
 * control characters, invisible direction marks) never reaches it: each renderer passes every text through here.
 */

// Operating-system commands and strings (ESC ] ... BEL), control sequences (ESC [ ... letter), other escapes. A string ends at its end,
// where it is cut off, and where another sequence begins.
const SEQUENCE =
  // oxlint-disable-next-line no-control-regex
  /(?:\u001B[\]PX^_]|[\u009D\u0090\u0098\u009E\u009F])[^\u0007\u0018\u001A\u001B\u009C]*(?:[\u0007\u0018\u001A\u009C]|\u001B\\|(?=\u001B)|$)|(?:\u001B\[|\u009B)[0-?]*[ -/]*[@-~]?|\u001B[ -/]*[0-~]?/gu
// Invisible signs of direction and of joining among them; those that scripts and emoji need (U+200C, U+200D) stay.
const CONTROL =
  // oxlint-disable-next-line no-control-regex
  /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u061C\u200B\u200E\u200F\u202A-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB]/gu
const LINE_BREAK = /\r\n?|[\u2028\u2029\u0085]/gu
const SPACING = /[\t\v\f]/gu
/** Stands where something was that would steer. */
const MARK = '\uFFFD'

/** Text for people over one or more lines: line breaks stay, everything that steers a terminal goes. */
export function cleanText(text: string): string {
  return text.replace(SEQUENCE, '').replace(LINE_BREAK, '\n').replace(SPACING, ' ').replace(CONTROL, '')
}

/** Text for one cell or one line: line breaks become spaces too. */
export function cleanLine(text: string): string {
  return cleanText(text).replace(/\s*\n\s*/gu, ' ')
}

/**
 * One line of an error message, with a mark for whatever steers, so that a person sees where it stands.
 *
 * @param keepsLength Whether what is marked takes as many marks as it has characters, as places in a line are counted.
 */
export function markedLine(text: string, keepsLength = false): string {
  const mark = (found: string): string => (keepsLength ? MARK.repeat(found.length) : MARK)
  return text
    .replace(SEQUENCE, mark)
    .replace(/\r\n|\n/gu, mark)
    .replace(LINE_BREAK, mark)
    .replace(CONTROL, mark)
}

/** Escapes, inside finished JSON, what JSON allows but a terminal would obey. The document's meaning stays the same. */
export function cleanJson(json: string): string {
  return json.replace(
    /[\u007F-\u009F\u061C\u200B\u200E\u200F\u2028-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}
