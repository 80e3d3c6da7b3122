import type { RecordMessages } from '../en/record.ts';
import { certificate } from './records/certificate.ts';
import { faults } from './records/faults.ts';
import { ownRecord } from './records/own-record.ts';
import { recordLaw } from './records/record-law.ts';
import { verifying } from './records/verifying.ts';

/** What certificates and the pages that show one record need, in Spanish. */
export const record: RecordMessages = Object.freeze({
	certificate,
	faults,
	ownRecord,
	recordLaw,
	verifying
});
