// The words of memory.ts for the compiler of WebAssembly.
type Int = i32
type Real = f64
// @ts-ignore: decorator
@inline function realAt(address: Int): Real { return load<f64>(address) }
// @ts-ignore: decorator
@inline function setReal(address: Int, value: Real): void { store<f64>(address, value) }
// @ts-ignore: decorator
@inline function floatAt(address: Int): Real { return load<f32>(address) as f64 }
// @ts-ignore: decorator
@inline function setFloat(address: Int, value: Real): void { store<f32>(address, value as f32) }
// @ts-ignore: decorator
@inline function intAt(address: Int): Int { return load<i32>(address) }
// @ts-ignore: decorator
@inline function setInt(address: Int, value: Int): void { store<i32>(address, value) }
// @ts-ignore: decorator
@inline function byteAt(address: Int): Int { return load<u8>(address) as i32 }
// @ts-ignore: decorator
@inline function setByte(address: Int, value: Int): void { store<u8>(address, value as u8) }
// @ts-ignore: decorator
@inline function toReal(value: Int): Real { return value as f64 }
// @ts-ignore: decorator
@inline function toInt(value: Real): Int { return value as i32 }
