import { generateKeyPairSync, verify } from 'node:crypto'
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { compareValues } from '../../src/cli/verify/compare-values.js'
import { sealed, sha256Of } from '../../src/seal/index.js'
import { pagesOf } from '../drawings/pdf-text.js'
import { ensureBuilt, gablewattWarm, ROOT } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-verify-'))
const house = join(ROOT, 'examples/lark-hollow.yaml')
const at = (name: string): string => join(folder, name)
const put = (name: string, content: string | Uint8Array): string => {
  writeFileSync(at(name), content)
  return at(name)
}
const read = (name: string): string => readFileSync(at(name), 'utf8')
const run = (args: readonly string[]) => gablewattWarm(args, { cwd: folder })
interface Verified {
  readonly values: {
    readonly kind: string | null
    readonly this_build: string
    readonly unchanged: boolean | null
    readonly parts: { name: string; line: number | null; build: string; project: string; unchanged: boolean }[]
    readonly comparison: {
      same_project: boolean
      differences: { path: string; in_file: string; anew: string }[]
    } | null
    readonly signature: { standing: string; key: string; says: string } | null
  }
  readonly findings: { severity: string; id: string; message: string }[]
}
const verifyFile = async (...args: string[]) => {
  const { exitCode, stdout, stderr } = await run(['verify-file', ...args, '--json', '--quiet'])
  const result = stdout === '' ? undefined : (JSON.parse(stdout) as Verified)
  return { exitCode, stderr, values: result?.values, ids: result?.findings.map(({ id }) => id) ?? [] }
}
const COMMANDS = {
  yield: 'estimate-yield',
  wire: 'size-wire',
  mounts: 'space-mounts',
  bom: 'price-bom',
  payback: 'payback',
}
const remade = (text: string, change: (one: Record<string, never>) => void): string => {
  const { seal: _, ...content } = JSON.parse(text) as Record<string, never>
  change(content)
  return JSON.stringify(sealed(content))
}

beforeAll(async () => {
  ensureBuilt()
  for (const [stage, command] of Object.entries(COMMANDS)) {
    await run([command, house, '--json', '--out', `${stage}.json`])
  }
  await run(['draw-permit', house, '--out', 'packet.pdf'])
  const fleet = join(ROOT, 'examples/fleet')
  await run([
    'run-fleet',
    join(fleet, 'reno-dry-high.yaml'),
    join(fleet, 'denver-thin-air.yaml'),
    '--jsonl',
    '--out',
    'fleet.jsonl',
  ])
}, 240_000)
afterAll(() => rmSync(folder, { recursive: true }))

