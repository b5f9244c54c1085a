import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll } from 'vitest'
import { loadProject, ProjectError, type LoadedProject, type LoadOptions } from '../../src/project/index.js'

/** An invented house, frozen, so that the places told by the tests stay where they are. */
export const STARTER = readFileSync(new URL('house.yaml', import.meta.url), 'utf8')

/** A folder with the given files, removed after the tests of the file. */
export function makeFolder(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'project-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true })
    writeFileSync(join(folder, name), content)
  }
  return folder
}

/** Loads a project from text, named `<stdin>` in problems. */
export function loadText(text: string, options: Omit<LoadOptions, 'path' | 'text'> = {}): LoadedProject {
  return loadProject({ path: '-', text, ...options })
}

/** The error of a call that has to fail with a ProjectError. */
export function failureOf(call: () => unknown): ProjectError {
  try {
    call()
  } catch (error) {
    if (error instanceof ProjectError) return error
    throw error
  }
  throw new Error('the call succeeded')
}

/** What is said about a text: one line for each problem, without the file name. */
export function problemsOf(text: string, options: Omit<LoadOptions, 'path' | 'text'> = {}): string[] {
  return failureOf(() => loadText(text, options))
    .message.split('\n')
    .map((line) => line.replace(/^<stdin>:?/, ''))
}

/** Replaces the first occurrence of `from` in the starter file; fails when it is not there. */
export function starterWith(from: string | RegExp, to: string): string {
  const text = STARTER.replace(from, () => to)
  if (text === STARTER) throw new Error(`the starter has no ${String(from)}`)
  return text
}
