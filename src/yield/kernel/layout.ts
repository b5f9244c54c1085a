/** Where things stand in the memory of the kernels, bytes from the beginning of each. */

/**
 * A solid: how many faces it has, or ROUND; then, from SOLID_DATA, four numbers a face (outward normal, distance from the origin,
 * ft), or of a round one east, north, radius, base and top, ft.
 */
export const SOLID_FACES = 0
export const SOLID_DATA = 8
export const ROUND = -1

/**
 * A solid as one module sees it: its address; the thing it belongs to, or OPAQUE; whether it is the module's own roof; and the
 * cones (axis, least cosine) in which it is seen above level and at all.
 */
export const SEEN_SOLID = 0
export const SEEN_THING = 4
export const SEEN_OWN_ROOF = 8
export const SEEN_ABOVE = 16
export const SEEN_WHOLE = 48
export const SEEN_SIZE = 80
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
/** A direction, and its number in the sequence. */
export const RAY_NUMBER = 24
export const RAY_SIZE = 32
