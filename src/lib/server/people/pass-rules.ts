/** The pass rule of an organisation's final check: chosen among the shipped ones, or made from one of them. */
import { randomUUID } from 'node:crypto';
import { LESSONS } from '#lib/course/index.ts';
import { FLOOR, OWN_RULE, PASS_RULES, baseOf, cellsOf, passRule, remediesOf, withinFloor, type PassRule, type Remedy } from '#lib/mastery/index.ts';
import { passRuleSchema } from '#lib/mastery/schema.ts';
import type { Database } from '../db/open.ts';
import { insertOwnRule, insertReview, newestOwnRule, newestReview, ownRulesOf, type JudgesReviewRow, type OwnPassRuleRow } from '../db/pass-rules.ts';
import { findOrganisation, isUniqueViolation, setPassRule } from '../db/people.ts';
import { note } from './audit.ts';
import type { Person } from './who.ts';

function ruleIn(row: OwnPassRuleRow): PassRule {
	return JSON.parse(row.rule) as PassRule;
}

/** A rule with its pass mark set by judges, where a review of this version was entered. */
async function reviewed(db: Database, organisation: string, rule: PassRule): Promise<PassRule> {
	const review = await newestReview(db, organisation, rule);
	return review === null ? rule : { ...rule, cut: cutOf(review) };
}

function cutOf({ date, judges, document }: JudgesReviewRow): PassRule['cut'] {
	return { kind: 'judged', date, judges: JSON.parse(judges) as string[], document };
}

/** The newest version of a rule that an organisation can choose; undefined if it can choose none of that id. */
async function ruleOf(db: Database, organisation: string, id: string): Promise<PassRule | undefined> {
	const shipped = passRule(id);
	if (shipped !== undefined) return shipped;
	const own = await newestOwnRule(db, organisation, id);
	return own === null ? undefined : ruleIn(own);
}

/**
 * @param id what the organisation chose.
 * @returns the rule by which its final check is judged from now on, with its judges' review; the default where the
 * choice is not there any more.
 */
export async function finalRule(db: Database, organisation: string, id: string): Promise<PassRule> {
	const rule = (await ruleOf(db, organisation, id)) ?? PASS_RULES[0];
	if (rule === undefined) throw new Error('There is no pass rule');
	return reviewed(db, organisation, rule);
}

/** A rule as the employer sees it. */
export interface ListedRule {
	readonly rule: PassRule;
	/** Id of the shipped rule that it is, or was made from. */
	readonly base: string;
	readonly own: boolean;
	readonly inUse: boolean;
}

/** @returns the rules that the employer's organisation can choose from: the shipped ones, then its own, each in its newest version. */
export async function listPassRules(db: Database, employer: Person): Promise<readonly ListedRule[]> {
	const { organisation } = employer;
	const chosen = (await findOrganisation(db, organisation))?.pass_rule;
	const own = (await ownRulesOf(db, organisation)).filter((row, i, rows) => rows[i - 1]?.id !== row.id).map(ruleIn);
	const rules = await Promise.all([...PASS_RULES, ...own].map((rule) => reviewed(db, organisation, rule)));
	const listed = rules.map((rule) => ({ rule, base: baseOf(rule.id), own: rule.id.startsWith(OWN_RULE), inUse: rule.id === chosen }));
	// A choice that is not there any more is judged by the default.
	return listed.some((one) => one.inUse) ? listed : listed.map((one, i) => ({ ...one, inUse: i === 0 }));
}

/** Lets an organisation use a rule from now on; a check that runs keeps the one it began with. @returns false if there is none of that id */
export async function choosePassRule(db: Database, employer: Person, id: string, now: Date): Promise<boolean> {
	return db.transaction().execute(async (transaction) => {
		const rule = await ruleOf(transaction, employer.organisation, id);
		if (rule === undefined) return false;
		await setPassRule(transaction, employer.organisation, rule.id);
		await noteRule(transaction, employer, 'pass-rule-chosen', rule, now);
		return true;
	});
}

async function noteRule(db: Database, employer: Person, kind: 'pass-rule-chosen' | 'pass-rule-made' | 'judges-review-entered', rule: { readonly id: string; readonly version: number }, now: Date): Promise<void> {
	const { id: actor, organisation } = employer;
	await note(db, { kind, organisation, actor, subject: organisation, detail: { rule: rule.id, version: rule.version } }, now);
}

/** The counts of a rule that an organisation may change. */
export interface RuleCounts {
	/** In the order of the stages; the last has no `failAtLeast`, and elsewhere it may be left out. */
	readonly stages: readonly { readonly passAtMost: number; readonly failAtLeast?: number | undefined }[];
	readonly unsafeFirst: number;
	readonly unsafeInAll: number;
	readonly tries: number;
	readonly triesADay: number;
}

/** What came of making a rule. */
export type Making =
	| { readonly kind: 'made'; readonly rule: PassRule }
	/** By field, keys of the catalogue. Fields are `pass-0`, `fail-0` …, `unsafe-first`, `unsafe-in-all`, `tries`, `tries-a-day`. */
	| { readonly kind: 'refused'; readonly problems: Readonly<Record<string, string>> }
	/** It would let too many through: how many, and which single changes would help. */
	| { readonly kind: 'lax'; readonly rate: number; readonly most: number; readonly remedies: readonly Remedy[] }
	/** There is no rule to make it from. */
	| { readonly kind: 'not-found' };

