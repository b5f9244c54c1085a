/**
 * The element at an index that is known to be there. Where it is not, the caller is wrong: a number in its place would hide
 * that. Hot loops over typed arrays say `as number` instead, which costs nothing.
 *
 * @param index Counted from 0; it does not count from the end.
 * @throws RangeError when there is no such element (a defect of the caller).
 */
export function at<Value>(array: ArrayLike<Value | undefined>, index: number): Value {
  const value = array[index]
  if (value === undefined) throw new RangeError(`there is no element ${index} among ${array.length}`)
  return value
}
