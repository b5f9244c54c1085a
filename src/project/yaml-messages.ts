import type { ErrorCode, YAMLError } from 'yaml'

/** Fixes for the mistakes that people make; the library's own words come before those that start with a semicolon. */
const FIXES: Partial<Readonly<Record<ErrorCode, string>>> = {
  TAB_AS_INDENT: 'a tab indents this line; YAML allows spaces only: replace the tab by spaces',
  TAG_RESOLVE_FAILED: 'tags (!name) are not used in project files; remove it',
  BLOCK_AS_IMPLICIT_KEY: "two 'key: value' on one line; start a new line, or put a value that holds ': ' in quotes",
  MULTIPLE_DOCS: "a second document starts here; a project file holds one: remove the '---' line or split the file",
  BAD_SCALAR_START: '; put the value in quotes',
  MISSING_CHAR: '; close the quotes or the bracket that was opened',
  BAD_INDENT: '; line up the keys of one map in one column',
}

/** An error of the YAML library in plain words with a fix. */
export function sayYamlError(error: YAMLError): string {
  const fix = FIXES[error.code] ?? ''
  if (fix !== '' && !fix.startsWith(';')) return fix
  return `not readable as YAML: ${error.message.charAt(0).toLowerCase()}${error.message.slice(1)}${fix}`
}
