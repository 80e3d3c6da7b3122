import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	ABSORBER_CLASSES,
	LABEL_FIELDS,
	PRACTICE_TABLES,
	QUANTITIES,
	RULE_TABLES,
	allOf,
	anyOf,
	checksOf,
	citationOf,
	citeValue,
	citedValuesOf,
	dutyArises,
	judge,
	not,
	type Bound,
	type Citation,
	type CitedValue,
	type Condition,
	type Facts,
	type Limit,
	type PracticeTable,
	type Quantities,
	type QuantityName,
	type Requirement,
	type Status
} from '#lib/rules/index.ts';
import { toSI } from '#lib/quantity/index.ts';

const status = fc.constantFrom<Status>('held', 'failed', 'unknown');
const statuses = fc.array(status, { maxLength: 6 });

/** All ways to settle the unknowns, as lists of held and failed. */
function settlements(parts: readonly Status[]): Status[][] {
	return parts.reduce<Status[][]>(
		(lists, part) =>
			lists.flatMap((list) => (part === 'unknown' ? [[...list, 'held' as const], [...list, 'failed' as const]] : [[...list, part]])),
		[[]]
	);
}

describe('three-valued logic', () => {
	it('says held or failed exactly when every way to settle the unknowns says so', () => {
		for (const joined of [allOf, anyOf]) {
			fc.assert(
				fc.property(statuses, (parts) => {
					const outcomes = new Set(settlements(parts).map((list) => joined(list)));
					expect(joined(parts)).toBe(outcomes.size === 1 ? [...outcomes][0] : 'unknown');
				})
			);
		}
	});

	it('obeys De Morgan, and turning over twice changes nothing', () => {
		fc.assert(
			fc.property(statuses, (parts) => {
				expect(not(allOf(parts))).toBe(anyOf(parts.map(not)));
				expect(not(anyOf(parts))).toBe(allOf(parts.map(not)));
				for (const part of parts) expect(not(not(part))).toBe(part);
			})
		);
	});

	it('does not care for order, repetition or grouping', () => {
		fc.assert(
			fc.property(statuses, statuses, (a, b) => {
				for (const joined of [allOf, anyOf]) {
					expect(joined([...b, ...a])).toBe(joined([...a, ...b]));
					expect(joined([...a, ...a, ...b])).toBe(joined([...a, ...b]));
					expect(joined([joined(a), joined(b)])).toBe(joined([...a, ...b]));
				}
			})
		);
	});

	it('never gets better by not knowing: an unknown more can only take a verdict to unknown', () => {
		fc.assert(
			fc.property(statuses, fc.nat(5), (parts, at) => {
				const blurred = parts.map((part, index) => (index === at ? 'unknown' : part));
				for (const joined of [allOf, anyOf]) expect([joined(parts), 'unknown']).toContain(joined(blurred));
			})
		);
	});
});

/** How far a probe stands from a limit, and how much further a changed limit moves, as shares of it. */
const PROBE = 0.02;
const CHANGE = 0.05;

/** Steps for a limit at zero, in the unit's own measure. */
function near(value: number, share: number): [number, number] {
	const step = value === 0 ? share : value * share;
	return [value - step, value + step];
}

function boundsOf(limit: Limit): Bound[] {
	const within = (part: Requirement): Bound[] =>
		'all' in part ? part.all.flatMap(within) : 'any' in part ? part.any.flatMap(within) : 'fact' in part ? [] : [part];
	return limit.role === 'check' ? within(limit.require) : limit.role === 'trigger' ? [limit.from] : [];
}

/** For each fact that a limit asks about: every answer that it or its negation could be about. */
function factProbes(limit: Limit): Facts[] {
	const asked = new Map<string, Set<boolean | number | string>>();
	const visit = (part: Condition | Requirement): void => {
		if ('all' in part) part.all.forEach(visit);
		else if ('any' in part) part.any.forEach(visit);
		else if ('not' in part) visit(part.not);
		else if ('fact' in part) {
			const values = asked.get(part.fact) ?? new Set();
			values.add(part.is);
			if (typeof part.is === 'boolean') values.add(!part.is);
			if (typeof part.is === 'number') values.add(part.is + 1);
			asked.set(part.fact, values);
		}
	};
	if (limit.role !== 'statement' && limit.when !== undefined) visit(limit.when);
	if (limit.role === 'check') visit(limit.require);
	return [...asked].reduce<Facts[]>((all, [fact, values]) => all.flatMap((one) => [...values].map((value) => ({ ...one, [fact]: value }))), [{}]);
}

