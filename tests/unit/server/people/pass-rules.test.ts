import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FLOOR, PASS_RULES, passRule, withinFloor, type PassRule } from '#lib/mastery/index.ts';
import { passRuleSchema } from '#lib/mastery/schema.ts';
import { checkDesk } from '#lib/server/course/checks.ts';
import { insertOwnRule } from '#lib/server/db/pass-rules.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { changeSettings, settingsOf } from '#lib/server/people/organisation.ts';
import { choosePassRule, enterReview, finalRule, listPassRules, makePassRule, type RuleCounts } from '#lib/server/people/pass-rules.ts';
import type { Person } from '#lib/server/people/who.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aMember, anOrganisation, later } from './organisation.ts';

function shipped(id: string): PassRule {
	const rule = passRule(id);
	if (rule === undefined) throw new Error(`no rule ${id}`);
	return rule;
}

const STAGED = shipped('staged');

function countsOf(rule: PassRule): RuleCounts {
	return {
		stages: rule.stages,
		unsafeFirst: rule.unsafe.first.atMost,
		unsafeInAll: rule.unsafe.atMost,
		tries: rule.tries.beforeUnlock,
		triesADay: rule.tries.perDay
	};
}

/** The staged rule, a little stricter at its last stage. */
const STRICTER: RuleCounts = { ...countsOf(STAGED), stages: STAGED.stages.map((one) => (one.after === 30 ? { after: 30, passAtMost: 3 } : one)) };

const REVIEW = { date: '2026-11-20', judges: ['Ana Mora', 'Jo Reed', 'Lena Voss'], document: 'Minutes 14, training office' };

