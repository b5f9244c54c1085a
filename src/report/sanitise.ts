/*
 * Names and notes of a project file are a stranger's text. What a terminal would take as a command (escape sequences,
 * control characters, invisible direction marks) never reaches it: each renderer passes every text through here.
 */

// Operating-system commands and strings (ESC ] ... BEL), control sequences (ESC [ ... letter), other escapes.
const SEQUENCE =
  // oxlint-disable-next-line no-control-regex
  /(?:\u001B[\]PX^_]|[\u009D\u0090\u0098\u009E\u009F])[^\u0007\u001B\u009C]*(?:\u0007|\u001B\\|\u009C|$)|(?:\u001B\[|\u009B)[0-?]*[ -/]*[@-~]?|\u001B[ -/]*[0-~]?/gu
// oxlint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u200B\u200E\u200F\u202A-\u202E\u2066-\u2069\uFEFF]/gu
const LINE_BREAK = /\r\n?|[\u2028\u2029\u0085]/gu
const SPACING = /[\t\v\f]/gu

/** Text for people over one or more lines: line breaks stay, everything that steers a terminal goes. */
export function cleanText(text: string): string {
  return text.replace(SEQUENCE, '').replace(LINE_BREAK, '\n').replace(SPACING, ' ').replace(CONTROL, '')
}

/** Text for one cell or one line: line breaks become spaces too. */
export function cleanLine(text: string): string {
  return cleanText(text).replace(/\s*\n\s*/gu, ' ')
}

/** Escapes, inside finished JSON, what JSON allows but a terminal would obey. The document's meaning stays the same. */
export function cleanJson(json: string): string {
  return json.replace(
    /[\u007F-\u009F\u200B\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
}
