import { deflateSync } from 'node:zlib'
import { decodePDFRawStream, PDFContext, PDFName, PDFRawStream } from '@cantoo/pdf-lib'
import { describe, expect, test } from 'vitest'
import {
  MOST_UNPACKED_BYTES,
  UnpacksTooFar,
  unpackWithin,
  withUnpackBudget,
} from '../../src/packet/pages/unpack-budget.js'

/** A packed stream of so many zeros. */
function packed(bytes: number): PDFRawStream {
  const stream = PDFRawStream.of(PDFContext.create().obj({}), deflateSync(Buffer.alloc(bytes), { level: 1 }))
  stream.dict.set(PDFName.of('Filter'), PDFName.of('FlateDecode'))
  return stream
}
const unpack = (stream: PDFRawStream): number => decodePDFRawStream(stream).decode().length
const says = (work: () => unknown): string => {
  try {
    return String(work())
  } catch (error) {
    return error instanceof UnpacksTooFar ? 'too far' : `another error: ${String(error)}`
  }
}

/** Room is made twice as large each time, from 512 bytes: the last step that fits, and one byte more. */
const LAST = 512 * 2 ** Math.floor(Math.log2(MOST_UNPACKED_BYTES / 512))
const fits = packed(LAST - 40_000)
const beyond = packed(LAST + 40_000)

describe('what a file may unpack to', () => {
  test('at the last room that fits and beyond it', { timeout: 60_000 }, () => {
    expect(MOST_UNPACKED_BYTES).toBe(64_000_000)
    expect(says(() => unpackWithin(() => unpack(fits)))).toBe(String(LAST - 40_000))
    expect(says(() => unpackWithin(() => unpack(beyond)))).toBe('too far')
    // Without a budget the library is as it was.
    expect(says(() => unpack(beyond))).toBe(String(LAST + 40_000))
  })

  test('all parts of one file together', { timeout: 60_000 }, async () => {
    const small = packed(3_000_000)
    const unpackAll = (count: number): Promise<number> =>
      withUnpackBudget(async () => {
        let sum = 0
        for (let at = 0; at < count; at += 1) sum += await Promise.resolve(unpack(small))
        return sum
      })
    // Each takes room of 4,194,304 bytes.
    expect(await unpackAll(15)).toBe(45_000_000)
    await expect(unpackAll(16)).rejects.toThrow(UnpacksTooFar)
    // The next file begins anew, and two at a time do not share.
    expect(await Promise.all([unpackAll(10), unpackAll(10)])).toEqual([30_000_000, 30_000_000])
  })

  test(
    'is told also where the library goes on after the error, or makes another of it',
    { timeout: 60_000 },
    async () => {
      const swallowed = withUnpackBudget(() => Promise.resolve(says(() => unpack(beyond))))
      await expect(swallowed).rejects.toThrow(UnpacksTooFar)
      const renamed = withUnpackBudget(() => {
        if (says(() => unpack(beyond)) === 'too far') throw new TypeError('a broken object')
        return Promise.resolve(1)
      })
      await expect(renamed).rejects.toThrow('its packed parts take more than 64 MB of memory when they are unpacked')
      // Another error stays what it is.
      await expect(withUnpackBudget(() => Promise.reject(new TypeError('broken')))).rejects.toThrow(TypeError)
    },
  )
})
