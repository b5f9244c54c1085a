import { AsyncLocalStorage } from 'node:async_hooks'
import { decodePDFRawStream, PDFContext, PDFName, PDFRawStream } from '@cantoo/pdf-lib'

/**
 * Most memory, bytes, that is made for the packed parts of one file where they have to be unpacked: lists of objects and what a
 * page draws, not pictures. It is made twice as large each time, so that one part alone may have 33 MB. Common practice, no
 * source: large specification sheets have a tenth of it.
 */
export const MOST_UNPACKED_BYTES = 64_000_000

/** What a file unpacks to takes more than is allowed. */
export class UnpacksTooFar extends Error {
  override readonly name = 'UnpacksTooFar'

  constructor() {
    super(`its packed parts take more than ${MOST_UNPACKED_BYTES / 1e6} MB of memory when they are unpacked`)
  }
}

interface Budget {
  left: number
  spent: boolean
}

const budgets = new AsyncLocalStorage<Budget>()
let isWatched = false

/**
 * Works on a file of a stranger with a bound of what it may unpack to. The engine's own limits of memory do not count what
 * is unpacked, and a thousandth of a gigabyte is enough to fill one.
 *
 * @throws UnpacksTooFar when that is spent, also where the library has taken the error for a broken part and gone on.
 */
export async function withUnpackBudget<Value>(work: () => Promise<Value>): Promise<Value> {
  watchUnpacking()
  const budget: Budget = { left: MOST_UNPACKED_BYTES, spent: false }
  return await budgets.run(budget, async () => {
    try {
      const value = await work()
      if (budget.spent) throw new UnpacksTooFar()
      return value
    } catch (error) {
      throw budget.spent ? new UnpacksTooFar() : error
    }
  })
}

/** As above, for one thing that is unpacked at once. @throws UnpacksTooFar when it is too much. */
export function unpackWithin<Value>(work: () => Value): Value {
  watchUnpacking()
  return budgets.run({ left: MOST_UNPACKED_BYTES, spent: false }, work)
}

/** Room of an unpacking stream of the library grows in one place, which all of its kinds share. */
interface UnpackingStream {
  buffer: { readonly byteLength: number }
  minBufferLength: number
  ensureBuffer(requested: number): unknown
}

function watchUnpacking(): void {
  if (isWatched) return
  const probe = PDFRawStream.of(PDFContext.create().obj({}), new Uint8Array([0x3e]))
  probe.dict.set(PDFName.of('Filter'), PDFName.of('ASCIIHexDecode'))
  const kind: unknown = Object.getPrototypeOf(decodePDFRawStream(probe))
  const shared = Object.getPrototypeOf(kind) as UnpackingStream
  if (!Object.hasOwn(shared, 'ensureBuffer')) throw new Error('the PDF library unpacks in another way than it did')
  // oxlint-disable-next-line typescript/unbound-method -- called with the stream below
  const grow = shared.ensureBuffer
  shared.ensureBuffer = function ensureBuffer(this: UnpackingStream, requested: number): unknown {
    const budget = budgets.getStore()
    const room = this.buffer.byteLength
    if (budget !== undefined && requested > room) {
      // It is made twice as large until it holds what is asked for.
      budget.left -= this.minBufferLength * 2 ** Math.ceil(Math.log2(requested / this.minBufferLength)) - room
      if (budget.left < 0) {
        budget.spent = true
        throw new UnpacksTooFar()
      }
    }
    return grow.call(this, requested)
  }
  isWatched = true
}
