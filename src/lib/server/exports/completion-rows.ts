/** completions.csv: every completion and every prior training, with all that stands in their records. */
import { isWhole, type EntryOf, type Placed, type SignOffRecord, type TrainingRecord } from '#lib/records/index.ts';
import type { Row } from './csv.ts';
import type { WalkedPerson } from './people.ts';
import { isWithin, type DayRange } from './range.ts';

/** In this order, for good: new ones go to the end. */
export const COMPLETION_COLUMNS = [
	'record_id',
	'basis',
	'person_id',
	'name',
	'personal_number',
	'name_now',
	'identity_erased_on',
	'employer_id',
	'employer',
	'course',
	'course_version',
	'scope',
	'not_covered',
	'lessons',
	'rules',
	'practice',
	'language',
	'language_state',
	'started_at',
	'ended_at',
	'zone',
	'day',
	'result',
	'tries',
	'asked',
	'right',
	'unsafe',
	'pass_rule',
	'pass_rule_version',
	'pass_rule_provisional',
	'pass_rule_rates',
	'supervised',
	'trainer_id',
	'trainer',
	'identified_by',
	'supervised_place',
	'prior_training',
	'prior_trained_day',
	'prior_document_sha256',
	'sign_off_id',
	'sign_off_day',
	'sign_off_place',
	'sign_off_scope',
	'sign_off_checks',
	'signer_id',
	'signer',
	'signer_capacity',
	'signed_at',
	'signed_meaning',
	'signed_language',
	'signed_record_sha256',
	'whole',
	'validity_months',
	'validity_by',
	'valid_until',
	'acknowledged_at',
	'certificate_made_at',
	'revoked',
	'revoked_reason',
	'revoked_at',
	'revoked_by_id',
	'revoked_by',
	'check_id',
	'evidence_sha256',
	'entered_at',
	'entered_by_id',
	'chain_seq',
	'chain_hash',
	'sign_off_chain_seq',
	'sign_off_chain_hash',
	'retraining_reason',
	'retraining_ordered_at',
	'retraining_ordered_by_id',
	'prior_approved_provider',
	'prior_approved_programme',
	'employer_acknowledged_at',
	'employer_acknowledged_by_id',
	'employer_acknowledged_by'
] as const;

export type CompletionRow = Row<(typeof COMPLETION_COLUMNS)[number]>;

/** Lists within a cell: none of their items holds a semicolon, but for texts of the course. */
const listed = (items: readonly string[]): string => items.join('; ');

type Signed = Pick<
	CompletionRow,
	| 'sign_off_id'
	| 'sign_off_day'
	| 'sign_off_place'
	| 'sign_off_scope'
	| 'sign_off_checks'
	| 'sign_off_chain_seq'
	| 'sign_off_chain_hash'
	| 'signer_id'
	| 'signer'
	| 'signer_capacity'
	| 'signed_at'
	| 'signed_meaning'
	| 'signed_language'
	| 'signed_record_sha256'
>;

/** The signature under a record; nothing where there is none. */
function signedOf(signature: EntryOf<'hands-on' | 'prior-training'>['signature'] | undefined, nameOf: WalkedPerson['nameOf']) {
	return {
		signer_id: signature?.signer ?? null,
		signer: signature === undefined ? null : nameOf(signature.named),
		signer_capacity: signature?.capacity ?? null,
		signed_at: signature?.at ?? null,
		signed_meaning: signature?.meaning ?? null,
		signed_language: signature?.language ?? null,
		signed_record_sha256: signature?.record ?? null
	};
}

function signOffCells(signOff: SignOffRecord | undefined, nameOf: WalkedPerson['nameOf']): Signed {
	const record = signOff?.entry.record;
	return {
		sign_off_id: signOff?.id ?? null,
		sign_off_day: record?.day ?? null,
		sign_off_place: record?.place ?? null,
		sign_off_scope: record?.scope ?? null,
		sign_off_checks: record === undefined ? null : listed(record.checks),
		sign_off_chain_seq: signOff?.seq ?? null,
		sign_off_chain_hash: signOff?.hash ?? null,
		...signedOf(signOff?.entry.signature, nameOf)
	};
}

