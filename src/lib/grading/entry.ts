/** Slips of the pen and of units: what the typed text itself gives away, before any formula. */
import { FIXED_GIVEN_IDS, GIVENS, isQuantityId, type QuantityId } from '#lib/arrest/index.ts';
import { evaluate, namedIn, type Givens, type Node } from '#lib/expression/index.ts';
import { decimalsAsInches, sameDimension, toSI, type ReadQuantity, type UnitId } from '#lib/quantity/index.ts';
import { givenValue, isShown, type Problem } from '#lib/scenario/index.ts';

export type EntrySlip =
	| { readonly entry: 'inches-as-decimals' }
	| { readonly entry: 'other-unit'; readonly meant: UnitId }
	| { readonly entry: 'digits-swapped' }
	| { readonly entry: 'decimal-shifted' }
	| { readonly entry: 'sign' }
	| { readonly entry: 'given-handed-in'; readonly given: string }
	| { readonly entry: 'step-handed-in'; readonly step: QuantityId };

/** The unit that is taken for the one asked. */
const TAKEN_FOR: Readonly<Partial<Record<UnitId, readonly UnitId[]>>> = Object.freeze({
	m: ['ft', 'cm'],
	ft: ['m', 'in'],
	in: ['ft', 'cm'],
	kg: ['lb'],
	lb: ['kg'],
	kN: ['lbf'],
	lbf: ['kN']
});

/**
 * @param right the right value, SI. @param near how far apart two values may be to count as one, SI.
 * @returns every slip of the pen that turns the right value into what was typed.
 */
export function entrySlips(
	problem: Problem,
	tree: Node,
	givens: Givens,
	read: ReadQuantity,
	right: number,
	near: number
): readonly EntrySlip[] {
	const found: EntrySlip[] = [];
	const isRight = (value: number | null): boolean => value !== null && Math.abs(value - right) <= near;
	if (isRight(decimalsAsInches(read))) found.push({ entry: 'inches-as-decimals' });
	for (const meant of TAKEN_FOR[read.unit] ?? []) {
		// The number is right in the other unit, written down under this one.
		if (isRight(toSI(read.value, meant))) found.push({ entry: 'other-unit', meant });
	}
	if (isRight(-read.si)) found.push({ entry: 'sign' });
	if (isRight(read.si * 10) || isRight(read.si / 10)) found.push({ entry: 'decimal-shifted' });
	if (read.written.style === 'decimal' && swappedDigits(read).some(isRight)) found.push({ entry: 'digits-swapped' });
	for (const id of handedIn(problem, tree, read.si, near)) found.push({ entry: 'given-handed-in', given: id });
	for (const step of namedIn(tree)) {
		if (step === tree || !isQuantityId(step.id) || !sameDimension(step.dimension, tree.dimension)) continue;
		if (Math.abs(evaluate(step, givens) - read.si) <= near) found.push({ entry: 'step-handed-in', step: step.id });
	}
	return found;
}

/** All values that one exchange of neighbouring digits gives, SI. */
function swappedDigits(read: ReadQuantity): readonly number[] {
	if (read.written.style !== 'decimal') return [];
	const { whole, fraction } = read.written;
	const digits = `${whole}${fraction}`;
	const values: number[] = [];
	for (let i = 1; i < digits.length; i += 1) {
		const a = digits[i - 1];
		const b = digits[i];
		if (a === b || a === undefined || b === undefined) continue;
		const swapped = `${digits.slice(0, i - 1)}${b}${a}${digits.slice(i + 1)}`;
		values.push(toSI(Number(`${swapped.slice(0, whole.length)}.${swapped.slice(whole.length)}`), read.unit));
	}
	return values;
}

/** Ids of shown givens of the same dimension whose value was handed in. */
function handedIn(problem: Problem, tree: Node, value: number, near: number): readonly string[] {
	const ids: string[] = [];
	for (const id of FIXED_GIVEN_IDS) {
		const given = givenValue(problem, id);
		if (given === undefined || !(given > 0) || Math.abs(given - value) > near) continue;
		if (sameDimension(GIVENS[id].dimension, tree.dimension) && isShown(problem, id)) ids.push(id);
	}
	return ids;
}

