import { describe, expect, it } from 'vitest';
import {
	LESSON_RULE,
	PASS_RULES,
	cellsOf,
	firstPage,
	longestForm,
	passRule,
	ruleForCell,
	standing,
	withinFloor,
	type ItemOutcome,
	type PassRule,
	type Slot,
	type Standing
} from '#lib/mastery/index.ts';
import { passRuleSchema } from '#lib/mastery/schema.ts';

// Counts, caps and extra items: the issue "The orientation course", Final check.

function shipped(id: string): PassRule {
	const rule = passRule(id);
	if (rule === undefined) throw new Error(`${id} is not shipped`);
	return rule;
}

const STAGED = shipped('staged');
const CELLS = [
	'stages',
	'label-and-mass',
	'free-fall',
	'required-clearance',
	'available-and-verdict',
	'force-and-limits',
	'swing-and-path',
	'decisions'
];

type How = 'right' | 'wrong' | 'unsafe' | 'accepted';

function outcome(slot: Slot, how: How): ItemOutcome {
	return {
		cell: slot.cell,
		from: slot.from,
		right: how === 'right',
		unsafe: how === 'unsafe',
		failingPlan: slot.fails === true,
		acceptedFailingPlan: how === 'accepted'
	};
}

/** Answers pages until the check ends or the pages told are used up; each page says which places are not right. */
function after(rule: PassRule, pages: readonly Readonly<Record<number, How>>[]): Standing {
	const outcomes: ItemOutcome[] = [];
	for (const page of pages) {
		const now = standing(rule, outcomes);
		if (now.kind !== 'more') throw new Error(`ended before page: ${now.kind}`);
		outcomes.push(...now.slots.map((slot, i) => outcome(slot, page[i] ?? 'right')));
	}
	return standing(rule, outcomes);
}

/** What the next page asks, as `from cell`, blueprint left out. */
function extras(of: Standing): readonly string[] {
	if (of.kind !== 'more') throw new Error(`the check has ended: ${of.kind}`);
	return of.slots.filter((slot) => slot.from !== 'blueprint').map((slot) => `${slot.from} ${slot.cell}`);
}

function staged(of: Standing): number {
	return of.kind === 'more' ? of.slots.filter((slot) => slot.from === 'blueprint').length : -1;
}

/** The place of a cell's first item on the first page. */
function placeOf(cell: string, nth = 0): number {
	const places = firstPage(STAGED).flatMap((slot, i) => (slot.cell === cell ? [i] : []));
	return places[nth] ?? -1;
}

const plan = firstPage(STAGED).findIndex((slot) => slot.fails === true);

