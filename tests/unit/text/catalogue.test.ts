import { describe, expect, test } from 'vitest';
import { DATUMS, QUANTITIES, formula, isObstacleGiven, type Shape, type Target } from '#lib/arrest/index.ts';
import { childrenOf, type Node } from '#lib/expression/index.ts';
import { LABEL_FIELDS, RULE_TABLES, messageKeys } from '#lib/rules/index.ts';
import { SLIPS, variantsOf } from '#lib/slips/index.ts';
import {
	LANGUAGES,
	checkText,
	givenNames,
	jurisdictionName,
	labelFieldName,
	languageInfo,
	messages,
	ruleMessage,
	termName
} from '#lib/text/index.ts';
import { allMessages, everything } from './walk.ts';

/** Messages that a language may leave empty: English is no draft. */
const MAY_BE_EMPTY: readonly string[] = ['page.draftLanguage'];

/** Shapes that between them bring out every term of every formula. */
const SHAPES: readonly Shape[] = [false, true].flatMap((yes) =>
	(['d-ring-and-stretch', 'full-height'] as const).flatMap((custom) =>
		[false, true].map((offset) => ({
			connector: yes,
			offset,
			lowered: yes,
			raised: yes,
			absorber: true,
			conditioned: yes,
			slide: true,
			stretch: yes,
			custom,
			obstacles: yes ? ['stack', 'truck'] : [],
			masses: ['clothingMass', 'equipmentMass', 'toolsMass'] as const,
			capacities: ['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity'] as const
		}))
	)
);

function targets(shape: Shape): readonly Target[] {
	const found: Target[] = [];
	for (const quantity of Object.keys(QUANTITIES) as (keyof typeof QUANTITIES)[]) {
		if (quantity === 'requiredClearance' || quantity === 'availableClearance') {
			for (const datum of DATUMS) found.push({ quantity, datum });
		} else if (quantity === 'speedAtObstacle') {
			if (shape.offset) for (const obstacle of shape.obstacles) found.push({ quantity, obstacle });
		} else if (!(quantity === 'highestBelow' && shape.obstacles.length === 0)) {
			found.push({ quantity });
		}
	}
	return found;
}

function* rolesOf(node: Node): Generator<string> {
	if (node.kind === 'sum') for (const term of node.terms) yield term.role;
	if (node.kind === 'extreme') for (const one of node.among) yield one.role;
	for (const child of childrenOf(node)) yield* rolesOf(child);
}

