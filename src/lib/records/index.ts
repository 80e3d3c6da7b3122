export { canonicalJson } from './canonical.ts';
export { CAPACITIES, HANDS_ON_CHECKS, type Capacity, type HandsOnCheck, type HandsOnRecord, type Signature, type TheoryPassed } from './hands-on.ts';