describe('a result', () => {
  test.each(Object.keys(COMMANDS))('of %s is as written, and the same worked out anew', async (stage) => {
    const { exitCode, values, ids } = await verifyFile(`${stage}.json`, '--project', house)
    expect({ exitCode, ids }).toEqual({ exitCode: 0, ids: [] })
    expect(values).toMatchObject({
      kind: 'result',
      unchanged: true,
      comparison: { same_project: true, differences: [] },
    })
    expect(values?.parts[0]).toMatchObject({ name: stage, build: values?.this_build })
    expect(values?.parts[0]?.project).toBe(
      (JSON.parse(read(`${stage}.json`)) as { project: { digest: string } }).project.digest,
    )
  })

  test('and a fleet line of a house that counts in another currency are the same worked out anew', async () => {
    const currency = ['--set', 'finance.currency=CAD']
    await run(['payback', house, ...currency, '--json', '--out', 'cad.json'])
    await run(['run-fleet', house, ...currency, '--stages', 'bom,payback', '--jsonl', '--out', 'cad.jsonl'])
    for (const name of ['cad.json', 'cad.jsonl']) {
      expect(read(name)).toContain('"currency":')
      const { exitCode, values } = await verifyFile(name, '--project', house, ...currency)
      expect({ exitCode, found: values?.comparison }).toMatchObject({ exitCode: 0, found: { differences: [] } })
      expect((await verifyFile(name, '--project', house)).exitCode).toBe(1)
    }
  })

  test('of a payback by the bill of materials is the same worked out anew where no price is stated', async () => {
    const unpriced = readFileSync(house, 'utf8').replace(/^ +installed_cost_usd:.*\n/mu, '')
    cpSync(join(ROOT, 'examples'), at('unpriced'), { recursive: true })
    put('unpriced/lark-hollow.yaml', unpriced)
    await run(['run-fleet', 'unpriced/lark-hollow.yaml', '--stages', 'bom,payback', '--out-dir', 'by-bill'])
    const payback = 'by-bill/lark-hollow/payback.json'
    const { exitCode, values } = await verifyFile(payback, '--project', 'unpriced/lark-hollow.yaml')
    expect({ exitCode, found: values?.comparison }).toMatchObject({ exitCode: 0, found: { differences: [] } })
  })

  test('in which one figure was changed is told, and the figure by its path', async () => {
    const edited = put('edited.json', read('wire.json').replace(/"breaker_a": \d+/u, '"breaker_a": 100'))
    expect(await verifyFile(edited)).toMatchObject({
      exitCode: 1,
      ids: ['verify.changed'],
      values: { unchanged: false },
    })
    const { exitCode, values, ids } = await verifyFile(edited, '--project', house)
    expect({ exitCode, ids }).toEqual({ exitCode: 1, ids: ['verify.changed', 'verify.differs'] })
    expect(values?.comparison?.differences).toEqual([
      {
        path: expect.stringMatching(/^circuits\.0\.breaker_a$/u),
        in_file: '100',
        anew: expect.stringMatching(/^\d\d$/u),
      },
    ])
  })

  test('with a new seal on a changed figure is whole, and differs when worked out anew', async () => {
    const forged = put(
      'forged.json',
      remade(read('yield.json'), (one) => Object.assign((one['values'] as never)['annual'], { ac_kwh: 99_999 })),
    )
    expect(await verifyFile(forged)).toMatchObject({ exitCode: 0, values: { unchanged: true } })
    const { exitCode, values } = await verifyFile(forged, '--project', house)
    expect(exitCode).toBe(1)
    expect(values?.comparison?.differences).toMatchObject([{ path: 'annual.ac_kwh', in_file: '99999' }])
    const text = await run(['verify-file', forged])
    expect(text.stdout.replaceAll(/\s+/gu, ' ')).toContain(
      'It does not tell by whom the file was written: anybody can write a file with a new seal.',
    )
  })

  test('without one of its errors or warnings, or with one more, and a new seal, differs when worked out anew', async () => {
    const told = (name: string) => (JSON.parse(read(name)) as { findings: { severity: string; id: string }[] }).findings
    const denver = join(ROOT, 'examples/fleet/denver-thin-air.yaml')
    await run(['space-mounts', denver, '--json', '--out', 'denver.json'])
    const lost = told('denver.json').find(({ severity }) => severity === 'warning')
    expect(await verifyFile('denver.json', '--project', denver)).toMatchObject({ exitCode: 0, ids: [] })
    const fewer = put(
      'fewer.json',
      remade(read('denver.json'), (one) => Object.assign(one, { findings: [] })),
    )
    const less = await verifyFile(fewer, '--project', denver)
    expect(less).toMatchObject({ exitCode: 1, ids: ['verify.differs'] })
    expect(less.values?.comparison?.differences.map(({ path }) => path)).toContain(`findings: warning ${lost?.id}`)
    const more = put(
      'more.json',
      remade(read('wire.json'), (one) =>
        Object.assign(one, {
          findings: [...told('wire.json'), { severity: 'error', id: 'wire.x', message: '', where: '' }],
        }),
      ),
    )
    expect((await verifyFile(more, '--project', house)).values?.comparison?.differences).toEqual([
      { path: 'findings: error wire.x', in_file: 'once', anew: null },
    ])
  })

  test('with a key twice is not as written, and a figure beyond all numbers is no figure', async () => {
    const twice = put('twice.json', read('yield.json').replace('"annual": {', '"annual": { "ac_kwh": 99999,'))
    expect(await verifyFile(twice)).toMatchObject({ exitCode: 1, ids: ['verify.changed'] })
    const beyond = put('beyond.json', read('yield.json').replace('"flag": null', '"flag": 1e999'))
    const { exitCode, ids, values } = await verifyFile(beyond, '--project', house)
    expect({ exitCode, ids }).toEqual({ exitCode: 1, ids: ['verify.changed', 'verify.differs'] })
    expect(values?.comparison?.differences).toMatchObject([{ in_file: 'Infinity', anew: 'null' }])
  })

  test('saved by an editor with a mark of byte order is as written', async () => {
    const marked = put('marked.json', `\uFEFF${read('yield.json').replaceAll('\n', '\r\n')}`)
    expect(await verifyFile(marked)).toMatchObject({ exitCode: 0, ids: [] })
  })

  test('of another build, and of another project', async () => {
    const other = put(
      'other.json',
      remade(read('wire.json'), (one) => Object.assign(one, { build: '0123456789abcdef' })),
    )
    expect(await verifyFile(other, '--project', house)).toMatchObject({ exitCode: 0, ids: ['verify.other-build'] })
    const changed = await verifyFile('wire.json', '--project', house, '--set', 'electrical.panel.bus_a=225')
    expect(changed).toMatchObject({ exitCode: 1, values: { comparison: { same_project: false } } })
    expect(changed.ids).toContain('verify.other-project')
    expect(changed.values?.comparison?.differences.map(({ path }) => path)).toContain('panel.bus_a')
  })

  test('that an option added to is compared without that', async () => {
    await run(['payback', house, '--versus', 'finance.installed_cost_usd=1', '--json', '--out', 'versus.json'])
    const { exitCode, ids } = await verifyFile('versus.json', '--project', house)
    expect({ exitCode, ids }).toEqual({ exitCode: 0, ids: ['verify.not-compared'] })
  })
})

