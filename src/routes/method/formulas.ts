/** Every formula in every form that a plan can give it, printed from the trees. */
import {
	DATUMS,
	QUANTITIES,
	formula,
	givenSymbol,
	isGivenId,
	isQuantityId,
	type Datum,
	type QuantityId,
	type Shape,
	type Target
} from '#lib/arrest/index.ts';
import { printText, type Node } from '#lib/expression/index.ts';

export interface PrintedForm {
	/** What the plan has that gives the formula this form. */
	readonly form: FormId;
	readonly datum: Datum | undefined;
	readonly text: string;
}

export type FormId = 'plain' | 'connector' | 'offset' | 'kneeling' | 'raised' | 'full-height' | 'conditioned' | 'obstacles';

const PLAIN: Shape = Object.freeze({
	connector: false,
	offset: false,
	lowered: false,
	raised: false,
	absorber: true,
	conditioned: false,
	slide: true,
	stretch: true,
	custom: 'd-ring-and-stretch',
	obstacles: Object.freeze([]),
	masses: Object.freeze(['clothingMass', 'equipmentMass', 'toolsMass'] as const),
	capacities: Object.freeze(['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity'] as const)
});

const FORMS: readonly (readonly [FormId, Shape])[] = [
	['plain', PLAIN],
	['connector', { ...PLAIN, connector: true }],
	['offset', { ...PLAIN, offset: true }],
	['kneeling', { ...PLAIN, lowered: true }],
	['raised', { ...PLAIN, raised: true }],
	['full-height', { ...PLAIN, custom: 'full-height' }],
	['conditioned', { ...PLAIN, conditioned: true }],
	['obstacles', { ...PLAIN, obstacles: ['1', '2'] }]
];

/** A quantity that is a step inside itself is written out once. */
function unwrapped(tree: Node): Node {
	return tree.kind === 'named' && tree.of.kind === 'named' && tree.of.id === tree.id ? unwrapped(tree.of) : tree;
}

/** A formula by its symbols: "L − r". Parts that are quantities of their own stand as their symbols. */
function printed(target: Target, shape: Shape): string | undefined {
	try {
		return printText(unwrapped(formula(target, shape)), {
			given: (id) => (isGivenId(id) ? givenSymbol(id) : id),
			named: (id) => (isQuantityId(id) ? QUANTITIES[id].symbol : undefined),
			constant: (name) => name,
			signs: 'typeset'
		});
	} catch (error) {
		// A plan of this form does not have the quantity: a swing drop without an offset.
		if (error instanceof RangeError) return undefined;
		throw error;
	}
}

function targetsOf(quantity: QuantityId): readonly Target[] {
	if (quantity === 'requiredClearance' || quantity === 'availableClearance') return DATUMS.map((datum) => ({ quantity, datum }));
	if (quantity === 'speedAtObstacle') return [{ quantity, obstacle: '1' }];
	return [{ quantity }];
}

/** @returns every form of a quantity's formula that differs from the plain one, the plain one first. */
export function formsOf(quantity: QuantityId): readonly PrintedForm[] {
	return targetsOf(quantity).flatMap((target) => {
		const seen = new Set<string>();
		return FORMS.flatMap(([form, shape]): PrintedForm[] => {
			const text = printed(target, shape);
			if (text === undefined || seen.has(text)) return [];
			seen.add(text);
			return [{ form, datum: 'datum' in target ? target.datum : undefined, text }];
		});
	});
}

/** Where each formula is from: a key of the catalogue. */
export const SOURCE_OF = {
	rise: 'geometry',
	lineLength: 'geometry',
	tautDepth: 'pythagoras',
	freeFall: 'definition',
	swingDrop: 'geometry',
	stretchOut: 'geometry',
	extraStretch: 'geometry',
	headAboveDRing: 'geometry',
	straightening: 'geometry',
	requiredClearance: 'geometry',
	highestBelow: 'geometry',
	availableClearance: 'geometry',
	spare: 'geometry',
	reachDistance: 'pythagoras',
	reachSpare: 'geometry',
	massAttached: 'sum',
	lowestCapacity: 'least',
	capacitySpare: 'least',
	totalFall: 'geometry',
	expectedElongation: 'work',
	arrestForce: 'label',
	bodyWeights: 'mechanics',
	fallSpeed: 'mechanics',
	fallTime: 'mechanics',
	swingSpeed: 'mechanics',
	tightSpeed: 'mechanics',
	sidewaysSpeed: 'mechanics',
	speedAtObstacle: 'mechanics',
	stopTime: 'mechanics',
	hangingDepth: 'geometry',
	fallFactor: 'geometry',
	largestMass: 'work',
	largestFreeFall: 'work'
} as const satisfies Record<QuantityId, string>;
