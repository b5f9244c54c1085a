/** Round marks of an axis that hold all values and zero, rising. */
export function axisMarks(values: readonly number[], most = 5): number[] {
  const low = Math.min(0, ...values)
  const high = Math.max(0, ...values)
  const span = high - low || 1
  const rough = span / most
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = power * ([1, 2, 2.5, 5, 10].find((each) => each * power >= rough * (1 - 1e-9)) ?? 10)
  const first = Math.floor(low / step + 1e-9)
  const last = Math.ceil(high / step - 1e-9)
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(10)) + 0)
}
