// The words of memory.ts for the compiler of WebAssembly.
type Int = i32
type Real = f64
@inline function realAt(address: Int): Real { return load<f64>(address) }
@inline function setReal(address: Int, value: Real): void { store<f64>(address, value) }
@inline function floatAt(address: Int): Real { return load<f32>(address) as f64 }
@inline function setFloat(address: Int, value: Real): void { store<f32>(address, value as f32) }
@inline function intAt(address: Int): Int { return load<i32>(address) }
@inline function setInt(address: Int, value: Int): void { store<i32>(address, value) }
@inline function byteAt(address: Int): Int { return load<u8>(address) as i32 }
@inline function setByte(address: Int, value: Int): void { store<u8>(address, value as u8) }
@inline function toReal(value: Int): Real { return value as f64 }
@inline function toInt(value: Real): Int { return value as i32 }
