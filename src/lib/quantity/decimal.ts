/**
 * Rounding to decimals and to fractions the way a person does it on paper, so that the noise of
 * binary fractions never shows: 1.005 to two places is 1.01, and 5.300000000000001 rounded up
 * stays 5.30. Only arithmetic that is identical in every JavaScript engine.
 */

/** `up` and `down` are toward +∞ and −∞, so that "up" never makes a signed number smaller. */
export type Rounding = 'nearest' | 'up' | 'down';

/** Significant digits that are believed; the rest of a double is the noise of a few operations. */
const BELIEVED_DIGITS = 14;

/** What rounding up or down takes for noise, relative to the number (physics.md 11: 1e-9 m). */
const NOISE = 1e-9;

/** Beyond this, doubles have no digits left behind the point. */
const WHOLE_ONLY = Number.MAX_SAFE_INTEGER;

/**
 * `x × 10^places` without binary noise: the digits are shifted as text. A half stays a half
 * (100.5 for 1.005 and 2 places), so that it can be rounded as one.
 */
function shifted(x: number, places: number): number {
	const [digits = '0', exponent = '0'] = x.toPrecision(BELIEVED_DIGITS).split('e');
	return Number(`${digits}e${String(Number(exponent) + places)}`);
}

/**
 * The whole number that `t` is rounded to; halves go away from zero. Rounding up and down allows
 * for noise of 1e-9 relative, at most a hundredth of the last place.
 */
export function roundWhole(t: number, rounding: Rounding): number {
	const nearest = t < 0 ? -Math.floor(-t + 0.5) : Math.floor(t + 0.5);
	if (rounding === 'nearest') return nearest;
	const noise = Math.min(NOISE * Math.max(1, Math.abs(t)), 0.01);
	if (Math.abs(t - nearest) <= noise) return nearest;
	return rounding === 'up' ? Math.ceil(t) : Math.floor(t);
}

/** Digits of a whole number of last places, with the point put in: (1234, 2) → "12.34". */
function placed(whole: number, places: number): string {
	const digits = BigInt(whole)
		.toString()
		.padStart(places + 1, '0');
	return places === 0 ? digits : `${digits.slice(0, -places)}.${digits.slice(-places)}`;
}

/**
 * A finite number with exactly `places` decimals and a point as mark, without grouping, exponent
 * or negative zero; a negative number starts with `-`.
 * @param places whole number from 0 to 9
 */
export function decimalText(x: number, places: number, rounding: Rounding): string {
	const scaled = shifted(x, places);
	if (!(Math.abs(scaled) < WHOLE_ONLY)) {
		const [whole = '0', fraction = ''] = Math.abs(x) < 1e21 ? x.toFixed(places).split('.') : [BigInt(x).toString()];
		return places === 0 ? whole : `${whole}.${fraction.padEnd(places, '0')}`;
	}
	const rounded = roundWhole(scaled, rounding);
	return rounded < 0 ? `-${placed(-rounded, places)}` : placed(rounded + 0, places);
}

/** `x` in whole parts of `1/parts`, rounded: (4.52, 2, 'nearest') → 9 halves. */
export function inParts(x: number, parts: number, rounding: Rounding): number {
	return roundWhole(shifted(x, 0) * parts, rounding) + 0;
}
