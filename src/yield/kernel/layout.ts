/** Where things stand in the memory of the kernels, bytes from the beginning of each. */

/**
 * A solid: how many faces it has, or ROUND; then, from SOLID_DATA, four numbers a face (outward normal, distance from the origin,
 * ft), or of a round one east, north, radius, base and top, ft.
 */
export const SOLID_FACES = 0
export const SOLID_DATA = 8
export const ROUND = -1

/**
 * A solid as one module sees it: its address; the thing it belongs to, or OPAQUE; whether it is the module's own roof; the
 * cones (axis, least cosine) in which it is seen above level and at all; and, where it has faces, room for how far inside of each face
 * each point of the module lies (face by face), and for one number a face that belongs to the direction asked last.
 */
export const SEEN_SOLID = 0
export const SEEN_THING = 4
export const SEEN_OWN_ROOF = 8
export const SEEN_ABOVE = 16
export const SEEN_WHOLE = 48
export const SEEN_INSIDE = 80
export const SEEN_AIM = 84
export const SEEN_SIZE = 88
export const OPAQUE = -1

/**
 * What a module sees: the address of the first of its solids, opaque ones first, then those of each thing in a row; how many
 * there are of both kinds; how many things; its bypass sections; points of its face; middle, normal and half diagonal, ft.
 */
export const VIEW_SEEN = 0
export const VIEW_OPAQUE_COUNT = 4
export const VIEW_SEEN_COUNT = 8
export const VIEW_THINGS = 12
export const VIEW_SECTIONS = 16
export const VIEW_POINTS = 20
/** Twelve shares of light that passes, for each thing. */
export const VIEW_TRANSMITTANCE = 24
/** Numbers of the points, eight for each look at the sky, each look beside its mirror image. */
export const VIEW_LOOKS = 28
export const VIEW_MIDDLE = 32
export const VIEW_NORMAL = 56
export const VIEW_RADIUS = 80
export const VIEW_SIZE = 88

/** A point or a direction: east, north, up. */
export const POINT_SIZE = 24

/**
 * Some directions that lie together: how many, how far on the first is (see `RAY_SIZE`), a cone round all of them (axis, cosine and
 * sine of half its angle), and four directions of which the cone lies between.
 */
export const CELL_COUNT = 0
export const CELL_RAYS = 4
export const CELL_AXIS = 8
export const CELL_COSINE = 32
export const CELL_SINE = 40
export const CELL_CORNERS = 48
export const CELL_SIZE = 144
/** A direction, its number, and twice the number of its pair of mirror images, plus 1 for the second of them. */
export const RAY_NUMBER = 24
export const RAY_PAIR = 28
export const RAY_SIZE = 32

/**
 * One module through the year: addresses of its columns (numbers by step, but for MONTH and SUN, whole numbers), and what it is
 * worked out with. An address of 0 means that there is none.
 */
export const DC_LENGTH = 0
export const DC_MONTH = 4
export const DC_SUN = 8
export const DC_HOURS = 12
export const DC_DRY_BULB = 16
export const DC_GHI = 20
export const DC_PLANE = 24
export const DC_DIRECT = 28
export const DC_SKY = 32
export const DC_GROUND = 36
export const DC_DIRECT_IN = 40
export const DC_RISE = 44
export const DC_SNOW = 48
/** Power of the module, W: filled. */
export const DC_OUT = 52
/** Shares by the sun's number, and time with 0, 1, ... sections free; SECTIONS is 0 where nothing shades. */
export const DC_THROUGH = 56
export const DC_LIT = 60
export const DC_TIME = 64
export const DC_SECTIONS = 68
/** The curve of series: columns of dull shares, and the tables. */
export const DC_CURVE_DULL = 72
export const DC_CURVE_PAST = 76
export const DC_CURVE_ALONG = 80
/** Filled for the string: power in full and in dull light, and alone, W. */
export const DC_FULL = 84
export const DC_DULL = 88
export const DC_ALONE = 92
/** What the string leaves. */
export const DC_FACTOR = 96
export const DC_RESISTIVE = 100
export const DC_SKY_MODIFIER = 104
export const DC_GROUND_MODIFIER = 112
export const DC_PMAX = 120
export const DC_PER_K = 128
export const DC_SLOPE = 136
export const DC_KEPT = 144
export const DC_WIRING = 152
export const DC_COMPARED_RISE = 160
/** Twelve numbers each: what dirt leaves, and what shade leaves of sky and ground. */
export const DC_CLEAN = 168
export const DC_SKY_SEEN = 264
export const DC_GROUND_SEEN = 360
/** Filled: sums over the year, in the order of the loop's losses. */
export const DC_SUMS = 456
export const DC_SUM_COUNT = 11
export const DC_SIZE = 544

/** One inverter through the year; see `station`. */
export const AC_LENGTH = 0
export const AC_MONTH = 4
export const AC_HOURS = 8
export const AC_INPUTS = 12
export const AC_INPUT_COUNT = 16
/** The curve of its efficiency: DC power and AC over DC. */
export const AC_POINTS = 20
export const AC_EFFICIENCY = 24
export const AC_POINT_COUNT = 28
export const AC_RESISTIVE = 32
/** Added to: AC, DC and clipped power of the system, W. */
export const AC_TOTAL_AC = 36
export const AC_TOTAL_DC = 40
export const AC_TOTAL_CLIPPED = 44
export const AC_RATING = 48
export const AC_WIRING = 56
export const AC_UP = 64
/** How many equal inverters this stands for. */
export const AC_COUNT = 72
/** Filled: what clouds within the hour take on top, kWh. */
export const AC_WITHIN_HOUR = 80
export const AC_SIZE = 88

/** An input of an inverter: its column of DC power and of the spread of light, how many modules, and what is summed up. */
export const INPUT_DC = 0
export const INPUT_SPREAD = 4
export const INPUT_MODULES = 8
/** Twelve months of DC, AC and clipped energy, and the energy after each of four losses, kWh. */
export const INPUT_TALLY = 16
export const INPUT_LOSSES = 304
export const INPUT_SIZE = 336
