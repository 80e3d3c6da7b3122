export { SLIPS, SLIP_SET_VERSION, slipOf, type CataloguedSlip, type SlipId } from './catalogue.ts';
export type { Errs, Slip, SlipContext, Tier } from './slip.ts';
export { VariantMemory, contextKey, variantsOf, type Variant, type VariantSet } from './variants.ts';
