import { truncateSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { documentName, documentsOf, LARGEST_DOCUMENT_BYTES, loadProject } from '../../src/project/index.js'
import { loadText, makeFolder, problemsOf, STARTER } from './support.js'

const FRAMING = 'structure:\n  framing:\n    south:\n      rafters_verified_by: '
const LETTER = "documents: [{ id: letter, file: letter.pdf, title: About the rafters, date: '2026-02-20' }]\n"
const withLetter = (documents: string, named: string) => `${STARTER}\n${documents}${FRAMING}${named}\n`

describe('the document that rafters stand on', () => {
  test('a sentence in its place is refused, with what to write instead', () => {
    const [problem, ...others] = problemsOf(`${STARTER}\n${FRAMING}Letter of the engineer\n`)
    expect(others).toEqual([])
    expect(problem).toMatch(/structure\.framing\.south\.rafters_verified_by {2}'Letter of the engineer' is no id/)
    expect(problem).toMatch(/no document there has an id.*a sentence clears nothing.*\{ id: rafters, file: letter\.pdf/)
  })

  test('an unknown id is refused with the ids that are there', () => {
    expect(problemsOf(withLetter(LETTER, 'leter'))[0]).toMatch(/'leter' is no id.*ids there: letter/)
  })

  test('needs a title and a date, which the sheets print', () => {
    const bare = problemsOf(withLetter('documents: [{ id: letter, file: letter.pdf }]\n', 'letter'))
    expect(bare).toHaveLength(2)
    expect(bare[0]).toMatch(/documents\.0\.title {2}missing; the rafters of plane 'south' stand on this document/)
    expect(bare[1]).toMatch(/documents\.0\.date {2}missing/)
    expect(problemsOf(withLetter(LETTER.replace('2026-02-20', '20 Feb'), 'letter'))[0]).toMatch(/documents\.0\.date/)
  })

  test('has an id of its own', () => {
    const twice = LETTER.replace(' }]', ' }, { id: letter, file: other.pdf }]')
    expect(problemsOf(withLetter(twice, 'letter'))).toEqual([
      expect.stringMatching(/documents\.1\.id {2}'letter' is the id of an earlier document too/),
    ])
  })

  test('is found when its file is there and is a PDF', () => {
    const text = withLetter(LETTER, 'letter')
    const found = (files: Record<string, string>) => {
      const folder = makeFolder({ 'project.yaml': text, ...files })
      return [...loadProject({ path: join(folder, 'project.yaml') }).documents]
    }
    expect(found({ 'letter.pdf': '%PDF-1.7\n' })).toEqual(['letter'])
    expect(found({})).toEqual([])
    expect(found({ 'letter.pdf': 'a sentence' })).toEqual([])
    expect(found({ 'letter.pdf/inside': 'a folder' })).toEqual([])
  })

  test('one that is there and of no use is told of with its reason, not as missing', () => {
    const text = withLetter(LETTER, 'letter')
    const troubles = (files: Record<string, string>, bytes?: number) => {
      const folder = makeFolder({ 'project.yaml': text, ...files })
      if (bytes !== undefined) truncateSync(join(folder, 'letter.pdf'), bytes)
      const { documents, documentTroubles } = loadProject({ path: join(folder, 'project.yaml') })
      return [...documents, ...documentTroubles]
    }
    const letter = { 'letter.pdf': '%PDF-1.7\n' }
    expect(troubles(letter, LARGEST_DOCUMENT_BYTES)).toEqual(['letter'])
    expect(troubles(letter, LARGEST_DOCUMENT_BYTES + 1)).toEqual([
      ['letter', 'it is 100.1 MB large; at most 100.0 MB is read'],
    ])
    expect(troubles({ 'letter.pdf': 'a sentence' })).toEqual([['letter', 'it is no PDF by its first bytes']])
    expect(troubles({ 'letter.pdf/inside': '' })).toEqual([['letter', 'it is a folder, not a file']])
    expect(troubles({})).toEqual([])
  })

  test('outside the folder it is not there unless outside files are allowed', () => {
    const outside = makeFolder({ 'letter.pdf': '%PDF-1.7\n' })
    const text = withLetter(LETTER.replace('letter.pdf', `'${join(outside, 'letter.pdf')}'`), 'letter')
    const folder = makeFolder({ 'project.yaml': text })
    const path = join(folder, 'project.yaml')
    expect([...loadProject({ path }).documents]).toEqual([])
    expect([...loadProject({ path, allowOutside: true }).documents]).toEqual(['letter'])
  })

  test('a bare path is a document still', () => {
    const { project } = loadText(`${STARTER}\ndocuments: [sheets/module.pdf, { file: b.pdf }]\n`)
    expect(documentsOf(project)).toEqual([{ file: 'sheets/module.pdf' }, { file: 'b.pdf' }])
    expect(documentsOf(project).map(documentName)).toEqual(['sheets/module.pdf', 'b.pdf'])
  })
})
