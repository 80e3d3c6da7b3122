/** The page of one person, as the employer sees it: records, tries, orders, history. */
import { commitmentsIn, stateOn, validityOf, type PersonRecord, type TrainingState } from '#lib/records/index.ts';
import { namesNow } from '../db/names.ts';
import type { Database } from '../db/open.ts';
import { allTries, deedsWith } from '../db/person-history.ts';
import { identitiesOf } from '../db/records.ts';
import { crewNamesOf, trainingOf } from '../db/training.ts';
import type { Person } from '../people/who.ts';
import { findPersonRecord } from './found.ts';
import { passedLessons, stateDaysOf } from './list.ts';
import { remarkOn, type Remark } from './remark.ts';

/** A try at a check. */
export interface ListedTry {
	readonly id: string;
	/** Id of the lesson, or `final`. */
	readonly lesson: string;
	readonly nth: number;
	/** Local day on which it began. */
	readonly day: string;
	readonly result: 'passed' | 'not-passed' | 'running';
}

/** Ways in which data of one person leaves the program, as they are noted. */
const HANDED_OUT = ['certificate-handed-out', 'credential-handed-out', 'person-data-exported'] as const;

/** @reason what left lately; older deeds stand in the log */
const MOST_HANDED_OUT = 20;

/** Something of one person that was handed out. */
export interface ListedHandOut {
	readonly id: string;
	readonly kind: (typeof HANDED_OUT)[number];
	/** ISO 8601, UTC. */
	readonly at: string;
	/** Id of who took it. */
	readonly by: string;
}

/** Everything on the page of a person. */
export interface PersonPage {
	readonly id: string;
	/** Null once it is forgotten. */
	readonly name: string | null;
	readonly number: string | null;
	readonly crews: readonly string[];
	readonly record: PersonRecord;
	readonly state: TrainingState;
	readonly remark: Remark | undefined;
	/** Last valid day; `NO_END` for no end; null where no record counts. */
	readonly until: string | null;
	/** The record that counts today. */
	readonly counts: string | undefined;
	readonly today: string;
	/** IANA zone of the sites. */
	readonly zone: string;
	/** Rule table of the organisation. */
	readonly rules: string;
	/** The newest first. */
	readonly tries: readonly ListedTry[];
	/** What was handed out of this person lately, the newest first. */
	readonly handedOut: readonly ListedHandOut[];
	/** What commitments in the entries hold, by commitment: names of signers; what is forgotten is left out. */
	readonly committed: ReadonlyMap<string, string>;
	/** Names that those who made entries, or took something, have now, by id; empty where one is forgotten. */
	readonly actors: ReadonlyMap<string, string>;
}

/** @returns the page of a learner of an employer's organisation; null for anybody else. */
export async function personPage(db: Database, employer: Person, id: string, now: Date): Promise<PersonPage | null> {
	const { organisation } = employer;
	const found = await findPersonRecord(db, organisation, id);
	if (found === null || found.person.role !== 'learner') return null;
	const { person, record } = found;
	const days = await stateDaysOf(db, organisation, now);
	const { record: counting, until, due, detail } = validityOf(record);
	const begun = (await trainingOf(db, organisation, [id]))[0]?.begun ?? false;
	const state = stateOn({ until, begun }, days.today, days.soonDays);
	const lessons = (await passedLessons(db, [id])).get(id) ?? null;
	const identities = await identitiesOf(db, organisation, record.entries.flatMap(({ entry }) => commitmentsIn(entry)));
	const ended = new Map(record.checks.map(({ entry }) => [entry.check, entry.passed]));
	const tries = await allTries(db, id);
	const handedOut = (await deedsWith(db, organisation, id, HANDED_OUT, MOST_HANDED_OUT)).flatMap(({ kind, actor_id, ...deed }): ListedHandOut[] => {
		const known = HANDED_OUT.find((one) => one === kind);
		return known === undefined ? [] : [{ ...deed, kind: known, by: actor_id ?? '' }];
	});
	const actors = [...record.entries.flatMap(({ entry }) => entry.by ?? []), ...handedOut.map(({ by }) => by)];
	const erased = record.erased !== undefined;
	return {
		id,
		name: erased ? null : person.name,
		number: erased ? null : person.personal_number,
		crews: (await crewNamesOf(db, organisation, [id])).get(id) ?? [],
		record,
		state,
		remark: remarkOn({ gone: record.left !== undefined, until, due: due ?? null, detail: detail ?? '' }, state, lessons, days.today),
		until,
		counts: counting?.id,
		today: days.today,
		zone: days.zone,
		rules: days.rules,
		tries: tries.map(({ id: check, lesson, nth, day }) => {
			const passed = ended.get(check);
			return { id: check, lesson, nth, day, result: passed === undefined ? 'running' : passed ? 'passed' : 'not-passed' };
		}),
		handedOut,
		committed: new Map([...identities].map(([commitment, { name }]) => [commitment, name])),
		actors: new Map([...(await namesNow(db, organisation, actors))].map(([by, { name: now }]) => [by, now]))
	};
}
