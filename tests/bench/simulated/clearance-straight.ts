/**
 * The right answer and every single slip of one ask, written out straight as whoever needed only these
 * numbers would write them: one line of arithmetic each. The measure of what evaluation costs at least.
 * The ask: required clearance from the surface, kneeling on a raised place, with connector and offset.
 */

/** The numbers that the lines read, SI. */
export interface StraightValues {
	readonly anchorageHeight: number;
	readonly dRingHeight: number;
	readonly dRingNow: number;
	readonly standingHeight: number;
	readonly lanyardLength: number;
	readonly connectorLength: number;
	readonly offset: number;
	readonly elongation: number;
	readonly dRingSlide: number;
	readonly harnessStretch: number;
	readonly margin: number;
	readonly stature: number;
	readonly bodyMass: number;
	readonly clothingMass: number;
	readonly equipmentMass: number;
	readonly toolsMass: number;
	readonly averageForce: number;
	readonly labelFreeFall: number;
	readonly otherMargin: number;
	readonly otherElongation: number;
	readonly otherFloorDrop: number;
	readonly slackShown: number;
}

/** What each place of `clearances` holds; the first is the right answer. */
export const STRAIGHT_ORDER: readonly string[] = [
	'right',
	'datum-anchorage',
	'datum-d-ring',
	'expected-elongation',
	'limit-for-value',
	'lanyard-for-free-fall',
	'other-class-elongation',
	'other-margin',
	'stature-for-d-ring',
	'posture-ignored',
	'wrong-floor',
	'offset-ignored',
	'offset-subtracted',
	'offset-for-swing-drop',
	'heights-wrong-way',
	'anchorage-height-added',
	'heights-left-out',
	'd-ring-left-out',
	'standing-place-ignored',
	'connector-left-out',
	'elongation-left-out',
	'margin-left-out',
	'stretch-left-out',
	'swing-drop-left-out',
	'straightening-left-out',
	'connector-twice',
	'stretch-twice',
	'elongation-in-free-fall',
	'slack-added',
	'body-from-surface'
];

/** Fills `out` with the right answer and each single slip's, in STRAIGHT_ORDER, m. */
export function clearances(v: StraightValues, out: Float64Array): void {
	const line = v.lanyardLength + v.connectorLength;
	const taut = Math.sqrt(line * line - v.offset * v.offset);
	const rise = v.anchorageHeight - v.dRingNow - v.standingHeight;
	const fall = taut - rise;
	const swing = line - taut;
	const x = v.elongation;
	const s = v.dRingSlide + v.harnessStretch;
	const up = v.dRingHeight - v.dRingNow;
	const hS = v.standingHeight;
	const M = v.margin;
	const short = v.lanyardLength;
	const shortTaut = Math.sqrt(short * short - v.offset * v.offset);
	const long = line + v.connectorLength;
	const longTaut = Math.sqrt(long * long - v.offset * v.offset);
	const weight = (v.bodyMass + v.clothingMass + v.equipmentMass + v.toolsMass) * 9.80665;

	out[0] = fall + swing + x + s + up - hS + M;
	out[1] = v.connectorLength + v.lanyardLength + x + s + v.dRingHeight + M;
	out[2] = fall + swing + x + s + v.dRingHeight + M;
	out[3] = fall + swing + (weight * fall) / (v.averageForce - weight) + s + up - hS + M;
	out[4] = v.labelFreeFall + swing + x + s + up - hS + M;
	out[5] = v.lanyardLength + swing + x + s + up - hS + M;
	out[6] = fall + swing + v.otherElongation + s + up - hS + M;
	out[7] = fall + swing + x + s + up - hS + v.otherMargin;
	out[8] = fall + swing + x + s + (v.stature - v.dRingNow) - hS + M;
	out[9] = taut - (v.anchorageHeight - v.dRingHeight - hS) + swing + x + s + up - hS + M;
	out[10] = taut - (v.anchorageHeight + v.otherFloorDrop - v.dRingNow - hS) + swing + x + s + up - hS + M;
	out[11] = line - rise + (line - line) + x + s + up - hS + M;
	out[12] = line - v.offset - rise + (line - (line - v.offset)) + x + s + up - hS + M;
	out[13] = fall + v.offset + x + s + up - hS + M;
	out[14] = taut + rise + swing + x + s + up - hS + M;
	out[15] = taut - (-v.anchorageHeight - v.dRingNow - hS) + swing + x + s + up - hS + M;
	out[16] = taut + swing + x + s + up - hS + M;
	out[17] = taut - v.anchorageHeight + swing + x + s + up - hS + M;
	out[18] = taut - (v.anchorageHeight - v.dRingNow) + swing + x + s + up - hS + M;
	out[19] = shortTaut - rise + (short - shortTaut) + x + s + up - hS + M;
	out[20] = fall + swing + s + up - hS + M;
	out[21] = fall + swing + x + s + up - hS;
	out[22] = fall + swing + x + up - hS + M;
	out[23] = fall + x + s + up - hS + M;
	out[24] = fall + swing + x + s - hS + M;
	out[25] = longTaut - rise + (long - longTaut) + x + s + up - hS + M;
	out[26] = fall + swing + x + s + s + up - hS + M;
	out[27] = fall + x + swing + x + s + up - hS + M;
	out[28] = fall + v.slackShown + swing + x + s + up - hS + M;
	out[29] = fall + swing + x + s + up - hS + M + v.dRingHeight;
}