describe.each(['proposal', 'application', 'handover'])('a paper: %s', (paper) => {
  test('is known, worked out anew from its project, and damage shows', async () => {
    const plan = join(ROOT, 'examples/fleet/springfield-whole-job.yaml')
    const name = `${paper}.pdf`
    await run([`write-${paper}`, plan, '--out', name])
    const good = await verifyFile(name, '--project', plan)
    expect({ exitCode: good.exitCode, ids: good.ids, kind: good.values?.kind }).toEqual({
      exitCode: 0,
      ids: [],
      kind: paper,
    })
    const moved = await verifyFile(name, '--project', plan, '--set', 'arrays.main.standoff_in=6')
    expect(moved.ids).toContain('verify.other-project')
    const less = await verifyFile(name, '--project', house)
    expect(less.ids).toEqual(expect.arrayContaining(['verify.other-project', 'verify.differs']))
    const damaged = readFileSync(at(name))
    damaged[1000] = (damaged[1000] ?? 0) ^ 1
    expect(await verifyFile(put(`damaged-${name}`, damaged))).toMatchObject({ exitCode: 1, ids: ['verify.changed'] })
  })
})

describe('a packet', () => {
  test('prints build and hash in the margin of each sheet, and bears a seal', async () => {
    const { exitCode, values, ids } = await verifyFile('packet.pdf', '--project', house)
    expect({ exitCode, ids, kind: values?.kind }).toEqual({ exitCode: 0, ids: [], kind: 'packet' })
    const project = values?.parts[0]?.project.slice(0, 16)
    const pages = await pagesOf(new Uint8Array(readFileSync(at('packet.pdf'))))
    const imprint = `build ${values?.this_build}; project ${project}; values `
    const drawn = pages.filter(({ text }) => text.includes('SHEET NUMBER'))
    expect(drawn.length).toBeGreaterThan(10)
    expect(drawn.filter(({ text }) => !text.includes(imprint))).toEqual([])
  })

  test('with one byte changed anywhere, or pages put behind it, is told', async () => {
    const whole = readFileSync(at('packet.pdf'))
    for (const place of [9, 1000, Math.floor(whole.length / 2), whole.length - 3]) {
      const bytes = Buffer.from(whole)
      bytes[place] = (bytes[place] ?? 0) ^ 1
      expect(await verifyFile(put('byte.pdf', bytes)), String(place)).toMatchObject({
        exitCode: 1,
        ids: ['verify.changed'],
      })
    }
    const longer = put(
      'longer.pdf',
      Buffer.concat([whole, Buffer.from('\n1 0 obj\n<<>>\nendobj\nstartxref\n9\n%%EOF\n')]),
    )
    expect(await verifyFile(longer)).toMatchObject({ exitCode: 1, ids: ['verify.changed'] })
    const seal = whole.lastIndexOf('"draft":false')
    const undrafted = Buffer.concat([whole.subarray(0, seal), Buffer.from('"draft":true '), whole.subarray(seal + 13)])
    expect(await verifyFile(put('draft.pdf', undrafted))).toMatchObject({ exitCode: 1 })
  })

  test('of other values is told by stage', async () => {
    const { exitCode, values } = await verifyFile(
      'packet.pdf',
      '--project',
      house,
      '--set',
      'electrical.panel.bus_a=225',
    )
    expect(exitCode).toBe(1)
    expect(values?.comparison?.differences.map(({ path }) => path)).toEqual(['wire'])
  })
})

