/** Pass rules that organisations made, and reviews by their judges. */
import type { Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { JudgesReviewTable, OwnPassRuleTable } from './schema.ts';

export type OwnPassRuleRow = Readonly<Selectable<OwnPassRuleTable>>;
export type JudgesReviewRow = Readonly<Selectable<JudgesReviewTable>>;

/** Enters a version of a rule. @throws a unique violation when the organisation has that version already */
export async function insertOwnRule(db: Database, row: OwnPassRuleRow): Promise<void> {
	await db.insertInto('own_pass_rule').values(row).execute();
}

/** @returns all versions of all rules that an organisation made, by id, the newest version first. */
export async function ownRulesOf(db: Database, organisation: string): Promise<readonly OwnPassRuleRow[]> {
	return db.selectFrom('own_pass_rule').selectAll().where('organisation_id', '=', organisation).orderBy('id').orderBy('version', 'desc').execute();
}

/** @returns the newest version of a rule that an organisation made; null if it made none of that id. */
export async function newestOwnRule(db: Database, organisation: string, id: string): Promise<OwnPassRuleRow | null> {
	const row = await db
		.selectFrom('own_pass_rule')
		.selectAll()
		.where('organisation_id', '=', organisation)
		.where('id', '=', id)
		.orderBy('version', 'desc')
		.limit(1)
		.executeTakeFirst();
	return row ?? null;
}

export async function insertReview(db: Database, row: JudgesReviewRow): Promise<void> {
	await db.insertInto('judges_review').values(row).execute();
}

/** @returns the review of a version of a rule that was entered last; null if none was. */
export async function newestReview(db: Database, organisation: string, rule: { readonly id: string; readonly version: number }): Promise<JudgesReviewRow | null> {
	const row = await db
		.selectFrom('judges_review')
		.selectAll()
		.where('organisation_id', '=', organisation)
		.where('rule_id', '=', rule.id)
		.where('rule_version', '=', rule.version)
		.orderBy('at', 'desc')
		.orderBy('id')
		.limit(1)
		.executeTakeFirst();
	return row ?? null;
}
