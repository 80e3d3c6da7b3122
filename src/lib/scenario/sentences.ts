/**
 * Constraints as plain sentences, and shares of failing draws as weights: what an author picks and reads
 * instead of bounds and numbers. No words here: ids, to which the catalogue has the sentences.
 */
import { QUANTITIES, givenDimension, isGivenId, isQuantityId } from '#lib/arrest/index.ts';
import { LENGTH, dimensionOf, sameDimension, type Dimension, type UnitId } from '#lib/quantity/index.ts';
import type { Scenario } from './schema.ts';

export type Constraint = Scenario['constraints'][number];
export interface Amount {
	readonly value: number;
	readonly unit: UnitId;
}
type Side = 'atLeast' | 'atMost';

/** One sentence: which bound it puts on what. */
interface SentenceForm {
	/** A given, or a quantity with its datum behind an @ where it has one. */
	readonly of: string;
	readonly side: Side;
	/** Present: the bound is this and the sentence takes no amount. */
	readonly fixed?: Amount;
}

const NOUGHT: Amount = { value: 0, unit: 'm' };

const FORMS = {
	/** The anchorage is level with the D-ring or above it. */
	'anchorage-above-d-ring': { of: 'rise', side: 'atLeast', fixed: NOUGHT },
	/** The anchorage is level with the D-ring or below it. */
	'anchorage-below-d-ring': { of: 'rise', side: 'atMost', fixed: NOUGHT },
	/** The anchorage is at least so far above the D-ring. */
	'anchorage-above-d-ring-by': { of: 'rise', side: 'atLeast' },
	/** The anchorage is at most so far above the D-ring. */
	'anchorage-above-d-ring-at-most': { of: 'rise', side: 'atMost' },
	/** The line reaches the anchorage. */
	'lanyard-reaches': { of: 'reachSpare', side: 'atLeast', fixed: NOUGHT },
	'free-fall-at-least': { of: 'freeFall', side: 'atLeast' },
	'free-fall-at-most': { of: 'freeFall', side: 'atMost' },
	/** From the walking surface. */
	'required-at-least': { of: 'requiredClearance@surface', side: 'atLeast' },
	'required-at-most': { of: 'requiredClearance@surface', side: 'atMost' },
	'available-at-least': { of: 'availableClearance@surface', side: 'atLeast' },
	'available-at-most': { of: 'availableClearance@surface', side: 'atMost' },
	/** There is room to spare below the feet; the margin is kept. */
	'clearance-is-enough': { of: 'spare', side: 'atLeast', fixed: NOUGHT },
	'offset-at-least': { of: 'offset', side: 'atLeast' },
	'offset-at-most': { of: 'offset', side: 'atMost' },
	'swing-drop-at-least': { of: 'swingDrop', side: 'atLeast' },
	'swing-drop-at-most': { of: 'swingDrop', side: 'atMost' },
	'mass-at-least': { of: 'massAttached', side: 'atLeast' },
	'mass-at-most': { of: 'massAttached', side: 'atMost' },
	/** The mass is within the capacity of every part. */
	'capacity-is-enough': { of: 'capacitySpare', side: 'atLeast', fixed: { value: 0, unit: 'kg' } },
	'force-at-most': { of: 'arrestForce', side: 'atMost' },
	'elongation-at-least': { of: 'expectedElongation', side: 'atLeast' },
	'elongation-at-most': { of: 'expectedElongation', side: 'atMost' },
	'depth-at-least': { of: 'lowerLevelDepth', side: 'atLeast' },
	'depth-at-most': { of: 'lowerLevelDepth', side: 'atMost' }
} as const satisfies Record<string, SentenceForm>;

export type SentenceId = keyof typeof FORMS;

