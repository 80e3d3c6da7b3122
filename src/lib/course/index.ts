/** Ids of the shipped scenarios, in the order in which they are offered. Their documents: `shipped.ts`. */
export const SHIPPED_IDS = [
	'bridge-bearing',
	'stage-grid',
	'flat-roof-edge',
	'turbine-nacelle',
	'formwork-deck',
	'loading-dock',
	'silo-top',
	'telecom-mast',
	'tank-roof',
	'lift-shaft'
] as const;

export type ShippedId = (typeof SHIPPED_IDS)[number];
