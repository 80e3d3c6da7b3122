/** Completions, sign-offs and certificates: each entry has its row, and every column of it says what the entry says. */
import { canonicalJson, ofKind, type Placed } from '#lib/records/index.ts';
import type { Database } from '../../db/open.ts';
import { certificatesByRecord, completionsById, signOffsById } from '../../db/verifying.ts';
import { sha256 } from '../chain.ts';
import { compareRow } from './columns.ts';
import { firstOf, type Found } from './result.ts';

/** @returns the first of some entries of which a row is missing, or differs. */
export async function checkRows(db: Database, organisation: string, entries: readonly Placed[]): Promise<Found> {
	return firstOf([await checkCompletions(db, entries), await checkSignOffs(db, organisation, entries), await checkCertificates(db, organisation, entries)]);
}

async function checkCompletions(db: Database, entries: readonly Placed[]): Promise<Found> {
	const completed = ofKind(entries, 'completed');
	const rows = await completionsById(db, completed.map(({ entry }) => entry.id));
	return firstOf(
		completed.map(({ seq, entry }) =>
			compareRow({ table: 'completion', row: entry.id, seq }, rows.get(entry.id), {
				id: entry.id,
				organisation_id: entry.employer.id,
				person_id: entry.person,
				course: entry.course.id,
				version: entry.course.version,
				check_id: entry.check,
				supervised: entry.supervised === null ? 0 : 1,
				language: entry.language,
				day: entry.day,
				at: entry.endedAt
			})
		)
	);
}

async function checkSignOffs(db: Database, organisation: string, entries: readonly Placed[]): Promise<Found> {
	const signed = ofKind(entries, 'hands-on');
	const rows = await signOffsById(db, signed.map(({ entry }) => entry.record.id));
	return firstOf(
		signed.map(({ seq, entry: { person, record, signature } }) => {
			const { signer, capacity, language, at } = signature;
			const text = canonicalJson(record);
			return compareRow({ table: 'sign_off', row: record.id, seq }, rows.get(record.id), {
				id: record.id,
				organisation_id: organisation,
				person_id: person,
				signer_id: signer,
				capacity,
				record: text,
				record_hash: sha256(text),
				signed: canonicalJson(signature),
				language,
				at
			});
		})
	);
}

/** @returns SHA-256 of a text; null for what is none: SQLite keeps bytes and nothing in such a column too. */
function hashOfText(code: unknown): string | null {
	return typeof code === 'string' ? sha256(code) : null;
}

async function checkCertificates(db: Database, organisation: string, entries: readonly Placed[]): Promise<Found> {
	const made = ofKind(entries, 'certificate-made');
	const rows = await certificatesByRecord(db, organisation, made.map(({ entry }) => entry.of));
	return firstOf(
		made.map(({ seq, entry: { of, person, by, at, statusIndex, code } }) => {
			const row = rows.get(of);
			return compareRow({ table: 'certificate', row: of, seq }, row === undefined ? undefined : { ...row, code: hashOfText(row.code) }, {
				// The chain holds the hash of the code: who reads it cannot ask for the certificate.
				code,
				organisation_id: organisation,
				person_id: person,
				record_id: of,
				status_index: statusIndex,
				made_by: by,
				at
			});
		})
	);
}
