/**
 * The tables, as TypeScript sees them. The subset of types is what SQLite and PostgreSQL treat alike:
 * text for ids and for times (ISO 8601, UTC, always 24 characters), text for JSON, integer for counts.
 */
import type {
	DoneOnceTable,
	OutcomeTable,
	OwnScenarioTable,
	OwnScenarioVersionTable,
	PaperAnswerTable,
	PaperSheetTable,
	PracticeSetTable,
	SetAnswerTable,
	SetAssignmentTable,
	SignOffTable
} from './schema-trainer.ts';

import type {
	CertificateTable,
	IdentityTable,
	JobReportTable,
	RecordCheckpointTable,
	RecordEntryTable,
	RecordHeadTable,
	RecordSettingsTable,
	SigningKeyTable,
	TrainingStateTable
} from './schema-records.ts';

export type * from './schema-records.ts';
export type * from './schema-trainer.ts';

/** A visitor without an account. */
export interface GuestTable {
	/** UUID. */
	id: string;
	/** SHA-256 of the token in the visitor's cookie, hexadecimal; the token itself is kept nowhere. */
	token_hash: string;
	created_at: string;
}

/** An answered site problem. Rows are inserted, never changed: triggers see to it. */
export interface AttemptTable {
	/** UUID made by the client, so that an answer sent twice is stored once. */
	id: string;
	guest_id: string;
	scenario_id: string;
	scenario_version: number;
	draw_version: number;
	slip_set_version: number;
	engine_version: string;
	/** The seed as text, so that no number format can change it. */
	seed: string;
	accepted_try: number;
	/** JSON: the drawn plan with all its values. */
	plan: string;
	/** JSON: what was typed, for each ask. */
	answers: string;
	/** JSON: the server's own grading. */
	result: string;
	language: string;
	units: string;
	created_at: string;
}

/** A company, a site or a school that trains its people. Everything below is scoped by it. */
export interface OrganisationTable {
	id: string;
	name: string;
	/** Id of the rule table that its course speaks of. */
	rules: string;
	/** How lengths are written where no problem says otherwise. */
	units: string;
	/** The language of pages for people who have chosen none. */
	language: string;
	/** IANA zone of its sites: dates of training are local dates. */
	zone: string;
	/** Id of the pass rule of its final check. */
	pass_rule: string;
	created_at: string;
}

/** A learner, trainer or employer of one organisation. */
export interface PersonTable {
	id: string;
	organisation_id: string;
	/** The guest row under which this person's answers are kept; no cookie opens it. */
	answerer_id: string;
	role: 'learner' | 'trainer' | 'employer';
	name: string;
	/** What the organisation knows a learner by: staff number, badge. Upper case, no spaces. */
	personal_number: string | null;
	/** Of staff: lower case. */
	email: string | null;
	/** Hash of PIN or password with its parameters; null until the person has set one. */
	secret: string | null;
	language: string | null;
	closed_at: string | null;
	created_at: string;
}

export interface CrewTable {
	id: string;
	organisation_id: string;
	name: string;
	/** What learners join by; upper case. */
	join_code: string;
	archived_at: string | null;
	created_at: string;
}

/** Who belongs to a crew: its learners in the one table, its trainers in the other. */
export interface CrewPersonTable {
	crew_id: string;
	person_id: string;
	since: string;
}

export interface SessionTable {
	/** SHA-256 of the token in the cookie, hexadecimal. */
	token_hash: string;
	person_id: string;
	created_at: string;
	seen_at: string;
	expires_at: string;
}

/** A code that is used once: to set an organisation up, or for a member of staff to choose a password. */
export interface EnrolmentTable {
	code_hash: string;
	kind: 'set-up' | 'staff';
	person_id: string | null;
	created_at: string;
	expires_at: string;
	used_at: string | null;
}

/** Failures to sign in, by account, crew code or address. */
export interface ThrottleTable {
	key: string;
	failures: number;
	last_at: string;
	wait_until: string | null;
}

/** Who did what to whom. Rows are inserted, never changed. */
export interface AuditTable {
	id: string;
	organisation_id: string | null;
	actor_id: string | null;
	kind: string;
	subject_id: string | null;
	/** JSON; no secrets, no names. */
	detail: string;
	at: string;
}

/** A guest who joined: what was practised before. */
export interface JoinedGuestTable {
	guest_id: string;
	person_id: string;
	at: string;
}

/** An answer of a guest who joined, graded again then: practice from before, which counts for nothing. */
export interface PractisedTable {
	attempt_id: string;
	person_id: string;
	/** 1 or 0: whether every ask was right. */
	all_right: number;
	/** What grading again gave: the stored grades, others, or none, because the problem is not drawn any more. */
	regraded: 'alike' | 'differs' | 'not-drawn';
	at: string;
}

