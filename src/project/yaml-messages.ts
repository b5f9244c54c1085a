import type { YAMLError } from 'yaml'

/** The YAML library's error in plain words with a fix. */
export function sayYamlError(error: YAMLError, text: string): string {
  switch (error.code) {
    case 'TAB_AS_INDENT':
      return 'a tab indents this line; YAML allows spaces only: replace the tab by spaces'
    case 'BAD_SCALAR_START':
      return `a value cannot start with ${text[error.pos[0]] ?? 'this character'} unless it stands in quotes`
    case 'MISSING_CHAR':
      return `${lowerFirst(error.message)}; close the quotes or bracket that was opened`
    case 'TAG_RESOLVE_FAILED':
      return 'tags (!name) are not used in project files; remove it'
    case 'BLOCK_AS_IMPLICIT_KEY':
      return "two 'key: value' on one line; start a new line, or put a value that holds ': ' in quotes"
    case 'BAD_INDENT':
      return `${lowerFirst(error.message)}; line up the keys of one map in one column`
    case 'MULTIPLE_DOCS':
      return "a second document starts here; a project file holds one: remove the '---' line or split the file"
    default:
      return `not readable as YAML: ${lowerFirst(error.message)}`
  }
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1)
}
