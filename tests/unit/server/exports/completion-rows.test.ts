import { expect, it } from 'vitest';
import { personRecord } from '#lib/records/index.ts';
import { completionRows } from '#lib/server/exports/completion-rows.ts';
import { ALL_DAYS } from '#lib/server/exports/range.ts';
import { completedEntry, orderEntry } from '../../../support/record-entries.ts';

const PERSON = '0f1f64a9-6f3c-4c62-9c2c-54b5a7c0a0b1';

/** @source issue "The employer", the completion record: reasons for retraining as codes */
it('a row says which order of retraining it answers; a first training, and one after an order that was withdrawn, answer none', () => {
	const [kept, withdrawn] = [orderEntry(PERSON, '2026-05-01', '2026-06-01', 'incident'), orderEntry(PERSON, '2026-04-01', '2026-06-01')];
	const entries = [
		completedEntry(PERSON, '2026-03-01'),
		withdrawn,
		{ kind: 'retraining-withdrawn' as const, at: '2026-04-02T08:00:00.000Z', by: withdrawn.by, person: PERSON, of: withdrawn.id },
		completedEntry(PERSON, '2026-04-03'),
		kept,
		completedEntry(PERSON, '2026-05-03')
	];
	const name = { name: 'Wen Abara', number: 'D-203' };
	const rows = completionRows(
		{
			person: { id: PERSON, organisation_id: '', role: 'learner', name: name.name, personal_number: name.number, email: null, language: null, closed_at: null, created_at: '', joined: true },
			record: personRecord(entries.map((entry, i) => ({ seq: i + 1, hash: String(i), entry }))),
			now: name,
			nameAt: () => name,
			nameOf: () => '',
			staffName: () => '',
			begun: true,
			crews: []
		},
		ALL_DAYS,
		{ zone: 'UTC', name: 'Norrfjord Inspection' }
	);
	expect(rows.map((row) => [row.day, row.retraining_reason, row.retraining_ordered_at, row.retraining_ordered_by_id])).toEqual([
		['2026-03-01', null, null, null],
		['2026-04-03', null, null, null],
		['2026-05-03', 'incident', kept.at, kept.by]
	]);
});