/** Quantities just inside and just outside every bound of a limit, each with each. */
function quantityProbes(limit: Limit): Quantities[] {
	const FORCE = 7000;
	const values = new Map<QuantityName, number[]>();
	const add = (name: QuantityName, more: readonly number[]) => values.set(name, [...(values.get(name) ?? []), ...more]);
	for (const bound of boundsOf(limit)) {
		const by = 'max' in bound ? bound.max : bound.min;
		if ('of' in by) {
			add(by.of, [FORCE]);
			add(bound.quantity, near(by.times * FORCE, PROBE));
		} else add(bound.quantity, near(by.value, PROBE).map((value) => toSI(value, by.unit)));
	}
	return [...values].reduce<Quantities[]>((all, [name, list]) => all.flatMap((one) => list.map((value) => ({ ...one, [name]: value }))), [{}]);
}

/** What a plan gets to hear of a limit, probe by probe; probes come from the limit as published. */
function verdicts(limit: Limit, published: Limit): string {
	const probes = factProbes(published).flatMap((facts) => quantityProbes(published).map((quantities) => ({ facts, quantities })));
	return probes
		.map(({ facts, quantities }) => {
			if (limit.role === 'check') return judge(limit, facts, quantities).status;
			return limit.role === 'trigger' ? dutyArises(limit, facts, quantities) : 'said';
		})
		.join(' ');
}

type Path = readonly (string | number)[];

/** Every number in a piece of JSON, by its path. */
function numbersIn(json: unknown, path: Path = []): { path: Path; value: number }[] {
	if (typeof json === 'number') return [{ path, value: json }];
	if (typeof json !== 'object' || json === null) return [];
	return Object.entries(json).flatMap(([key, value]) => numbersIn(value, [...path, key]));
}

/** A deep copy with one number changed. */
function changed<T>(json: T, path: Path, value: number): T {
	const copy = structuredClone(json);
	let at: unknown = copy;
	for (const key of path.slice(0, -1)) at = (at as Record<string | number, unknown>)[key];
	(at as Record<string | number, unknown>)[path.at(-1) ?? ''] = value;
	return copy;
}

/** Other values for a number: a little less and a little more; for a count, one more and one fewer. */
function otherValues(path: Path, value: number): number[] {
	return path.at(-1) === 'is' ? [value + 1, value - 1] : near(value, CHANGE);
}

describe('no number in shared/ is idle', () => {
	const limits = RULE_TABLES.flatMap((table) => table.limits);

	it('each number of a rule table, made a little less or a little more, changes a verdict', () => {
		let seen = 0;
		for (const limit of limits) {
			for (const { path, value } of numbersIn(limit)) {
				for (const other of otherValues(path, value)) {
					const mutant = changed(limit, path, other);
					expect(verdicts(mutant, limit), `${limit.id} ${path.join('.')} ${String(value)} → ${String(other)}`).not.toBe(verdicts(limit, limit));
					seen += 1;
				}
			}
		}
		expect(seen).toBe(2 * limits.flatMap((limit) => numbersIn(limit)).length);
		expect(seen).toBeGreaterThan(100);
	});

	it('each number that a law prints is in its citation: changed, the citation changes too', () => {
		for (const limit of limits) {
			for (const { path, value } of numbersIn(limit)) {
				if (value === 0 || path.at(-1) === 'is') continue;
				const [less] = near(value, CHANGE);
				expect(citationOf(changed(limit, path, less)), `${limit.id} ${path.join('.')}`).not.toEqual(citationOf(limit));
			}
		}
	});

	it('each number of practice and equipment is in its citation', () => {
		let seen = 0;
		for (const file of [...PRACTICE_TABLES, ...ABSORBER_CLASSES]) {
			for (const { path, value } of numbersIn(file)) {
				for (const other of near(value, CHANGE)) {
					const mutant = changed(file, path, other);
					expect(citedValuesOf(mutant).map(citeValue), `${file.id} ${path.join('.')}`).not.toEqual(citedValuesOf(file).map(citeValue));
					seen += 1;
				}
			}
		}
		expect(seen).toBe(2 * [...PRACTICE_TABLES, ...ABSORBER_CLASSES].flatMap(citedValuesOf).length);
	});

	it('each length of practice decides whether what is just enough below the anchorage is enough', () => {
		const contact = RULE_TABLES.flatMap(checksOf).find((limit) => limit.subject === 'contact');
		if (contact === undefined) throw new RangeError('no rule of no contact');
		for (const table of PRACTICE_TABLES) {
			for (const { path, value } of numbersIn(table)) {
				const [less, more] = near(value, CHANGE);
				for (const [other, expected] of [
					[less, 'held'],
					[more, 'failed']
				] as const) {
					const spare = below(table) - below(changed(table, path, other));
					expect(judge(contact, {}, { spare }).status, `${table.id} ${path.join('.')} ${String(other)}`).toBe(expected);
				}
			}
		}
	});
});

