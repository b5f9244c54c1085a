import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { FileError } from '../../src/files/index.js'
import { bindDocumentsTask, readDocumentTask } from '../../src/packet/index.js'
import { listFormFields, prepareForm } from '../../src/papers/index.js'
import {
  foreignLimits,
  IN_THIS_THREAD,
  inWorker,
  inWorkerWith,
  type ForeignRunner,
} from '../../src/project/foreign/index.js'
import { loadProject, ProjectError } from '../../src/project/index.js'
import { runHouse } from '../../src/house/index.js'
import { ensureBuilt, gablewatt, ROOT } from '../cli/binary.js'
import { BOMBS, damaged, pdfOf } from '../fuzz/hostile-pdf.mjs'

let runner: ForeignRunner
beforeAll(() => {
  ensureBuilt()
  const found = inWorker()
  if (found === undefined) throw new Error('the program is not built')
  runner = found
})

const form = (bytes: Uint8Array) => ({ path: 'f.pdf', bytes })
const subject = (bytes: Uint8Array) => ({ what: "document 'd.pdf'", bytes: bytes.length, fix: 'print it anew' })

/** A page with something on it. */
const STAMP = {
  3: '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 400] /Resources << >> /Contents 9 0 R >>',
  9: '<< /Length 1 >>\nstream\n \nendstream',
}

/** What is said of a file as a form and as a document; anything but a result or a message of one line is thrown on. */
async function said(bytes: Uint8Array): Promise<string[]> {
  const tries = [
    async () => `a form with ${(await listFormFields(form(bytes), false, runner)).fields.length} fields`,
    async () => {
      const { pages } = await runner.run(readDocumentTask, { path: 'd.pdf', bytes }, subject(bytes))
      const packet = pdfOf({})
      const stamps = pdfOf({ ...STAMP, 2: `<< /Type /Pages /Kids [${'3 0 R '.repeat(pages)}] /Count ${pages} >>` })
      const input = { packet, stamps, documents: [{ path: 'd.pdf', bytes }], date: '2026-03-02' }
      const bound =
        pages > 50 ? 'too many to bind here' : (await runner.run(bindDocumentsTask, input, subject(bytes))).length
      return `a document of ${pages} pages, bound: ${bound}`
    },
  ]
  const texts: string[] = []
  for (const attempt of tries) {
    try {
      texts.push(await attempt())
    } catch (error) {
      if (!(error instanceof FileError)) throw error
      texts.push(`refused: ${error.message}`)
    }
  }
  return texts
}

