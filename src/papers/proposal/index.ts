export { customerFacts, withCustomer } from './customer.js'
export { gatherOffer, type OfferWishes } from './gather-offer.js'
export { proposalPaper } from './proposal-paper.js'
export type * from './proposal-values.js'
