/** people.csv: everyone, and how they stand today. */
import { NO_END, stateOn, trainingDay, validityOf } from '#lib/records/index.ts';
import type { Row } from './csv.ts';
import type { WalkedPerson } from './people.ts';

/** In this order, for good: new ones go to the end. */
export const PEOPLE_COLUMNS = [
	'person_id',
	'name',
	'personal_number',
	'identity_erased_on',
	'role',
	'email',
	'account',
	'crews',
	'entered_at',
	'left_on',
	'zone',
	'today',
	'course_begun',
	'state',
	'valid_until',
	'no_fixed_end',
	'detail',
	'retraining_due',
	'record_id',
	'record_day'
] as const;

export type PersonRow = Row<(typeof PEOPLE_COLUMNS)[number]>;

/** What a person's state is told by. */
export interface Today {
	readonly zone: string;
	/** Local day at the site. */
	readonly day: string;
	/** How many days ahead an end is soon. */
	readonly soonDays: number;
}

/** @returns the row of a person, with how training stands on the day of the export. */
export function personRow({ person, record, now, begun, crews }: WalkedPerson, today: Today): PersonRow {
	const learner = person.role === 'learner';
	const { record: counts, until, due, detail } = validityOf(record);
	return {
		person_id: person.id,
		name: now.name,
		personal_number: now.number,
		identity_erased_on: record.erased ?? null,
		role: person.role,
		email: record.erased === undefined ? person.email : null,
		account: person.closed_at !== null ? 'closed' : person.joined ? 'active' : 'invited',
		crews: crews.map(({ name }) => name).join('; '),
		entered_at: person.created_at,
		left_on: record.left ?? null,
		zone: today.zone,
		today: today.day,
		course_begun: learner ? begun : null,
		state: learner ? stateOn({ until, begun }, today.day, today.soonDays) : null,
		valid_until: until === NO_END ? null : until,
		no_fixed_end: until === null ? null : until === NO_END,
		detail: detail ?? null,
		retraining_due: due ?? null,
		record_id: counts?.id ?? null,
		record_day: counts === undefined ? null : trainingDay(counts)
	};
}
