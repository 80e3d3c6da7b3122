/** retraining.csv: every order of retraining, and what became of it. */
import type { Row } from './csv.ts';
import type { WalkedPerson } from './people.ts';
import type { Today } from './people-rows.ts';
import { isWithin, type DayRange } from './range.ts';

/** In this order, for good: new ones go to the end. */
export const RETRAINING_COLUMNS = [
	'order_id',
	'person_id',
	'name',
	'personal_number',
	'identity_erased_on',
	'reason',
	'ordered_on',
	'due',
	'state',
	'today',
	'zone',
	'ordered_at',
	'ordered_by_id',
	'ordered_by',
	'withdrawn_at',
	'chain_seq',
	'chain_hash'
] as const;

export type RetrainingRow = Row<(typeof RETRAINING_COLUMNS)[number]>;

/** @returns the rows of one person, in the order of the chain. @param range local days of the order */
export function retrainingRows({ person, record, now, staffName }: WalkedPerson, range: DayRange, today: Today): readonly RetrainingRow[] {
	return record.orders
		.filter(({ entry }) => isWithin(entry.day, range))
		.map(({ entry, seq, withdrawn, done }): RetrainingRow => {
			const taken = record.entries.find((one) => one.entry.kind === 'retraining-withdrawn' && one.entry.of === entry.id);
			return {
				order_id: entry.id,
				person_id: person.id,
				name: now.name,
				personal_number: now.number,
				identity_erased_on: record.erased ?? null,
				reason: entry.reason,
				ordered_on: entry.day,
				due: entry.due,
				state: withdrawn ? 'withdrawn' : done ? 'done' : entry.due < today.day ? 'overdue' : 'open',
				today: today.day,
				zone: today.zone,
				ordered_at: entry.at,
				ordered_by_id: entry.by,
				ordered_by: staffName(entry.by),
				withdrawn_at: taken?.entry.at ?? null,
				chain_seq: seq,
				chain_hash: record.entries.find((one) => one.seq === seq)?.hash ?? null
			};
		});
}
