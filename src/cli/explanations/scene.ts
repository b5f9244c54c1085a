import { PRACTICE, type Explanations } from './explanation.js'

/** Findings of the house in space. */
export const SCENE: Explanations = {
  'scene.plane-not-in-space': {
    means:
      'A roof plane with modules has no place or no height, so that it is a world of its own: only its own chimneys, the horizon and things seen from the arrays shade it.',
    rule: 'Two roofs shade each other only when it is known where each stands and how high its eave is. Without that the estimate can be too high.',
    sources: [PRACTICE],
    fix: 'State eave_left (or its place in site_plan.roof_planes) and eave_height_ft of every roof plane.',
  },
  'scene.north-assumed': {
    means:
      'Roof planes stand in the site plan, but the plan does not say where north is; its upper edge is taken as north.',
    rule: 'The sun comes from a true direction. A plan that is turned puts trees and other roofs on the wrong side of the modules.',
    sources: [PRACTICE],
    fix: 'State site_plan.up_azimuth_deg.',
  },
  'scene.module-inside': {
    means: 'By the places and heights that are stated, a module would lie inside of something solid.',
    rule: 'Things cannot be in one place. A height above ground where one above the roof is meant, or a left and right mixed up, is the usual reason.',
    sources: [PRACTICE],
    fix: 'Correct the place or the height of one of them.',
  },
  'scene.plane-inside': {
    means: 'A large part of a roof plane lies inside another building or roof.',
    rule: 'Roofs that meet in a valley share a small part. More than that means that one of them stands in the wrong place, and it is drawn and shaded wrongly.',
    sources: [PRACTICE],
    fix: 'Correct the place, the height or the outline of one of them; leave height_ft of a building out where roof planes stand over it.',
  },
  'scene.buried': {
    means: 'Something stands wholly inside another thing, so that nothing of it can be seen.',
    rule: 'It throws no shade, although it is in the file: its place or its height is wrong.',
    sources: [PRACTICE],
    fix: 'Correct its place or height, or leave it out.',
  },
  'scene.floats': {
    means: 'A chimney, vent or other thing on a roof lies wholly beyond the edges of its plane.',
    rule: 'Things on a roof are placed along the eave and up the slope of their own plane; beyond its edges there is nothing to stand on.',
    sources: [PRACTICE],
    fix: 'Correct x_ft and y_ft, or state it under site.obstacles.',
  },
  'scene.plane-off-building': {
    means: 'A roof plane reaches far beyond every building that the site plan draws.',
    rule: 'Roofs overhang their walls by a foot or two. More means that the plane is placed or turned wrongly, or that the plan is.',
    sources: [PRACTICE],
    fix: 'Check eave_left, azimuth_deg and site_plan.up_azimuth_deg, or draw the building.',
  },
  'scene.building-without-height': {
    means: 'A building stands on the site plan, but nothing says how high it is, so it throws no shade.',
    rule: 'Shade needs heights. A low shed far away matters little, a house to the south a lot.',
    sources: [PRACTICE],
    fix: 'State its height_ft, or nothing where it is too low to matter.',
  },
}
