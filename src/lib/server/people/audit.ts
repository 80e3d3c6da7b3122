import { randomUUID } from 'node:crypto';
import { insertAudit } from '../db/audit.ts';
import type { Database } from '../db/open.ts';

/** What is noted of people. */
export type AuditKind =
	| 'organisation-set-up'
	| 'settings-changed'
	| 'staff-invited'
	| 'staff-enrolled'
	| 'staff-reset'
	| 'signed-in'
	| 'signed-out'
	| 'sign-in-refused'
	| 'person-closed'
	| 'person-unlocked'
	| 'learner-added'
	| 'learner-joined'
	| 'learner-moved'
	| 'pin-set'
	| 'pin-reset'
	| 'crew-made'
	| 'crew-changed'
	| 'crew-archived'
	| 'check-opened'
	| 'check-unlocked'
	| 'hands-on-signed'
	| 'signing-refused'
	| 'pass-rule-chosen'
	| 'pass-rule-made'
	| 'scenario-made'
	| 'scenario-published'
	| 'scenario-retired'
	| 'scenario-restored'
	| 'scenario-discarded'
	| 'paper-printed'
	| 'paper-typed'
	| 'judges-review-entered'
	| 'set-made'
	| 'set-assigned'
	| 'set-recalled'
	| 'set-archived'
	| 'record-settings-changed'
	| 'retraining-ordered'
	| 'retraining-withdrawn'
	| 'record-revoked'
	| 'record-reinstated'
	| 'prior-training-entered'
	| 'training-acknowledged'
	| 'certificate-handed-out'
	| 'credential-handed-out'
	| 'records-exported'
	| 'person-data-exported'
	| 'person-left'
	| 'person-returned'
	| 'name-changed'
	| 'name-forgotten'
	| 'forgetting-refused'
	| 'chain-checked'
	| 'checkpoint-handed-out';

/** Something that happened. */
export interface AuditEvent {
	readonly kind: AuditKind;
	readonly organisation: string | null;
	/** Who did it; null for somebody unknown, or the command line. */
	readonly actor: string | null;
	/** To whom, or to what. */
	readonly subject?: string | null;
	/** No secrets, no names. */
	readonly detail?: Readonly<Record<string, string | number | boolean>>;
}

/** Notes that something happened. What is noted is never changed. */
export async function note(db: Database, event: AuditEvent, now: Date): Promise<void> {
	await insertAudit(db, {
		id: randomUUID(),
		organisation_id: event.organisation,
		actor_id: event.actor,
		kind: event.kind,
		subject_id: event.subject ?? null,
		detail: JSON.stringify(event.detail ?? {}),
		at: now.toISOString()
	});
}
