/** What the end of a check says in the chain: that it ended, and, of a passed final check, the record of the theory. */
import { COURSE, LESSON_IDS } from '#lib/course/index.ts';
import type { ItemOutcome, PassRule } from '#lib/mastery/index.ts';
import type { EntryOf } from '#lib/records/index.ts';
import { languageInfo } from '#lib/text/index.ts';
import { factTables } from '../course/tables.ts';
import type { CheckEvent, CheckTry, Completion } from '../db/checks.ts';
import type { Database } from '../db/open.ts';
import type { OrganisationRow } from '../db/people.ts';
import { evidenceDigest } from './evidence.ts';
import type { RecordSettings } from './found.ts';
import { commitmentOf } from './names.ts';
import { ruleRates } from './rule-rates.ts';
import { runsOf } from './run.ts';
import { validityFor } from './validity.ts';

/** A check that ended, as it is stored. */
export interface EndedCheck {
	readonly organisation: OrganisationRow;
	readonly settings: RecordSettings;
	readonly of: CheckTry;
	/** All of it, in order. */
	readonly events: readonly CheckEvent[];
	readonly passed: boolean;
	/** Local day on which it ended. */
	readonly day: string;
	/** Of a final check that was passed. */
	readonly completion: Completion | undefined;
	/** When it is entered, and by whom; null for the program itself. */
	readonly at: string;
	readonly by: string | null;
}

type Entered = EntryOf<'check-ended'> | EntryOf<'completed'>;

/**
 * @param ended with rows as they were read in the transaction in which the entries are appended
 * @returns what is appended for it
 */
export async function checkEndEntries(db: Database, ended: EndedCheck): Promise<readonly Entered[]> {
	const { of, events, passed, day, completion, at, by } = ended;
	const digest = evidenceDigest(of, events);
	const end: Entered = { kind: 'check-ended', at, by, person: of.person_id, check: of.id, lesson: of.lesson, nth: of.nth, passed, day, digest };
	return completion === undefined ? [end] : [end, await completedEntry(db, ended, completion, digest)];
}

async function completedEntry(db: Database, { organisation, settings, of, events, at, by }: EndedCheck, completion: Completion, digest: string): Promise<EntryOf<'completed'>> {
	const rule = JSON.parse(of.rule) as PassRule;
	const outcomes = outcomesIn(events);
	const tables = factTables(organisation.rules);
	const run = (await runsOf(db, [of.person_id])).get(of.person_id);
	const language = of.language === 'es' ? 'es' : 'en';
	return {
		kind: 'completed',
		at,
		by,
		person: of.person_id,
		id: completion.id,
		employer: { id: organisation.id, name: organisation.name },
		course: { id: completion.course, version: completion.version, scope: COURSE.scope, notCovered: [...COURSE.notCovered], lessons: [...LESSON_IDS] },
		rules: tables.rules.id,
		practice: tables.practice.id,
		language,
		languageState: languageInfo(language).review,
		startedAt: of.at,
		endedAt: completion.at,
		zone: organisation.zone,
		day: completion.day,
		check: of.id,
		digest,
		tries: of.nth - (run?.finalsBefore ?? 0),
		asked: outcomes.length,
		right: outcomes.filter((one) => one.right).length,
		unsafe: outcomes.filter((one) => one.unsafe).length,
		passRule: { id: rule.id, version: rule.version, provisional: rule.cut.kind === 'provisional', rates: ruleRates(rule) },
		supervised: completion.supervised === 1 ? await presentAt(db, of) : null,
		basis: 'own-training',
		validity: validityFor(organisation.rules, settings, completion.day)
	};
}

/** How each item of all pages was answered. Payloads are our own, as the course writes them. */
function outcomesIn(events: readonly CheckEvent[]): readonly ItemOutcome[] {
	return events.filter(({ kind }) => kind === 'handed-in').flatMap(({ payload }) => (JSON.parse(payload) as { readonly results: readonly { readonly outcome: ItemOutcome }[] }).results.map(({ outcome }) => outcome));
}

async function presentAt(db: Database, { supervision }: CheckTry): Promise<EntryOf<'completed'>['supervised']> {
	if (supervision === null) throw new Error('A supervised completion of a check that nobody watched');
	const { trainer, identified, place } = JSON.parse(supervision) as { readonly trainer: string; readonly identified: string; readonly place: string };
	return { trainer, named: await commitmentOf(db, trainer), identified, place };
}
