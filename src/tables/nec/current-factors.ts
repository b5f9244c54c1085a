/**
 * A string can give more than its modules' short-circuit current at 1000 W/m2: its largest current is this many times the sum.
 * The same in the editions of 2011 to 2023.
 *
 * @source NEC 690.8(A)(1), to 2014; 690.8(A)(1)(1), 2017; 690.8(A)(1)(a)(1), 2020 and 2023
 */
export const SHORT_CIRCUIT_FACTOR = 1.25

/**
 * Terminals and overcurrent devices carry a current of three hours and more at this many times its size. The same in the editions of
 * 2011 to 2023.
 *
 * @source NEC 690.8(B), 690.9(B); AC side 705.60(B) to 2017, 705.28(B) 2020 and 2023
 */
export const CONTINUOUS_FACTOR = 1.25

/**
 * A busbar or a feeder counts a source with this many times its rated output current, where the rule counts currents and not devices.
 * The same in the editions of 2014 to 2023.
 *
 * @source NEC 705.12(D)(2), 2014; 705.12(B)(2), 2017; 705.12(B), 2020 and 2023
 */
export const SOURCE_FACTOR = 1.25