describe('the default rule', () => {
	it('passes after twelve items without an error', () => {
		expect(firstPage(STAGED)).toHaveLength(12);
		expect(after(STAGED, [{}])).toEqual({ kind: 'passed' });
	});

	it('fails after twelve items with four errors', () => {
		const wrong = { 0: 'wrong', 1: 'wrong', 2: 'wrong', 3: 'wrong' } as const;
		expect(after(STAGED, [wrong])).toEqual({ kind: 'failed', why: ['errors'], cells: [] });
	});

	it('goes on to eighteen after one to three errors, and brings one more item of each cell with an error', () => {
		const one = after(STAGED, [{ [placeOf('stages')]: 'wrong' }]);
		expect(staged(one)).toBe(6);
		expect(extras(one)).toEqual(['second-of-cell stages']);
		const three = after(STAGED, [{ 0: 'wrong', 1: 'wrong', 2: 'wrong' }]);
		expect(staged(three)).toBe(6);
		expect(extras(three)).toHaveLength(3);
	});

	it('passes at eighteen with one error once its cell was answered again', () => {
		expect(after(STAGED, [{ 0: 'wrong' }, {}])).toEqual({ kind: 'passed' });
	});

	it('asks the owed item alone when the count passes with the last error on the last page', () => {
		const two = after(STAGED, [{ 0: 'wrong' }, { 1: 'wrong' }, {}]);
		expect(two.kind).toBe('passed');
		const late = after(STAGED, [{ 0: 'wrong' }, { 1: 'wrong' }, { 2: 'wrong' }, { 3: 'wrong' }]);
		expect(staged(late)).toBe(0);
		expect(extras(late)).toHaveLength(1);
		const pages = [{ 0: 'wrong' }, { 1: 'wrong' }, { 2: 'wrong' }, { 3: 'wrong' }] as const;
		expect(after(STAGED, [...pages, {}])).toEqual({ kind: 'passed' });
		expect(after(STAGED, [...pages, { 0: 'wrong' }]).kind).toBe('cells-open');
	});

	it('leaves a cell open when its second item is wrong too, whether blueprint or extra', () => {
		const again = after(STAGED, [{ [placeOf('stages')]: 'wrong' }]);
		if (again.kind !== 'more') throw new Error('ended');
		again.slots.forEach((slot, i) => {
			if (slot.cell !== 'stages') return;
			expect(after(STAGED, [{ [placeOf('stages')]: 'wrong' }, { [i]: 'wrong' }])).toEqual({ kind: 'cells-open', cells: ['stages'] });
		});
	});

	it('leaves a cell open when two of its items on one page are wrong', () => {
		const both = { [placeOf('required-clearance')]: 'wrong', [placeOf('required-clearance', 1)]: 'wrong' } as const;
		expect(after(STAGED, [both])).toEqual({ kind: 'cells-open', cells: ['required-clearance'] });
	});

	it('bears one item with an unsafe number in the first twelve and two in all', () => {
		expect(after(STAGED, [{ 0: 'unsafe' }]).kind).toBe('more');
		expect(after(STAGED, [{ 0: 'unsafe', 1: 'unsafe' }])).toEqual({ kind: 'failed', why: ['unsafe-numbers'], cells: [] });
		expect(after(STAGED, [{ 0: 'unsafe' }, { 1: 'unsafe' }]).kind).toBe('more');
		expect(after(STAGED, [{ 0: 'unsafe' }, { 1: 'unsafe' }, { 2: 'unsafe' }])).toMatchObject({ kind: 'failed', why: ['unsafe-numbers'] });
	});

	it('brings two more failing plans after one was accepted, and passes when both are refused', () => {
		const accepted = after(STAGED, [{ [plan]: 'accepted' }]);
		expect(extras(accepted)).toEqual(['refuse-again decisions', 'refuse-again decisions']);
		if (accepted.kind !== 'more') throw new Error('ended');
		expect(accepted.slots.filter((slot) => slot.from === 'refuse-again').every((slot) => slot.fails === true)).toBe(true);
		expect(after(STAGED, [{ [plan]: 'accepted' }, {}])).toEqual({ kind: 'passed' });
	});

	it('fails at a second acceptance', () => {
		expect(after(STAGED, [{ [plan]: 'accepted' }, { 6: 'accepted' }])).toMatchObject({ kind: 'failed', why: ['failing-plan-accepted-again'] });
	});

	it('asks thirty-five items at most, and does so after three errors, one of them an accepted plan, and a fourth', () => {
		expect(longestForm(STAGED)).toBe(35);
		const pages: readonly Readonly<Record<number, How>>[] = [{ 0: 'wrong', 1: 'wrong', [plan]: 'accepted' }, { 3: 'wrong' }, {}, {}];
		const asked = pages.map((_, i) => after(STAGED, pages.slice(0, i))).map((now) => (now.kind === 'more' ? now.slots.length : 0));
		expect(asked).toEqual([12, 6 + 4, 6 + 1, 6]);
		expect(after(STAGED, pages)).toEqual({ kind: 'passed' });
	});

	it('asks every course cell once in the first twelve and twice by eighteen', () => {
		expect([...cellsOf(STAGED)].sort()).toEqual([...CELLS].sort());
		for (const cell of CELLS) {
			expect(STAGED.blueprint.slice(0, 12).filter((one) => one.cell === cell).length).toBeGreaterThanOrEqual(1);
			expect(STAGED.blueprint.slice(0, 18).filter((one) => one.cell === cell).length).toBeGreaterThanOrEqual(2);
		}
	});

	it('refuses outcomes that are no whole pages of it, or that follow its end', () => {
		const page = firstPage(STAGED).map((slot) => outcome(slot, 'right'));
		expect(() => standing(STAGED, page.slice(1))).toThrow('do not answer the page of 12');
		expect(() => standing(STAGED, [...page, ...page])).toThrow('12 items come after the end');
		const foreign = page.map((one, i) => (i === 0 ? { ...one, cell: 'elsewhere' } : one));
		expect(() => standing(STAGED, foreign)).toThrow('do not answer');
	});
});

describe("a lesson's rule", () => {
	const rule = ruleForCell(LESSON_RULE, 'free-fall');

	it('passes three of three, and five of six', () => {
		expect(firstPage(rule)).toHaveLength(3);
		expect(firstPage(rule).every((slot) => slot.cell === 'free-fall')).toBe(true);
		expect(after(rule, [{}])).toEqual({ kind: 'passed' });
		expect(after(rule, [{ 1: 'wrong' }, {}])).toEqual({ kind: 'passed' });
		expect(after(rule, [{ 1: 'wrong', 2: 'wrong' }])).toMatchObject({ kind: 'failed' });
		expect(after(rule, [{ 1: 'wrong' }, { 2: 'wrong' }])).toEqual({ kind: 'cells-open', cells: ['free-fall'] });
	});
});