describe('lines of a fleet', () => {
  test('are as written; one that was changed or cut off is named', async () => {
    const whole = await verifyFile('fleet.jsonl')
    expect(whole).toMatchObject({ exitCode: 0, values: { kind: 'fleet', unchanged: true } })
    expect(whole.values?.parts.map(({ name, line }) => [name, line])).toEqual([
      ['reno-dry-high', 1],
      ['denver-thin-air', 2],
    ])
    const [one = '', two = ''] = read('fleet.jsonl').split('\n')
    const changed = put('changed.jsonl', `${one}\n${two.replace(/"status":"\w+"/u, '"status":"failed"')}\n`)
    const result = await run(['verify-file', changed])
    expect(result.exitCode).toBe(1)
    expect(result.stdout.replaceAll(/\s+/gu, ' ')).toContain('line 2 (denver-thin-air)')
    expect(await verifyFile(put('cut.jsonl', `${one}\n${two.slice(0, -9)}`))).toMatchObject({
      exitCode: 1,
      ids: ['verify.broken-lines'],
    })
  })

  test('the line of a project is found by its hash and worked out anew', async () => {
    const project = join(ROOT, 'examples/fleet/denver-thin-air.yaml')
    const same = await verifyFile('fleet.jsonl', '--project', project)
    expect(same).toMatchObject({ exitCode: 0, values: { comparison: { same_project: true, differences: [] } } })
    const none = await run(['verify-file', 'fleet.jsonl', '--project', house])
    expect(none).toMatchObject({ exitCode: 2, stdout: '' })
    expect(none.stderr).toContain('none of these 2 lines is of this project')
    const [, two = ''] = read('fleet.jsonl').split('\n')
    const forged = put(
      'forged.jsonl',
      `${remade(two, (one) => Object.assign((one['stages'] as never)['yield'], { 'annual.ac_kwh': 1 }))}\n`,
    )
    const { exitCode, values } = await verifyFile(forged, '--project', project)
    expect(exitCode).toBe(1)
    expect(values?.comparison?.differences.map(({ path }) => path)).toEqual(['yield.annual.ac_kwh'])
  })

  test('that hides an error of its house differs', async () => {
    const project = house
    const set = ['--set', 'electrical.panel.bus_a=100']
    await run(['run-fleet', project, ...set, '--stages', 'wire', '--jsonl', '--out', 'failed.jsonl'])
    expect(await verifyFile('failed.jsonl', '--project', project, ...set)).toMatchObject({ exitCode: 0, ids: [] })
    const hidden = put(
      'hidden.jsonl',
      `${remade(read('failed.jsonl'), (one) => Object.assign(one, { status: 'ok', findings: [] }))}\n`,
    )
    const { exitCode, values } = await verifyFile(hidden, '--project', project, ...set)
    expect(exitCode).toBe(1)
    const paths = values?.comparison?.differences.map(({ path }) => path) ?? []
    expect(paths).toContain('status')
    expect(paths.some((path) => path.startsWith('findings: error wire.'))).toBe(true)
  })
})

