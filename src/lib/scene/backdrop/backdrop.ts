/**
 * A backdrop is the site around the plan: what one stands on, what carries the anchorage, what one works
 * at. It is drawn round the given heights, so that any plan fits any backdrop. Metres; z = 0 the walking
 * surface, x = 0 the plumb line of the anchorage.
 *
 * Two views. Profile: the worker's back is to the edge, the anchorage straight above or below. Front: one
 * looks at the edge, the surface runs across the sheet, and an offset along the edge is seen at its true length.
 */
import type { Shape } from '../drawing/shapes.ts';
import type { BackdropId, SiteModel } from '../model.ts';

export interface BackdropFrame {
	readonly site: SiteModel;
	readonly sight: 'profile' | 'front';
	/** Cut of the sheet, m. */
	readonly left: number;
	readonly right: number;
	readonly top: number;
	/** Profile: where the walking surface ends. */
	readonly edge: number;
	/** z of the lower level. */
	readonly ground: number;
	/** Front: from where to where the surface is seen. */
	readonly front: { readonly from: number; readonly to: number };
	/** Height of the structure that carries the anchorage, when that is overhead; else null. */
	readonly overhead: number | null;
}

export interface Backdrop {
	/** Back to front. */
	readonly shapes: readonly Shape[];
	/** Where words would meet hatch or detail: [left, bottom, right, top] in m. */
	readonly busy: readonly (readonly [number, number, number, number])[];
	/** Right end of the walking surface, where its level line starts. */
	readonly surfaceTo: number;
	/** Underside of what one stands on, m; 0.2 m under the surface when left out. */
	readonly under?: number;
}

/** What the worker does there, in profile: reaches up, or works at waist height. */
export const REACHES: Readonly<Record<BackdropId, boolean>> = {
	'bridge-bearing': true,
	'flat-roof-edge': false,
	'turbine-nacelle': true,
	'silo-top': false,
	'loading-dock': false,
	'stage-grid': true,
	'telecom-mast': true,
	'tank-roof': false,
	'lift-shaft': true,
	'formwork-deck': false
};

/** An anchorage is overhead when it is well above the D-ring's reach of a hand; lower ones stand on the surface. */
export function isOverhead(site: SiteModel): boolean {
	return site.anchorage.height >= 1.6;
}

/** One looks at the edge when the offset must be seen, or when the anchorage stands on the surface. */
export function sightOf(site: SiteModel): 'profile' | 'front' {
	return Math.abs(site.worker.offset) > 0.005 || !isOverhead(site) ? 'front' : 'profile';
}