describe('the schema', () => {
	/** What the schema says of a changed default rule: path and words. */
	function says(change: Readonly<Record<string, unknown>>, base: PassRule = STAGED): string {
		const read = passRuleSchema.safeParse({ ...structuredClone(base), ...change });
		return read.success ? 'fine' : read.error.issues.map((issue) => `${issue.path.join('.')} ${issue.message}`).join('\n');
	}

	it('takes every shipped rule as it is', () => {
		for (const rule of [...PASS_RULES, LESSON_RULE]) expect(passRuleSchema.parse(structuredClone(rule))).toEqual(rule);
	});

	it.each<[Readonly<Record<string, unknown>>, string]>([
		[{ id: 'Staged Rule' }, 'id is no short name'],
		[{ stages: STAGED.stages.toReversed() }, 'stages.1.after is not more than at the stage before'],
		[{ stages: [{ after: 30, passAtMost: 4, failAtLeast: 7 }] }, 'leaves counts undecided at the last stage'],
		[{ stages: [{ after: 12, passAtMost: 0, failAtLeast: 1 }, ...STAGED.stages.slice(1)] }, 'leaves no count that goes on'],
		[{ stages: [{ after: 3, passAtMost: 3 }] }, 'lets every item be wrong'],
		[{ unsafe: { first: { items: 10, atMost: 1 }, atMost: 2 } }, 'unsafe.first.items is the end of no stage'],
		[{ unsafe: { first: { items: 12, atMost: 3 }, atMost: 2 } }, 'unsafe.first.atMost is more than is allowed in all'],
		[{ blueprint: STAGED.blueprint.slice(1) }, 'blueprint has 29 places for 30 items'],
		[{ blueprint: STAGED.blueprint.map((one, i) => (i === 1 ? { ...one, cell: 'free-fall' } : one)) }, 'does not ask "label-and-mass" in the first 12 items'],
		[{ blueprint: STAGED.blueprint.map((one, i) => (i === 12 ? { ...one, cell: 'free-fall' } : one)) }, 'asks "label-and-mass" less than twice in the first 18 items'],
		[{ blueprint: STAGED.blueprint.map((one) => ({ cell: one.cell, difficulty: one.difficulty })) }, 'has no failing plan in its first stage'],
		[{ tries: { beforeUnlock: 2, perDay: 3 } }, 'tries.perDay is more than is allowed before a trainer unlocks'],
		[{ for: 'lesson' }, 'blueprint names the cell "stages"; a lesson\'s rule'],
		[{ cut: { kind: 'judged', date: '2027-02-31', judges: ['A', 'B', 'C'], document: 'minutes' } }, 'cut.date is no date'],
		[{ cut: { kind: 'judged', date: '2027-02-03', judges: ['A', 'B'], document: 'minutes' } }, 'cut.judges are fewer than three'],
		[{ score: 80 }, 'score']
	])('says what is wrong: case %#', (change, words) => {
		expect(says(change)).toContain(words);
	});

	it('takes a pass mark that judges have set', () => {
		expect(says({ cut: { kind: 'judged', date: '2027-02-03', judges: ['A', 'B', 'C'], document: 'minutes 4' } })).toBe('fine');
	});
});

describe('the floor', () => {
	it('takes every shipped rule of the final check', () => {
		for (const rule of PASS_RULES) expect(withinFloor(rule)).toMatchObject({ ok: true });
	});

	it.each([
		['three tries', { ...STAGED, tries: { beforeUnlock: 3, perDay: 3 } }],
		['an error borne in the first twelve', { ...STAGED, stages: [{ after: 12, passAtMost: 1, failAtLeast: 4 }, ...STAGED.stages.slice(1)] }],
		['five errors in twenty-four', { ...shipped('fixed-24'), stages: [{ after: 24, passAtMost: 5 }], unsafe: { first: { items: 24, atMost: 5 }, atMost: 5 } }]
	] as const)('refuses the rule made lax by %s', (_, lax) => {
		expect(passRuleSchema.safeParse(structuredClone(lax)).success).toBe(true);
		expect(withinFloor(lax).ok).toBe(false);
		expect(withinFloor(lax).rate).toBeGreaterThan(0.05);
	});
});