describe.each(DATABASES)('pass rules of an organisation on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let employer: Person;
	let stranger: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function fresh(): Promise<void> {
		employer = await aMember(db, await anOrganisation(db), 'employer', 'Orla Finch');
		stranger = await aMember(db, await anOrganisation(db), 'employer', 'Ilan Corvo');
	}

	const inForce = async (who = employer): Promise<PassRule> => finalRule(db, who.organisation, (await settingsOf(db, who.organisation)).passRule);
	const inUse = async (): Promise<readonly string[]> => (await listPassRules(db, employer)).filter((one) => one.inUse).map((one) => one.rule.id);
	const notes = async (): Promise<readonly [string, unknown][]> =>
		(await db.selectFrom('audit').selectAll().where('organisation_id', '=', employer.organisation).orderBy('at').execute()).map((row) => [row.kind, JSON.parse(row.detail)]);

	it('a shipped one is chosen, noted, and judges from then on', async () => {
		await fresh();
		expect((await listPassRules(db, employer)).map((one) => [one.rule.id, one.own, one.inUse])).toEqual(PASS_RULES.map(({ id }) => [id, false, id === 'staged']));
		expect(await choosePassRule(db, employer, 'fixed-24', NOW)).toBe(true);
		expect(await inForce()).toEqual(shipped('fixed-24'));
		expect(await inUse()).toEqual(['fixed-24']);
		expect(await notes()).toEqual([['pass-rule-chosen', { rule: 'fixed-24', version: 1 }]]);
		expect(await inForce(stranger)).toEqual(STAGED);
	});

	it('what is not there cannot be chosen', async () => {
		await fresh();
		for (const id of ['lesson', 'own-staged', '', '__proto__']) expect(await choosePassRule(db, employer, id, NOW)).toBe(false);
		expect(await inForce()).toEqual(STAGED);
		expect(await notes()).toEqual([]);
	});

	it('an own one is made by changing counts, in versions that stay, and is nobody else’s', async () => {
		await fresh();
		const first = await makePassRule(db, employer, 'staged', STRICTER, NOW);
		expect(first).toMatchObject({ kind: 'made', rule: { id: 'own-staged', version: 1, cut: { kind: 'provisional' } } });
		expect((await inForce()).stages.at(-1)).toEqual({ after: 30, passAtMost: 3 });
		const second = await makePassRule(db, employer, 'own-staged', { ...STRICTER, tries: 1, triesADay: 1 }, later(60));
		expect(second).toMatchObject({ kind: 'made', rule: { id: 'own-staged', version: 2, tries: { beforeUnlock: 1, perDay: 1 } } });
		const rule = await inForce();
		expect(rule).toMatchObject({ version: 2, blueprint: STAGED.blueprint });
		expect(passRuleSchema.parse(structuredClone(rule))).toEqual(rule);
		expect(withinFloor(rule)).toMatchObject({ ok: true });
		const stored = await db.selectFrom('own_pass_rule').select(['version', 'made_by']).where('organisation_id', '=', employer.organisation).orderBy('version').execute();
		expect(stored).toEqual([1, 2].map((version) => ({ version, made_by: employer.id })));
		expect(await inUse()).toEqual(['own-staged']);
		const learner = await aMember(db, employer.organisation, 'learner', 'Dario Penn');
		expect((await checkDesk(db, learner, 'final', NOW)).rule).toEqual(rule);
		expect((await checkDesk(db, learner, 'stages', NOW)).rule.for).toBe('lesson');
		expect(await choosePassRule(db, stranger, 'own-staged', NOW)).toBe(false);
		expect(await makePassRule(db, stranger, 'own-staged', STRICTER, NOW)).toEqual({ kind: 'not-found' });
		expect((await notes()).map(([kind]) => kind)).toEqual(['pass-rule-made', 'pass-rule-made']);
	});

	it('two employers who save at once get two versions', async () => {
		await fresh();
		const colleague = await aMember(db, employer.organisation, 'employer', 'Pia Lund');
		const made = await Promise.all([employer, colleague].map((who) => makePassRule(db, who, 'staged', STRICTER, NOW)));
		expect(made.map((one) => (one.kind === 'made' ? one.rule.version : 0)).sort()).toEqual([1, 2]);
	});

	it('a lax one is not saved: told are the rate, and single changes that help', async () => {
		await fresh();
		// Source: DESIGN 6; two tries keep the default within 5 % (tests/unit/mastery/pass-rule.test.ts), four do not.
		const lax: RuleCounts = { ...countsOf(STAGED), tries: 4 };
		const making = await makePassRule(db, employer, 'staged', lax, NOW);
		if (making.kind !== 'lax') throw new Error(making.kind);
		expect(making.rate).toBeGreaterThan(FLOOR.mostPass);
		expect(making.remedies).toContainEqual(expect.objectContaining({ kind: 'tries', to: 2 }));
		for (const remedy of making.remedies) {
			expect(remedy.rate).toBeLessThanOrEqual(making.most);
			const counts: RuleCounts =
				remedy.kind === 'pass'
					? { ...lax, stages: lax.stages.map((one, i) => (i === remedy.stage ? { ...one, passAtMost: remedy.to } : one)) }
					: remedy.kind === 'tries'
						? { ...lax, tries: remedy.to, triesADay: Math.min(lax.triesADay, remedy.to) }
						: { ...lax, unsafeInAll: remedy.to, unsafeFirst: Math.min(lax.unsafeFirst, remedy.to) };
			const other = await aMember(db, await anOrganisation(db), 'employer', 'Rui Sand');
			expect((await makePassRule(db, other, 'staged', counts, NOW)).kind, JSON.stringify(remedy)).toBe('made');
		}
		expect(await db.selectFrom('own_pass_rule').select('version').where('organisation_id', '=', employer.organisation).execute()).toEqual([]);
		expect(await inForce()).toEqual(STAGED);
		expect(await notes()).toEqual([]);
	});

	it.each([
		['more errors than can be borne', { stages: STAGED.stages.map((one, i) => (i === 3 ? { passAtMost: 30 } : one)) }, { 'pass-3': 'pass-too-many' }],
		['nothing between pass and fail', { stages: STAGED.stages.map((one, i) => (i === 0 ? { passAtMost: 3, failAtLeast: 4 } : one)) }, { 'fail-0': 'fail-too-few' }],
		['more unsafe numbers at first than in all', { unsafeFirst: 3 }, { 'unsafe-first': 'unsafe-first-too-many' }],
		['no try', { tries: 0, triesADay: 0 }, { tries: 'tries-too-many', 'tries-a-day': 'tries-a-day-too-many' }],
		['more tries a day than in all', { triesADay: 3 }, { 'tries-a-day': 'tries-a-day-too-many' }],
		['a stage without its count', { stages: STAGED.stages.slice(0, 2) }, { 'pass-2': 'pass-too-many', 'pass-3': 'pass-too-many' }]
	] as const)('%s is refused at its field', async (_name, change, problems) => {
		await fresh();
		expect(await makePassRule(db, employer, 'staged', { ...countsOf(STAGED), ...change }, NOW)).toEqual({ kind: 'refused', problems });
	});

	it('the pass mark is provisional until judges have reviewed this version', async () => {
		await fresh();
		expect(await enterReview(db, employer, { id: 'staged', version: 1 }, REVIEW, NOW)).toBe(true);
		expect(await inForce()).toEqual({ ...STAGED, cut: { kind: 'judged', ...REVIEW } });
		expect(passRuleSchema.safeParse(structuredClone(await inForce())).success).toBe(true);
		expect((await inForce(stranger)).cut).toEqual({ kind: 'provisional' });
		// A changed rule is another rule: its pass mark is nobody's yet.
		await makePassRule(db, employer, 'staged', STRICTER, later(10));
		expect((await inForce()).cut).toEqual({ kind: 'provisional' });
		expect(await enterReview(db, employer, { id: 'own-staged', version: 1 }, { ...REVIEW, document: 'Minutes 15' }, later(20))).toBe(true);
		expect((await inForce()).cut).toMatchObject({ kind: 'judged', document: 'Minutes 15' });
		await makePassRule(db, employer, 'own-staged', { ...STRICTER, tries: 1, triesADay: 1 }, later(30));
		expect((await inForce()).cut).toEqual({ kind: 'provisional' });
		expect(await enterReview(db, employer, { id: 'own-staged', version: 1 }, REVIEW, later(40))).toBe(false);
		expect((await notes()).filter(([kind]) => kind === 'judges-review-entered')).toEqual([
			['judges-review-entered', { rule: 'staged', version: 1 }],
			['judges-review-entered', { rule: 'own-staged', version: 1 }]
		]);
	});

	it('of two reviews the one entered last holds', async () => {
		await fresh();
		await enterReview(db, employer, { id: 'staged', version: 1 }, REVIEW, NOW);
		await enterReview(db, employer, { id: 'staged', version: 1 }, { ...REVIEW, document: 'Minutes 16' }, later(1));
		expect((await inForce()).cut).toMatchObject({ document: 'Minutes 16' });
	});

	it('neither rules nor reviews can be changed or taken away', async () => {
		await fresh();
		await makePassRule(db, employer, 'staged', STRICTER, NOW);
		await enterReview(db, employer, { id: 'own-staged', version: 1 }, REVIEW, NOW);
		await expect(db.updateTable('own_pass_rule').set({ rule: '{}' }).execute()).rejects.toThrow('own_pass_rule is insert-only');
		await expect(db.deleteFrom('own_pass_rule').execute()).rejects.toThrow('own_pass_rule is insert-only');
		await expect(db.updateTable('judges_review').set({ date: '2020-01-01' }).execute()).rejects.toThrow('judges_review is insert-only');
		await expect(db.deleteFrom('judges_review').execute()).rejects.toThrow('judges_review is insert-only');
		const again = { organisation_id: employer.organisation, id: 'own-staged', version: 1, rule: '{}', made_by: employer.id, at: NOW.toISOString() };
		await expect(insertOwnRule(db, again)).rejects.toThrow();
	});

	it('other settings leave the rule alone', async () => {
		await fresh();
		await makePassRule(db, employer, 'staged', STRICTER, NOW);
		await changeSettings(db, employer, { name: 'Harrow', rules: 'ca-ontario', units: 'metric', language: 'en', zone: 'UTC' }, later(5));
		expect((await inForce()).id).toBe('own-staged');
	});
});
