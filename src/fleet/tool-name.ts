import { readFileSync } from 'node:fs'

/** Name and version of the program as results bear them: `gablewatt 0.1.0`. */
export function toolName(): string {
  // The package is two folders up, seen from the library and from the bundled program.
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8')
  const { name, version } = JSON.parse(text) as { readonly name: string; readonly version: string }
  return `${name} ${version}`
}
