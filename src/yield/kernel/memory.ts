/**
 * The memory that kernels work on, when they run as JavaScript. `memory.as` holds the same words for their WebAssembly form.
 * Addresses are bytes; a value stands at a multiple of its own size.
 */

/** A whole number of 32 bits, such as an address. */
export type Int = number
export type Real = number

let [reals, floats, ints, bytes] = viewsOf(new ArrayBuffer(0))

/** Lets kernels that run as JavaScript work on a buffer. */
export function workOn(buffer: ArrayBuffer): void {
  ;[reals, floats, ints, bytes] = viewsOf(buffer)
}

function viewsOf(buffer: ArrayBuffer): [Float64Array, Float32Array, Int32Array, Uint8Array] {
  return [new Float64Array(buffer), new Float32Array(buffer), new Int32Array(buffer), new Uint8Array(buffer)]
}

export function realAt(address: Int): Real {
  return reals[address >> 3]!
}

export function setReal(address: Int, value: Real): void {
  reals[address >> 3] = value
}

/** A number of single precision. */
export function floatAt(address: Int): Real {
  return floats[address >> 2]!
}

export function setFloat(address: Int, value: Real): void {
  floats[address >> 2] = value
}

export function intAt(address: Int): Int {
  return ints[address >> 2]!
}

export function setInt(address: Int, value: Int): void {
  ints[address >> 2] = value
}

export function byteAt(address: Int): Int {
  return bytes[address]!
}

export function setByte(address: Int, value: Int): void {
  bytes[address] = value
}

/** A whole number where a number is wanted. */
export function toReal(value: Int): Real {
  return value
}

/** The whole part of a number that is not below zero. */
export function toInt(value: Real): Int {
  return Math.trunc(value)
}