/** What is alike for both kinds of training. */
function commonCells({ person, record, now, nameAt, staffName }: WalkedPerson, one: TrainingRecord) {
	const { name, number } = nameAt(one.seq);
	const revoked: Placed<EntryOf<'revoked'>> | undefined = one.revoked;
	const confirmed = one.employerAcknowledged?.entry;
	return {
		record_id: one.id,
		person_id: person.id,
		name,
		personal_number: number,
		name_now: now.name,
		identity_erased_on: record.erased ?? null,
		whole: isWhole(one),
		valid_until: one.validUntil,
		acknowledged_at: one.acknowledged?.entry.at ?? null,
		certificate_made_at: one.certificate?.entry.at ?? null,
		revoked: revoked !== undefined,
		revoked_reason: revoked?.entry.reason ?? null,
		revoked_at: revoked?.entry.at ?? null,
		revoked_by_id: revoked?.entry.by ?? null,
		revoked_by: revoked === undefined ? null : staffName(revoked.entry.by),
		entered_at: one.entry.at,
		entered_by_id: one.entry.by,
		chain_seq: one.seq,
		chain_hash: one.hash,
		retraining_reason: one.ordered?.entry.reason ?? null,
		retraining_ordered_at: one.ordered?.entry.at ?? null,
		retraining_ordered_by_id: one.ordered?.entry.by ?? null,
		employer_acknowledged_at: confirmed?.at ?? null,
		employer_acknowledged_by_id: confirmed?.by ?? null,
		employer_acknowledged_by: confirmed === undefined ? null : staffName(confirmed.by)
	};
}

function ownRow(of: WalkedPerson, one: TrainingRecord, entry: EntryOf<'completed'>): CompletionRow {
	const { employer, course, passRule, supervised, validity } = entry;
	return {
		...commonCells(of, one),
		...signOffCells(one.signOff, of.nameOf),
		basis: entry.basis,
		employer_id: employer.id,
		employer: employer.name,
		course: course.id,
		course_version: course.version,
		scope: course.scope,
		not_covered: listed(course.notCovered),
		lessons: listed(course.lessons),
		rules: entry.rules,
		practice: entry.practice,
		language: entry.language,
		language_state: entry.languageState,
		started_at: entry.startedAt,
		ended_at: entry.endedAt,
		zone: entry.zone,
		day: entry.day,
		result: 'passed',
		tries: entry.tries,
		asked: entry.asked,
		right: entry.right,
		unsafe: entry.unsafe,
		pass_rule: passRule.id,
		pass_rule_version: passRule.version,
		pass_rule_provisional: passRule.provisional,
		pass_rule_rates: JSON.stringify(passRule.rates),
		supervised: supervised !== null,
		trainer_id: supervised?.trainer ?? null,
		trainer: supervised === null ? null : of.nameOf(supervised.named),
		identified_by: supervised?.identified ?? null,
		supervised_place: supervised?.place ?? null,
		prior_training: null,
		prior_approved_provider: null,
		prior_approved_programme: null,
		prior_trained_day: null,
		prior_document_sha256: null,
		validity_months: validity.months,
		validity_by: validity.by,
		check_id: entry.check,
		evidence_sha256: entry.digest
	};
}

function priorRow(of: WalkedPerson, one: TrainingRecord, { record, signature }: EntryOf<'prior-training'>, zone: string, employer: string): CompletionRow {
	return {
		...commonCells(of, one),
		...signOffCells(undefined, of.nameOf),
		...signedOf(signature, of.nameOf),
		basis: 'prior-training',
		employer_id: record.organisation,
		employer,
		course: null,
		course_version: null,
		scope: record.scope,
		not_covered: null,
		lessons: null,
		rules: null,
		practice: null,
		language: null,
		language_state: null,
		started_at: null,
		ended_at: null,
		zone,
		day: record.judgedDay,
		result: 'judged-adequate',
		tries: null,
		asked: null,
		right: null,
		unsafe: null,
		pass_rule: null,
		pass_rule_version: null,
		pass_rule_provisional: null,
		pass_rule_rates: null,
		supervised: null,
		trainer_id: null,
		trainer: null,
		identified_by: null,
		supervised_place: null,
		prior_training: record.training,
		prior_approved_provider: record.approved?.provider ?? null,
		prior_approved_programme: record.approved?.programme ?? null,
		prior_trained_day: record.trainedDay,
		prior_document_sha256: record.document,
		validity_months: null,
		validity_by: record.validUntil === null ? 'nothing-fixed' : 'employer',
		check_id: null,
		evidence_sha256: null
	};
}

/** @returns the rows of one person, in the order of the chain. @param range local days of the completion, or of the judgement */
export function completionRows(of: WalkedPerson, range: DayRange, site: { readonly zone: string; readonly name: string }): readonly CompletionRow[] {
	return of.record.trainings.flatMap((one) => {
		const { entry } = one;
		const row = entry.kind === 'completed' ? ownRow(of, one, entry) : priorRow(of, one, entry, site.zone, site.name);
		return isWithin(String(row.day), range) ? [row] : [];
	});
}