describe('files of strangers in a thread of their own', () => {
  test.each(Object.entries(BOMBS))('%s', { timeout: 120_000 }, async (_name, make) => {
    for (const text of await said(make(0.2))) {
      expect(text).toMatch(/^(?:a form with|a document of|refused: (?:form 'f\.pdf'|document 'd\.pdf') .+[;:] .+)/u)
      expect(text).not.toMatch(/NaN|undefined|\[object|\n/u)
    }
  })

  test('what unpacks without end is refused for that, with the limit and what to do', async () => {
    for (const name of ['an object stream that unpacks to a gigabyte', 'an object stream packed twice'] as const) {
      expect(await said(BOMBS[name](0.2))).toEqual([
        "refused: form 'f.pdf' was given up: its packed parts take more than 64 MB of memory when they are unpacked; fetch it again",
        "refused: document 'd.pdf' was given up: its packed parts take more than 64 MB of memory when they are unpacked; print it to a new PDF and use that",
      ])
    }
  })

  test('500 damaged files give a result or one message', { timeout: 240_000 }, async () => {
    const seen = new Map<string, number>()
    const example = readFileSync(join(ROOT, 'examples/forms/sampletown-application.pdf'))
    for (let seed = 1; seed <= 500; seed++) {
      for (const text of await said(damaged(seed, seed % 10 === 0 ? example : pdfOf({})))) {
        expect(text, `seed ${seed}`).not.toMatch(/NaN|undefined|\[object|\n|defect/u)
        const kind = text.split(' ').slice(0, 2).join(' ')
        seen.set(kind, (seen.get(kind) ?? 0) + 1)
      }
    }
    for (const kind of ['a form', 'a document', 'refused: form', 'refused: document'])
      expect(seen.get(kind) ?? 0, kind).toBeGreaterThan(40)
  })
})

describe('the limits', () => {
  const file = pdfOf({})

  test('grow with the file', () => {
    expect(foreignLimits(1)).toEqual({ memoryMb: 200, seconds: 11 })
    expect(foreignLimits(20_000_000)).toEqual({ memoryMb: 352, seconds: 30 })
  })

  test(
    'of memory: the message names file, limit and what to do, and the next file is read',
    { timeout: 60_000 },
    async () => {
      const narrow = inWorkerWith(() => ({ memoryMb: 24, seconds: 60 }))
      const many = BOMBS['a list of 1.2 MB of maps']()
      const failure = await listFormFields(form(many), true, narrow).catch((error: unknown) => error)
      expect(failure).toMatchObject({
        name: 'FileError',
        exitCode: 2,
        message:
          "form 'f.pdf' was given up: it takes more than 24 MB of memory, the limit for a file of its size (1.2 MB); fetch it again from its publisher",
      })
      expect((await listFormFields(form(file), false, runner)).fields).toHaveLength(1)
    },
  )

  test('of time', { timeout: 60_000 }, async () => {
    const quick = inWorkerWith(() => ({ memoryMb: 300, seconds: 0.02 }))
    const many = BOMBS['a list of 1.2 MB of maps']()
    await expect(listFormFields(form(many), true, quick)).rejects.toThrow(
      "form 'f.pdf' was given up: it takes more than 0.02 s, the limit for a file of its size (1.2 MB)",
    )
  })

  test('do not count while the project is asked', { timeout: 60_000 }, async () => {
    const loaded = loadProject({ path: join(ROOT, 'examples/lark-hollow.yaml') })
    const house = runHouse(loaded)
    const text = 'format: gablewatt-form-mapping/1\nfields:\n  - { field: name, from: wire.panel.bus_a }\n'
    const mapping = { path: 'm.yaml', text }
    // A second and a half of work in the thread that has the project, more than the other one may take.
    const wire: typeof house.wire = async () => {
      const result = await house.wire()
      const until = performance.now() + 1500
      while (performance.now() < until);
      return result
    }
    const bounded = inWorkerWith(() => ({ memoryMb: 200, seconds: 1 }))
    const slow = { ...house, wire, roof: house.roof }
    const filled = await prepareForm(loaded, slow, form(file), mapping, bounded)
    expect(filled.fields).toMatchObject([{ field: 'name', from: 'wire.panel.bus_a' }])
    const { pdf } = await filled.draw(false)
    const here = await prepareForm(loaded, house, form(file), mapping, IN_THIS_THREAD)
    expect(Buffer.compare(Buffer.from(pdf), Buffer.from((await here.draw(false)).pdf))).toBe(0)
  })

  test('what is wrong with a mapping comes through with its line', async () => {
    const loaded = loadProject({ path: join(ROOT, 'examples/lark-hollow.yaml') })
    const mapping = {
      path: 'm.yaml',
      text: 'format: gablewatt-form-mapping/1\nfields:\n  - { field: nome, text: x }\n',
    }
    const failure = await prepareForm(loaded, runHouse(loaded), form(file), mapping, runner).catch(
      (error: unknown) => error,
    )
    expect(failure).toBeInstanceOf(ProjectError)
    expect((failure as ProjectError).problems[0]).toMatchObject({ file: 'm.yaml', line: 3 })
    expect((failure as ProjectError).format({ frames: true })).toContain('3 |   - { field: nome, text: x }')
  })
})

describe.skipIf(process.platform !== 'linux')('the program itself', () => {
  const folder = mkdtempSync(join(tmpdir(), 'gablewatt-foreign-'))
  afterAll(() => rmSync(folder, { recursive: true }))

  test.each([
    'an object stream that unpacks to a gigabyte',
    'an object stream of empty maps',
    'run lengths over a bomb',
    'a list of 1.2 MB of maps',
  ] as const)('works on it in such a thread and takes no 400 MB: %s', { timeout: 60_000 }, async (name) => {
    const path = join(folder, 'form.pdf')
    writeFileSync(path, BOMBS[name](0.3))
    const run = await gablewatt(['fill-form', '--list', path], {
      env: { NODE_OPTIONS: `--require ${join(ROOT, 'tests/robustness/preload-tell-memory.cjs')}` },
    })
    expect([0, 2]).toContain(run.exitCode)
    expect(run.stderr).toMatch(/a thread with 20\d MB/u)
    expect(Number(/at most (\d+) kB/u.exec(run.stderr)?.[1])).toBeLessThan(400_000)
  })
})
