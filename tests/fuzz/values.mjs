/** Numbers at which programs break: signs, bounds, tiny, huge, and what text can make of a number. */
export const NUMBERS = [
  '0', '-0', '-1', '1', '1e-300', '5e-324', '1e300', '-1e300', '1.7976931348623157e308', '0.1', '1e21', '1e-7', '-89.99999',
  '90', '180', '-180', '359.999', '360', '2147483648', '9007199254740993', '0x10', '0o17', '1_000', '1,5', '.5', '5.', '+3', '1e', '00012',
]

/** Scalars as YAML, JSON, CSV and XML may hold them. */
export const SCALARS = [
  ...NUMBERS,
  'true', 'no', '~', 'null', "''", '""', '[]', '{}', '[1, 2, 3]', '{ a: b }', 'text', '2026-02-30', '2026-03-08 02:30', '24:00', '.nan', '.inf', '-.inf',
  'NaN', 'Infinity', 'undefined', '<<', '__proto__', 'constructor', 'toString', 'hasOwnProperty', '=1+1', '@SUM(A1)', '-2+3', '"\\e[31mred\\a"',
  "'; DROP'", '${x}', '%s%n', '&a', '*a', '!!binary aaaa', '|', '>', '#', '?', ':', '-', '\\', '\t', '\u00a0', '\u202e', '\u2028', '\ufeff', '\u0000', '\u001b[2J',
  'é', '漢字', '😀', '../../etc/passwd', '/dev/zero', '.', '-', 'x'.repeat(3000), 'south', 'm410', 'NEC 2099', 'ASCE 7-10', 'fit', 'nearby',
]

/** Names that hurt objects used as maps. */
export const KEYS = ['__proto__', 'constructor', 'toString', 'a.b', 'a b', '', '0', '-1', 'é', 'x'.repeat(300), 'south', 'valueOf', '\u001b[31m']
