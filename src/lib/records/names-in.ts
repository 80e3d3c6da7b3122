/** Which commitments to names the entries of a person speak of. */
import type { PersonRecord } from './person-record.ts';
import type { Entry } from './schema.ts';

/** @returns the commitments that an entry holds: of the person, of who signed, of who was present. */
export function commitmentsIn(entry: Entry): readonly string[] {
	switch (entry.kind) {
		case 'named':
			return [entry.commitment];
		case 'completed':
			return entry.supervised === null ? [] : [entry.supervised.named];
		case 'hands-on':
		case 'prior-training':
			return [entry.signature.named];
		default:
			return [];
	}
}

/** @returns the commitment to the name that a person had when an entry was made; undefined before there was one. @param seq of the entry */
export function nameAt({ entries }: Pick<PersonRecord, 'entries'>, seq: number): string | undefined {
	const last = entries.findLast((one) => one.seq <= seq && one.entry.kind === 'named')?.entry;
	return last?.kind === 'named' ? last.commitment : undefined;
}
