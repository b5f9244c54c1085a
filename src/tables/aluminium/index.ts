export {
  ALLOYS,
  ALUMINIUM_EXPANSION_PER_F,
  ALUMINIUM_MODULUS_PSI,
  ALUMINIUM_SAFETY,
  SHEAR_OVER_TENSION,
  type Alloy,
  type AlloyStrength,
} from './strengths.js'
