import { describe, expect, it } from 'vitest';
import { messageKeys } from '#lib/rules/index.ts';
import { AbsorberClasses, PracticeTable, RuleTable } from '#lib/rules/schema.ts';

const source = { title: 'A law', where: 'a copy', lookedAt: '2026-11' };

function table(change: Record<string, unknown> = {}): unknown {
	const limit = {
		id: 'here.free-fall',
		role: 'check',
		subject: 'free-fall',
		require: { quantity: 'freeFall', max: { value: 6, unit: 'ft' }, pair: '1.8 m' },
		clause: 's. 1',
		source,
		mark: 'read',
		...change
	};
	return { id: 'here', jurisdiction: 'here', title: 'A law', scope: 'rules.scope.here', limits: [limit] };
}

/** The paths and messages of a refusal, in one text. */
function refusal(json: unknown): string {
	const result = RuleTable.safeParse(json);
	return result.success ? '' : JSON.stringify(result.error.issues);
}

describe('the schema of a rule table', () => {
	it('takes a table without a fault', () => {
		expect(refusal(table())).toBe('');
	});

	it.each([
		['a quantity that no engine has', { require: { quantity: 'freefall', max: { value: 6, unit: 'ft' } } }],
		['a bound with two sides', { require: { quantity: 'freeFall', max: { value: 6, unit: 'ft' }, min: { value: 1, unit: 'ft' } } }],
		['a bound with none', { require: { quantity: 'freeFall' } }],
		['a limit that is not finite', { require: { quantity: 'freeFall', max: { value: Infinity, unit: 'ft' } } }],
		['an empty any-of, which nothing could hold', { require: { any: [] } }],
		['an empty all-of, which everything would hold', { require: { all: [] } }],
		['a fact of the wrong kind', { require: { fact: 'absorber', is: 'yes' } }],
		['a misspelt choice, which would never match', { require: { fact: 'harness', is: 'fullbody' } }],
		['a count of nobody', { when: { not: { all: [{ fact: 'persons', is: 0 }] } } }]
	])('refuses %s', (_, change) => {
		const paths = RuleTable.safeParse(table(change)).error?.issues.map((issue) => issue.path.slice(0, 3));
		expect(paths).toEqual([['limits', 0, 'when' in change ? 'when' : 'require']]);
	});

	it.each([
		['a unit of another dimension', { require: { quantity: 'freeFall', max: { value: 6, unit: 'kN' } } }, 'must be a unit of length'],
		['a multiple of another dimension', { require: { quantity: 'freeFall', max: { times: 2, of: 'peakForce' } } }, 'must be a length'],
		[
			'a printed pair to a multiple',
			{ require: { quantity: 'freeFall', max: { times: 2, of: 'offset' }, pair: '1.8 m' } },
			'no number of its own'
		],
		['a misspelt field', { requires: {} }, 'requires'],
		['an empty clause', { clause: ' ' }, 'clause'],
		['an id of another table', { id: 'there.free-fall' }, 'must begin with here.'],
		['what was read without a date', { source: { title: 'A law', where: 'a copy' } }, 'lookedAt'],
		['memory without a confidence', { mark: 'memory', source: { title: 'A law', where: 'a copy' } }, 'confidence'],
		['memory with a date of reading', { mark: 'memory', confidence: 'high' }, 'not from memory'],
		['a confidence in what was read', { confidence: 'high' }, 'only with the mark memory'],
		['a note in words instead of a key', { note: 'Either will do.' }, 'a key such as'],
		['a statement that says nothing', { role: 'statement', require: undefined }, 'note']
	])('refuses %s, and names it', (_, change, named) => {
		expect(refusal(table(change))).toContain(named);
	});

	it('refuses an id that stands twice', () => {
		const one = RuleTable.parse(table());
		expect(refusal({ ...one, limits: [...one.limits, ...one.limits] })).toContain('stands twice');
	});

	it('finds a fault deep in a tree', () => {
		const deep = { all: [{ any: [{ fact: 'absorber', is: true }, { all: [{ quantity: 'spare', min: { value: 0, unit: 'kg' } }] }] }] };
		expect(refusal(table({ require: deep }))).toContain('must be a unit of length');
	});
});

describe('the schemas of practice and equipment', () => {
	const value = { value: 2, unit: 'ft', clause: 'III.A', source, mark: 'read-secondary' };
	const practice = {
		id: 'here',
		standing: 'practice-not-law',
		crossCheckOnly: false,
		title: 'A manual',
		bodyCustom: 'full-height',
		margin: value,
		halfBodyWidth: value
	};

	it('refuse practice that passes for law, a margin in kilograms and an unknown custom', () => {
		expect(PracticeTable.safeParse(practice).success).toBe(true);
		expect(PracticeTable.safeParse({ ...practice, standing: 'law' }).success).toBe(false);
		expect(PracticeTable.safeParse({ ...practice, margin: { ...value, unit: 'kg' } }).success).toBe(false);
		expect(PracticeTable.safeParse({ ...practice, bodyCustom: 'half-height' }).success).toBe(false);
	});

	it('refuse a force where an absorber class has a length', () => {
		const one = { id: 'c', title: 'C', superseded: false, peakForce: { ...value, unit: 'kN' }, deploymentMax: value };
		expect(AbsorberClasses.safeParse({ classes: [one] }).success).toBe(true);
		expect(AbsorberClasses.safeParse({ classes: [{ ...one, deploymentMax: one.peakForce }] }).success).toBe(false);
	});
});

it('lists each message key of the files once, in order, for the catalogue to be held against', () => {
	const keys = messageKeys();
	expect(keys).toEqual([...new Set(keys)].sort());
	expect(keys).toContain('rules.scope.us-construction');
	expect(keys).toContain('rules.note.quebecOr');
	expect(keys).toContain('rules.note.testMass');
});
