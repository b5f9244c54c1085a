/**
 * Coefficients of the anisotropic sky, one row per clearness bin.
 *
 * Perez, Ineichen, Seals, Michalsky & Stewart 1990, Solar Energy 44:271-289, all-sites set with extended digits as they
 * stand in the EnergyPlus Engineering Reference (secondary; Table 6 of the paper holds the three-digit roundings).
 */
export const PEREZ_1990 = {
  /** Lower bound of sky clearness epsilon for bins 2 to 8. */
  binFrom: [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2],
  /** F11 F12 F13 F21 F22 F23 for bins 1 to 8. */
  coefficients: [
    [-0.0083117, 0.5877285, -0.0620636, -0.0596012, 0.0721249, -0.0220216],
    [0.1299457, 0.6825954, -0.1513752, -0.0189325, 0.065965, -0.0288748],
    [0.3296958, 0.4868735, -0.2210958, 0.055414, -0.0639588, -0.0260542],
    [0.5682053, 0.1874525, -0.295129, 0.1088631, -0.1519229, -0.0139754],
    [0.873028, -0.3920403, -0.3616149, 0.2255647, -0.4620442, 0.0012448],
    [1.1326077, -1.2367284, -0.4118494, 0.2877813, -0.8230357, 0.0558651],
    [1.0601591, -1.5999137, -0.3589221, 0.2642124, -1.127234, 0.1310694],
    [0.677747, -0.3272588, -0.2504286, 0.1561313, -1.3765031, 0.2506212],
  ],
} as const