/** A sentence that an author can pick. */
export interface Sentence {
	readonly id: SentenceId;
	/** Dimension of the amount it takes, or undefined if it takes none. */
	readonly amount: Dimension | undefined;
	/** @returns the constraint it stands for. @throws RangeError without the amount that it takes, or with one of another dimension. */
	build(amount?: Amount): Constraint;
}

/** A bound as it is told: by a sentence, or, where none fits, by what is bounded. */
export type ToldBound =
	| { readonly id: SentenceId; readonly amount?: Amount | undefined }
	| { readonly id: 'at-least' | 'at-most'; readonly of: string; readonly amount: Amount };

function dimensionOfBounded(of: string): Dimension {
	const [name = ''] = of.split('@');
	if (isGivenId(of)) return givenDimension(of);
	return isQuantityId(name) ? QUANTITIES[name].dimension : LENGTH;
}

function sentence(id: SentenceId, form: SentenceForm): Sentence {
	const { of, side, fixed } = form;
	const dimension = dimensionOfBounded(of);
	return Object.freeze({
		id,
		amount: fixed === undefined ? dimension : undefined,
		build: (amount?: Amount): Constraint => {
			const bound = fixed ?? amount;
			if (bound === undefined) throw new RangeError(`the sentence ${id} needs an amount`);
			if (!sameDimension(dimensionOf(bound.unit), dimension)) throw new RangeError(`the sentence ${id} takes no amount in ${bound.unit}`);
			return { of, [side]: { ...bound } };
		}
	});
}

/** Every sentence that can be picked, in the order in which they are offered. */
export const SENTENCES: readonly Sentence[] = Object.freeze((Object.entries(FORMS) as [SentenceId, SentenceForm][]).map(([id, form]) => sentence(id, form)));

/** @returns the sentence of an id, or undefined. */
export function sentenceNamed(id: string): Sentence | undefined {
	return SENTENCES.find((one) => one.id === id);
}

/** Quantities that are bounded from the walking surface if nothing else is said. */
function written(of: string): string {
	return of === 'requiredClearance' || of === 'availableClearance' ? `${of}@surface` : of;
}

function told(constraint: Constraint, side: Side): ToldBound | undefined {
	const bound = constraint[side];
	if (bound === undefined) return undefined;
	const of = written(constraint.of);
	const forms = (Object.entries(FORMS) as [SentenceId, SentenceForm][]).filter(([, form]) => form.of === of && form.side === side);
	// A sentence without an amount says more than one with nought.
	const exact = forms.find(([, form]) => form.fixed !== undefined && form.fixed.value === bound.value);
	if (exact !== undefined) return { id: exact[0] };
	const open = forms.find(([, form]) => form.fixed === undefined);
	if (open !== undefined) return { id: open[0], amount: bound };
	return { id: side === 'atLeast' ? 'at-least' : 'at-most', of: constraint.of, amount: bound };
}

/** @returns what a constraint says, a sentence for each of its bounds, the lower one first. Every constraint can be told. */
export function sentenceOf(constraint: Constraint): readonly ToldBound[] {
	return (['atLeast', 'atMost'] as const).flatMap((side) => told(constraint, side) ?? []);
}

/** @returns the constraint that sentences about one given or quantity stand for: the other way of `sentenceOf`. @throws RangeError as `build` does, on an unknown id, or if they are about different things. */
export function constraintOf(bounds: readonly ToldBound[]): Constraint {
	const built = bounds.map((one): Constraint => {
		if ('of' in one) return { of: one.of, [one.id === 'at-least' ? 'atLeast' : 'atMost']: { ...one.amount } };
		const found = sentenceNamed(one.id);
		if (found === undefined) throw new RangeError(`there is no sentence ${one.id}`);
		return found.build(one.amount);
	});
	const first = built[0];
	if (first === undefined) throw new RangeError('a constraint says at least one thing');
	if (built.some((one) => written(one.of) !== written(first.of))) throw new RangeError('one constraint bounds one thing');
	return Object.assign({}, ...built) as Constraint;
}
