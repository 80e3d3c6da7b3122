import type { EmployerMessages } from '../en/employer.ts';
import { accounts } from './records/accounts.ts';
import { deeds } from './records/deeds.ts';
import { exporting } from './records/exporting.ts';
import { forgetting } from './records/forgetting.ts';
import { keeping } from './records/keeping.ts';
import { listCheck } from './records/list-check.ts';
import { onePerson } from './records/one-person.ts';
import { priorTraining } from './records/prior-training.ts';
import { recordLaw } from './records/record-law.ts';
import { recordSettings } from './records/record-settings.ts';
import { retraining } from './records/retraining.ts';
import { rosterAll } from './records/roster-all.ts';
import { training } from './records/training.ts';

/** What pages of employers need beside the rest, in Spanish. */
export const employer: EmployerMessages = Object.freeze({
	accounts,
	deeds,
	exporting,
	forgetting,
	keeping,
	listCheck,
	onePerson,
	priorTraining,
	recordLaw,
	recordSettings,
	retraining,
	rosterAll,
	training
});