/** When a person began a version of the course, and the seed that all that person's draws come from. */
export interface CourseStartTable {
	person_id: string;
	course: string;
	version: number;
	seed: string;
	at: string;
}

/** What a person did in a lesson, in order. The lesson's machine is stepped by replaying it. */
export interface CourseEventTable {
	/** UUID made by the client, so that an event sent twice is stored once. */
	id: string;
	person_id: string;
	/** From 1, without gaps, for each person. */
	seq: number;
	lesson: string;
	kind: string;
	/** JSON: what the client sent. */
	sent: string;
	/** JSON: what the server made of it: the machine's event. */
	payload: string;
	/** Local date at the site. */
	day: string;
	at: string;
}

/** A try at a lesson check or at the final check. */
export interface CheckTryTable {
	id: string;
	person_id: string;
	/** Id of the lesson; `final` for the final check. */
	lesson: string;
	/** From 1. */
	nth: number;
	/** JSON: the pass rule as it was. */
	rule: string;
	/** Known to the server only. */
	seed: string;
	language: string;
	/** JSON: who was present, how the learner was identified, where; null when nobody was. */
	supervision: string | null;
	day: string;
	at: string;
}

export interface CheckEventTable {
	id: string;
	check_id: string;
	seq: number;
	kind: string;
	/** JSON: what the client sent. */
	sent: string;
	/** JSON: what the server made of it. */
	payload: string;
	at: string;
}

/** A trainer who is present opens the final check for one person. */
export interface CheckOpeningTable {
	id: string;
	person_id: string;
	trainer_id: string;
	place: string;
	identified: string;
	at: string;
	expires_at: string;
	/** The try that used it. */
	check_id: string | null;
}

/** A trainer lets a person try again after the tries were used up. */
export interface CheckUnlockTable {
	id: string;
	person_id: string;
	trainer_id: string;
	/** How many tries had been made. */
	after: number;
	at: string;
}

/** A passed final check of a course version. */
export interface CompletionTable {
	id: string;
	organisation_id: string;
	person_id: string;
	course: string;
	version: number;
	check_id: string;
	/** 1 or 0. */
	supervised: number;
	language: string;
	day: string;
	at: string;
}

/** A pass rule of the final check that an organisation made. Rows are inserted, never changed. */
export interface OwnPassRuleTable {
	organisation_id: string;
	id: string;
	/** From 1, without gaps, for each id of an organisation; the newest is the one in force. */
	version: number;
	/** JSON: the whole rule, its pass mark provisional. */
	rule: string;
	made_by: string;
	at: string;
}

/** Judges of an organisation set the pass mark of a version of a rule, shipped or own. Rows are inserted, never changed. */
export interface JudgesReviewTable {
	id: string;
	organisation_id: string;
	rule_id: string;
	rule_version: number;
	/** Day of the review. */
	date: string;
	/** JSON: the names of the judges. */
	judges: string;
	/** Where the review is written down. */
	document: string;
	entered_by: string;
	at: string;
}

/** All tables by their names. */
export interface Tables {
	guest: GuestTable;
	attempt: AttemptTable;
	organisation: OrganisationTable;
	person: PersonTable;
	crew: CrewTable;
	crew_learner: CrewPersonTable;
	crew_trainer: CrewPersonTable;
	session: SessionTable;
	enrolment: EnrolmentTable;
	throttle: ThrottleTable;
	audit: AuditTable;
	joined_guest: JoinedGuestTable;
	practised: PractisedTable;
	course_start: CourseStartTable;
	course_event: CourseEventTable;
	check_try: CheckTryTable;
	check_event: CheckEventTable;
	check_opening: CheckOpeningTable;
	check_unlock: CheckUnlockTable;
	completion: CompletionTable;
	own_pass_rule: OwnPassRuleTable;
	judges_review: JudgesReviewTable;
	own_scenario: OwnScenarioTable;
	own_scenario_version: OwnScenarioVersionTable;
	practice_set: PracticeSetTable;
	set_assignment: SetAssignmentTable;
	set_answer: SetAnswerTable;
	outcome: OutcomeTable;
	done_once: DoneOnceTable;
	paper_sheet: PaperSheetTable;
	paper_answer: PaperAnswerTable;
	sign_off: SignOffTable;
	record_head: RecordHeadTable;
	record_entry: RecordEntryTable;
	record_checkpoint: RecordCheckpointTable;
	signing_key: SigningKeyTable;
	identity: IdentityTable;
	certificate: CertificateTable;
	training_state: TrainingStateTable;
	record_settings: RecordSettingsTable;
	job_report: JobReportTable;
}