/**
 * What practice alone adds below the end of the stretched lanyard, m: the body by its custom, stretch
 * and margin; and, at a wall that leans away by 1 m for each metre down, half a body's width.
 */
function below(table: PracticeTable): number {
	const length = (cited: CitedValue | undefined) => (cited === undefined ? 0 : toSI(cited.value, cited.unit));
	const body = table.bodyCustom === 'full-height' ? length(table.bodyHeight) : length(table.dRingHeight) + length(table.stretch);
	return body + length(table.margin) + length(table.halfBodyWidth);
}

describe('a limit of the tables', () => {
	const checks = RULE_TABLES.flatMap(checksOf);
	const citations: readonly (readonly [string, Citation])[] = [
		...RULE_TABLES.flatMap((table) => table.limits.map((limit) => [limit.id, citationOf(limit)] as const)),
		...[...PRACTICE_TABLES, ...ABSORBER_CLASSES].flatMap((file) => citedValuesOf(file).map((value) => [file.id, citeValue(value)] as const))
	];

	it('is never held, and never failed, by a plan of which nothing is known', () => {
		for (const limit of checks) expect(judge(limit, {}, {}).status, limit.id).toBe('unknown');
	});

	it('always leaves with clause, source and mark; memory says how sure it is, the rest when it was read', () => {
		for (const [id, citation] of citations) {
			expect(citation.clause, id).not.toBe('');
			expect(citation.source.title, id).not.toBe('');
			expect(citation.source.where, id).not.toBe('');
			if (citation.mark === 'memory') expect(citation.confidence, id).toMatch(/^(high|medium|low)$/);
			else expect(citation.source.lookedAt, id).toMatch(/^20\d\d-\d\d/);
		}
		for (const field of LABEL_FIELDS) expect(field.clause, field.id).not.toBe('');
	});

	it('never gets stricter by knowing less, whatever the plan', () => {
		const quantities = fc.record(
			Object.fromEntries(Object.keys(QUANTITIES).map((name) => [name, fc.double({ min: -5, max: 30_000, noNaN: true })])),
			{ requiredKeys: [] }
		) as fc.Arbitrary<Quantities>;
		const facts = fc.record(
			{
				absorber: fc.boolean(),
				absorberClass: fc.constantFrom('csa-e4', 'csa-e6', 'en-355'),
				makerTestedLongerFreeFall: fc.boolean(),
				usedAsInstructed: fc.boolean(),
				systemAdaptedToMass: fc.boolean(),
				factorTwoDesign: fc.boolean(),
				connectorsCompatible: fc.boolean(),
				lineMeetsEdge: fc.boolean(),
				rescueArranged: fc.boolean(),
				limitedFreeFall: fc.boolean(),
				persons: fc.integer({ min: 1, max: 4 }),
				attachment: fc.constantFrom('back', 'chest')
			},
			{ requiredKeys: [] }
		) as fc.Arbitrary<Facts>;
		fc.assert(
			fc.property(fc.constantFrom(...checks), facts, quantities, (limit, known, measured) => {
				const before = judge(limit, known, measured);
				for (const name of Object.keys(known)) {
					const after = judge(limit, { ...known, [name]: 'unknown' }, measured);
					expect([before.status, 'unknown']).toContain(after.status);
				}
				for (const name of Object.keys(measured)) {
					const after = judge(limit, known, { ...measured, [name]: undefined });
					expect([before.status, 'unknown']).toContain(after.status);
				}
			}),
			{ numRuns: 400 }
		);
	});
});