describe('a signature with one’s own key', () => {
  const pair = (name: string) => {
    const { publicKey, privateKey } = generateKeyPairSync('ed25519')
    put(`${name}.pem`, privateKey.export({ type: 'pkcs8', format: 'pem' }))
    put(`${name}.pub.pem`, publicKey.export({ type: 'spki', format: 'pem' }))
    return { publicKey, fingerprint: `sha256:${sha256Of(publicKey.export({ type: 'spki', format: 'der' }))}` }
  }

  test('is over the bytes of the file, so that others can check it, and fails when file or key is another', async () => {
    const mine = pair('mine')
    pair('theirs')
    const signed = await run(['verify-file', 'wire.json', '--sign', 'mine.pem'])
    expect(signed.exitCode).toBe(0)
    const signature = JSON.parse(read('wire.json.sig')) as { key: string; signature: string; sha256: string }
    expect(signature).toMatchObject({ algorithm: 'Ed25519', file: 'wire.json', key: mine.fingerprint })
    const bytes = readFileSync(at('wire.json'))
    // RFC 8032: Ed25519 takes the message itself.
    expect(verify(null, bytes, mine.publicKey, Buffer.from(signature.signature, 'base64'))).toBe(true)
    expect(await verifyFile('wire.json', '--key', 'mine.pub.pem')).toMatchObject({
      exitCode: 0,
      values: { signature: { standing: 'good' } },
    })
    expect(await verifyFile('wire.json')).toMatchObject({
      exitCode: 0,
      values: { signature: { standing: 'not checked' } },
    })
    const other = await verifyFile('wire.json', '--key', 'theirs.pub.pem')
    expect(other).toMatchObject({ exitCode: 1, ids: ['verify.bad-signature'] })
    expect(other.values?.signature?.says).toContain(`made with another key, ${mine.fingerprint}`)
    // A figure changed and sealed anew: only the signature shows it.
    put(
      'resealed.json',
      remade(read('wire.json'), (one) => Object.assign(one, { cautions: [] })),
    )
    put('resealed.json.sig', read('wire.json.sig'))
    expect(await verifyFile('resealed.json')).toMatchObject({ exitCode: 0 })
    const resealed = await verifyFile('resealed.json', '--key', 'mine.pub.pem')
    expect(resealed).toMatchObject({ exitCode: 1, ids: ['verify.bad-signature'] })
    expect(resealed.values?.signature?.says).toContain('the file has changed since it was signed')
  })

  test('is not made of a file that is changed, does not replace one, and wants the right key', async () => {
    pair('again')
    const edited = put('unsigned.json', read('wire.json').replace('"breaker_a"', '"braker_a"'))
    expect(await verifyFile(edited, '--sign', 'again.pem')).toMatchObject({
      exitCode: 1,
      ids: ['verify.changed', 'verify.not-signed'],
    })
    expect(existsSync(`${edited}.sig`)).toBe(false)
    put('mounts.json.sig', 'mine')
    expect((await verifyFile('mounts.json', '--sign', 'again.pem')).exitCode).toBe(3)
    expect(read('mounts.json.sig')).toBe('mine')
    const { privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
    put('ec.pem', privateKey.export({ type: 'pkcs8', format: 'pem' }))
    for (const [option, key, says] of [
      ['--sign', 'ec.pem', 'a key of another kind (ec); wanted is Ed25519'],
      ['--sign', 'again.pub.pem', 'it is no private key in PEM form'],
      ['--key', 'again.pem', 'it holds a private key'],
      ['--key', 'none.pem', 'cannot read none.pem'],
    ] as const) {
      const { exitCode, stderr } = await verifyFile('bom.json', option, key)
      expect(exitCode).toBe(3)
      expect(stderr).toContain(says)
    }
  })
})

test.each([
  [['none.json'], 3, 'cannot read none.json'],
  [[join(ROOT, 'package.json')], 3, 'bears no seal of this program'],
  [[house], 3, 'bears no seal of this program'],
  [[join(ROOT, 'examples/fleet/letter-rafters.pdf')], 3, 'bears no seal of this program'],
  [[join(ROOT, 'examples/fleet/baseline.json'), '--project', house], 2, 'a fleet baseline is not of one project'],
  [['wire.json', '--set', 'title=x'], 2, '--set and --allow-outside go with --project'],
  [['wire.json', '--sign', 'a', '--key', 'b'], 2, 'give one of them'],
])('%j ends with %s', async (args, exitCode, says) => {
  const result = await run(['verify-file', ...args])
  expect({ exitCode: result.exitCode, stdout: result.stdout }).toEqual({ exitCode, stdout: '' })
  expect(result.stderr).toContain(says)
})

test('values are compared by path; numbers to nine digits', () => {
  expect(compareValues({ a: [1, { b: 2 }], c: 'x' }, { a: [1, { b: 2.000000001 }], c: 'x' })).toEqual([])
  expect(compareValues({ a: [1, { b: 2 }], c: 'x' }, { a: [1, { b: 2.00001 }, 3], d: null })).toEqual([
    { path: 'a.1.b', inFile: '2', anew: '2.00001' },
    { path: 'a.2', inFile: undefined, anew: '3' },
    { path: 'c', inFile: '"x"', anew: undefined },
    { path: 'd', inFile: undefined, anew: 'null' },
  ])
  expect(compareValues({ a: [] }, { a: {} })).toHaveLength(1)
  expect(compareValues({ a: Infinity }, { a: 5 })).toEqual([{ path: 'a', inFile: 'Infinity', anew: '5' }])
  expect(compareValues({ a: -0, b: '1' }, { a: 0, b: 1 })).toEqual([{ path: 'b', inFile: '"1"', anew: '1' }])
})
