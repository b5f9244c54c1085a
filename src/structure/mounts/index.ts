export { lagCapacity, mountChecks, type MountCheck, type MountStrength } from './mount-capacity.js'
export { allLayouts, evenLayout, fewestMounts, optimisedMounts, type LayoutProblem } from './mount-layout.js'