describe('the catalogue', () => {
	test('has the same messages in every language, each of the same kind', async () => {
		const [first, ...others] = await Promise.all(
			LANGUAGES.map(async (language) => everything(await allMessages(language), language).map(({ path, kind }) => `${path} (${kind})`))
		);
		for (const other of others) expect(other.toSorted()).toEqual(first?.toSorted());
	});

	test.each(LANGUAGES)('leaves nothing empty, undefined or unfilled in %s', async (language) => {
		const bad = everything(await allMessages(language), language).filter(
			({ path, text }) =>
				(text.trim() === '' && !MAY_BE_EMPTY.includes(path)) ||
				text !== text.trim() ||
				/undefined|null|NaN|\[object|\$\{|\bTODO\b| {2}/.test(text)
		);
		expect(bad).toEqual([]);
	});

	test('uses the same parts in every language', async () => {
		const english = everything(await allMessages('en'), 'en');
		const spanish = new Map(everything(await allMessages('es'), 'es').map((said) => [said.path, said.read.join()]));
		const differ = english
			.filter(({ path, read }) => spanish.get(path) !== read.join())
			.map(({ path, read }) => `${path}: ${read.join()} but ${spanish.get(path) ?? ''}`);
		expect(differ).toEqual([]);
	});

	test('leaves no text in English', async () => {
		// A text of several words that is the same in both was forgotten; names and formulas are no texts.
		const english = new Map(everything(await allMessages('en'), 'en').map(({ path, text }) => [path, text]));
		const same = everything(await allMessages('es'), 'es').filter(
			({ path, text, read }) => read.length === 0 && /\p{L}{2,} \p{L}{2,}/u.test(text) && english.get(path) === text
		);
		expect(same.map(({ path }) => path)).toEqual([]);
	});
});

describe.each(LANGUAGES)('what data asks for, in %s', (language) => {
	test('every key of the files of shared/, and no other', async () => {
		const m = await messages(language);
		const keys = messageKeys();
		for (const key of keys) expect(ruleMessage(m, key)).not.toBe('');
		const there = [
			...Object.keys(m.rules.note).map((key) => `rules.note.${key}`),
			...Object.keys(m.rules.scope).map((key) => `rules.scope.${key}`)
		];
		expect(there.toSorted()).toEqual([...keys].toSorted());
		const jurisdictions = [...new Set(RULE_TABLES.map((table) => table.jurisdiction))];
		for (const one of jurisdictions) expect(jurisdictionName(m, one)).not.toBe('');
		expect(Object.keys(m.jurisdictions).toSorted()).toEqual(jurisdictions.toSorted());
	});

	test('every field of the equipment labels, and no other', async () => {
		const m = await messages(language);
		for (const field of LABEL_FIELDS) expect(labelFieldName(m, field.id)).toBeTypeOf('string');
		expect(Object.keys(m.labelFields).toSorted()).toEqual(LABEL_FIELDS.map((field) => field.id).toSorted());
	});

	test('every role of every term of every formula and of every slip', async () => {
		const m = await messages(language);
		const roles = new Set<string>();
		for (const shape of SHAPES) {
			for (const target of targets(shape)) {
				if (!shape.offset && ['swingDrop', 'tautDepth', 'tightSpeed', 'sidewaysSpeed'].includes(target.quantity)) continue;
				for (const role of rolesOf(formula(target, shape))) if (!shape.obstacles.includes(role)) roles.add(role);
				const set = variantsOf({
					target,
					shape,
					shown: () => true,
					absentObstacles: shape.obstacles.slice(1),
					strayObstacles: ['beam']
				});
				for (const variant of set.singles) {
					for (const role of rolesOf(variant.tree)) if (!shape.obstacles.includes(role)) roles.add(role);
				}
			}
		}
		expect([...roles].filter((role) => termName(m, role) === undefined)).toEqual([]);
		// What a tape of a single length is called, and nothing that no formula has.
		expect(Object.keys(m.terms).filter((role) => !roles.has(role))).toEqual(['whole']);
	});

	test('every slip of the catalogue, with a title made of its clause', async () => {
		const m = await messages(language);
		expect(Object.keys(m.slips).toSorted()).toEqual([...SLIPS.map((slip) => slip.id), 'label-range-overlooked'].toSorted());
		const parts = { name: 'Marit', value: '2', right: '1', term: '1.20 m', thing: 'x', from: 'y' };
		for (const slip of Object.values(m.slips)) {
			const clause = slip.clause(parts);
			expect(clause).not.toMatch(/[.!]$/);
			expect(slip.title(parts).toLowerCase()).toBe(`${clause.toLowerCase()}.`);
		}
	});

	test('labels of slips can be told apart', async () => {
		const labels = Object.values((await messages(language)).slips).map((slip) => slip.label);
		expect(new Set(labels).size).toBe(labels.length);
	});
});

describe('looking up', () => {
	test('takes own checks before the topic, and a limit of a table by its topic', async () => {
		const m = await messages('en');
		expect(checkText(m, { id: 'label-free-fall', topic: 'free-fall' })).toBe(m.ownChecks['label-free-fall']);
		expect(checkText(m, { id: 'rule:us-construction.free-fall', topic: 'free-fall' })).toBe(m.ruleChecks['free-fall']);
	});

	test('names givens, and an obstacle’s by its own name', async () => {
		const [en, es] = [await messages('en'), await messages('es')];
		expect(givenNames(en, 'margin', '').name).toBe('Margin');
		expect(givenNames(en, 'obstacleTop_stack', 'the stacked panels').name).toBe('Top of the stacked panels');
		expect(givenNames(es, 'obstacleTop_truck', 'el camión').name).toBe('Parte alta del camión');
		expect(givenNames(en, 'obstacleAside_truck', 'the truck').the).toBe('the sideways distance to the truck');
		expect(isObstacleGiven('obstacleTop_stack')).toBe(true);
	});

	test('refuses keys that are not there, and what every object inherits', async () => {
		const m = await messages('en');
		expect(() => ruleMessage(m, 'rules.note.nothing')).toThrow('rules.note.nothing');
		expect(() => ruleMessage(m, 'rules.note.toString')).toThrow(RangeError);
		expect(() => ruleMessage(m, 'other.key')).toThrow(RangeError);
		expect(() => jurisdictionName(m, 'mars')).toThrow('mars');
		expect(termName(m, 'constructor')).toBeUndefined();
	});

	test('amounts are said only where there are any', async () => {
		const m = await messages('en');
		expect(m.ownChecks.clearance.failed({ amount: '1.00 m' })).toBe('The clearance is short by 1.00 m.');
		expect(m.ownChecks.clearance.failed({ amount: undefined })).toBe('The clearance is short.');
		expect(m.ruleChecks.force.held({ amount: '2 kN' })).toBe('The arrest force is within the rule. 2 kN to spare.');
		const es = await messages('es');
		expect(es.ruleChecks.force.failed({ amount: '2 kN' })).toBe('La fuerza de detención pasa del límite por 2 kN.');
	});
});

describe('the languages', () => {
	test('are told by name, lang and review: Spanish is a draft', () => {
		expect(LANGUAGES.map((language) => languageInfo(language))).toEqual([
			{ id: 'en', name: 'English', lang: 'en', review: 'original' },
			{ id: 'es', name: 'Español', lang: 'es', review: 'draft' }
		]);
	});

	test('a language that is a draft says so on the page, an original does not', async () => {
		for (const language of LANGUAGES) {
			const draft = languageInfo(language).review === 'draft';
			expect((await messages(language)).page.draftLanguage !== '').toBe(draft);
		}
	});
});