function changed(from: PassRule, counts: RuleCounts, id: string, version: number): unknown {
	return {
		...from,
		id,
		version,
		stages: from.stages.map(({ after }, i) => {
			const { passAtMost, failAtLeast } = counts.stages[i] ?? {};
			return failAtLeast === undefined || i === from.stages.length - 1 ? { after, passAtMost } : { after, passAtMost, failAtLeast };
		}),
		unsafe: { first: { items: from.unsafe.first.items, atMost: counts.unsafeFirst }, atMost: counts.unsafeInAll },
		tries: { beforeUnlock: counts.tries, perDay: counts.triesADay },
		cut: { kind: 'provisional' }
	};
}

/** The field of the form that a part of a rule comes from, and what is wrong with it. */
function problemAt(path: readonly PropertyKey[]): readonly [field: string, key: string] {
	const [part, at, name] = path.map(String);
	if (part === 'stages' && name === 'passAtMost') return [`pass-${at ?? ''}`, 'pass-too-many'];
	if (part === 'stages' && name === 'failAtLeast') return [`fail-${at ?? ''}`, 'fail-too-few'];
	if (part === 'unsafe') return at === 'first' ? ['unsafe-first', 'unsafe-first-too-many'] : ['unsafe-in-all', 'count'];
	if (part === 'tries') return at === 'perDay' ? ['tries-a-day', 'tries-a-day-too-many'] : ['tries', 'tries-too-many'];
	return ['', 'count'];
}

/**
 * Makes a rule of the organisation's own from one that it can choose, by changing counts, and uses it from now on. What
 * it was before stays, as an older version. A rule that lets too many through is not stored: `withinFloor`.
 */
export async function makePassRule(db: Database, employer: Person, from: string, counts: RuleCounts, now: Date): Promise<Making> {
	const base = await ruleOf(db, employer.organisation, from);
	if (base === undefined) return { kind: 'not-found' };
	const id = `${OWN_RULE}${baseOf(base.id)}`;
	const parsed = passRuleSchema.safeParse(changed(base, counts, id, 1));
	if (!parsed.success) {
		const problems: Record<string, string> = {};
		for (const issue of parsed.error.issues) {
			const [field, key] = problemAt(issue.path);
			problems[field] ??= key;
		}
		return { kind: 'refused', problems };
	}
	if (!asksWholeCourse(parsed.data)) return { kind: 'refused', problems: { '': 'cells' } };
	const { ok, rate } = withinFloor(parsed.data);
	if (!ok) return { kind: 'lax', rate, most: FLOOR.mostPass, remedies: remediesOf(parsed.data) };
	return { kind: 'made', rule: await storeNext(db, employer, parsed.data, now) };
}

/** Whether every cell of the course is asked. */
function asksWholeCourse(rule: PassRule): boolean {
	const asked = cellsOf(rule);
	return LESSONS.every(({ cell }) => asked.includes(cell));
}

/** How often the next version is tried when another employer came between. */
const TRIES = 4;

async function storeNext(db: Database, employer: Person, rule: PassRule, now: Date): Promise<PassRule> {
	for (let tries = 1; ; tries += 1) {
		try {
			return await storeOnce(db, employer, rule, now);
		} catch (error) {
			if (tries >= TRIES || !isUniqueViolation(error)) throw error;
		}
	}
}

async function storeOnce(db: Database, employer: Person, made: PassRule, now: Date): Promise<PassRule> {
	const { organisation } = employer;
	return db.transaction().execute(async (transaction) => {
		const newest = await newestOwnRule(transaction, organisation, made.id);
		const rule: PassRule = { ...made, version: (newest?.version ?? 0) + 1 };
		const { id, version } = rule;
		await insertOwnRule(transaction, { organisation_id: organisation, id, version, rule: JSON.stringify(rule), made_by: employer.id, at: now.toISOString() });
		await setPassRule(transaction, organisation, id);
		await noteRule(transaction, employer, 'pass-rule-made', rule, now);
		return rule;
	});
}

/** What judges settled. */
export interface Review {
	/** Day, YYYY-MM-DD. */
	readonly date: string;
	/** At least three names. */
	readonly judges: readonly string[];
	/** Where it is written down. */
	readonly document: string;
}

/**
 * Enters that judges set the pass mark of a version of a rule.
 * @returns false if that version is not the newest of a rule that the organisation can choose: it was changed meanwhile
 */
export async function enterReview(db: Database, employer: Person, of: { readonly id: string; readonly version: number }, review: Review, now: Date): Promise<boolean> {
	return db.transaction().execute(async (transaction) => {
		const rule = await ruleOf(transaction, employer.organisation, of.id);
		if (rule?.version !== of.version) return false;
		await insertReview(transaction, {
			id: randomUUID(),
			organisation_id: employer.organisation,
			rule_id: rule.id,
			rule_version: rule.version,
			date: review.date,
			judges: JSON.stringify(review.judges),
			document: review.document,
			entered_by: employer.id,
			at: now.toISOString()
		});
		await noteRule(transaction, employer, 'judges-review-entered', rule, now);
		return true;
	});
}
