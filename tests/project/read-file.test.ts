import { execFileSync } from 'node:child_process'
import {
  closeSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { decodeText, FileTrouble, openRegular, readBytes, TooLarge } from '../../src/project/read-file.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-read-'))
afterAll(() => rmSync(folder, { recursive: true }))

const saved = (name: string, bytes: Uint8Array): string => {
  const path = join(folder, name)
  writeFileSync(path, bytes)
  return path
}
/** What is said, and whether the file as such is unreadable. */
const said = (work: () => unknown): readonly [string, boolean] | undefined => {
  try {
    work()
    return undefined
  } catch (error) {
    if (error instanceof FileTrouble) return [error.message, error.unreadable]
    throw error
  }
}

describe('a file is read whole', () => {
  test.each([0, 1, 65_535, 65_536, 65_537, 300_000])('of %i bytes', (length) => {
    const bytes = Buffer.from(Array.from({ length }, (_, at) => (at * 31) % 251))
    const path = saved('whole', bytes)
    expect(Buffer.compare(Buffer.from(readBytes(path, length)), bytes)).toBe(0)
    if (length > 0) expect(() => readBytes(path, length - 1)).toThrow(TooLarge)
  })

  test('its size and what is allowed are told, never the same figure for both', () => {
    const path = saved('large', Buffer.alloc(2_000_001))
    expect(said(() => readBytes(path, 2_000_000))).toEqual(['is 2.1 MB large; at most 2.0 MB is read', true])
    expect(said(() => readBytes(path, 2_000_001))).toBeUndefined()
  })

  test.skipIf(process.platform !== 'linux')('one whose size the system does not know has the same bound', () => {
    expect(Buffer.from(readBytes('/proc/self/status', 100_000)).toString()).toMatch(/^Name:[\s\S]+\nPid:/u)
    expect(() => readBytes('/proc/self/status', 50)).toThrow(TooLarge)
  })
})

describe('what is no file to read is refused without waiting', () => {
  test.skipIf(process.platform === 'win32')('a pipe, a device, a folder, a circle of links, nothing', () => {
    execFileSync('mkfifo', [join(folder, 'pipe')])
    mkdirSync(join(folder, 'folder'))
    symlinkSync('round', join(folder, 'round'))
    const at = (name: string): readonly [string, boolean] | undefined => said(() => readBytes(join(folder, name), 100))
    const noFile = "is not a regular file; to read from a pipe give '-' as the file name"
    expect(at('pipe')).toEqual([noFile, true])
    expect(said(() => readBytes('/dev/zero', 100))).toEqual([noFile, true])
    expect(at('folder')).toEqual(['is a folder, not a file', true])
    expect(at('round')).toEqual(['its symbolic links go round in a circle', true])
    expect(at('none')).toEqual(['no such file', true])
    expect(at('x'.repeat(300))).toEqual(['its name is too long', true])
  })

  test.skipIf(process.platform !== 'linux')('and is closed again', () => {
    const large = saved('closed', Buffer.alloc(200))
    const count = (): number => readdirSync('/proc/self/fd').length
    const before = count()
    for (let turn = 0; turn < 20; turn += 1) {
      said(() => openRegular(large, 100))
      said(() => openRegular(folder, 100))
      said(() => readBytes(large, 200))
    }
    expect(count()).toBeLessThan(before + 10)
    const kept = openRegular(large, 200)
    expect(readFileSync(kept)).toHaveLength(200)
    closeSync(kept)
  })
})

describe('bytes as text', () => {
  test('UTF-8 without its mark; what else it is is told with the line', () => {
    expect(decodeText(Buffer.from('\uFEFFz\u00F6lf'))).toBe('z\u00F6lf')
    const bad = Buffer.from([0x61, 0x0a, 0x62, 0xe9, 0x0a])
    expect(said(() => decodeText(bad))).toEqual(['is not UTF-8 text (line 2); save it as UTF-8', false])
    expect(decodeText(bad, 'latin1')).toBe('a\nb\u00E9\n')
    expect(said(() => decodeText(Buffer.from([0xff, 0xfe, 0x61, 0])))?.[0]).toContain('it looks like UTF-16')
    expect(said(() => decodeText(Buffer.from('a\0b')))).toEqual(['holds NUL characters; it is not a text file', false])
  })
})
