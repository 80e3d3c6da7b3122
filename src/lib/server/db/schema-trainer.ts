/** Tables of trainers: own scenarios, practice sets, what answers came to, paper, sign-offs. As migrate-trainer.ts makes them. */

/** A scenario that an organisation made or copied. Its draft changes; its versions do not. */
export interface OwnScenarioTable {
	/** `own-` and ten letters and digits: nobody guesses it, and no shipped scenario is called so. */
	id: string;
	organisation_id: string;
	made_by: string;
	/** JSON as its author left it, finished or not; null where nothing was changed since the last version. */
	draft: string | null;
	/** Counts up with each change: who changes an older one is told. */
	revision: number;
	changed_at: string;
	/** From then on no new set takes it; what was assigned keeps its version. */
	retired_at: string | null;
	created_at: string;
}

/** A published version. Rows are inserted, never changed. */
export interface OwnScenarioVersionTable {
	scenario_id: string;
	/** From 1, without gaps. */
	version: number;
	/** JSON: the whole document. */
	document: string;
	published_by: string;
	at: string;
}

/** What a trainer assigns. What it holds never changes; a changed set is a new one. */
export interface PracticeSetTable {
	id: string;
	organisation_id: string;
	made_by: string;
	name: string;
	/** JSON: see `setContentSchema`. */
	content: string;
	archived_at: string | null;
	created_at: string;
}

/** A set for a crew, or for one person: one of the two is null. */
export interface SetAssignmentTable {
	id: string;
	set_id: string;
	crew_id: string | null;
	person_id: string | null;
	/** What the seeds of all problems come from. */
	seed: string;
	/** Local day at the site. */
	due_day: string | null;
	assigned_by: string;
	at: string;
	recalled_at: string | null;
}

/** The first answer to each problem of a set: what counts. Rows are inserted, never changed. */
export interface SetAnswerTable {
	attempt_id: string;
	assignment_id: string;
	person_id: string;
	/** From 0 through all rounds. */
	place: number;
	/** 1 or 0. */
	all_right: number;
	/** How many asks were answered on the unsafe side. */
	critical: number;
	at: string;
}

/** What the answer to one ask came to: made from the stored grades, so that questions about many answers are quick. */
export interface OutcomeTable {
	/** The attempt, or the event of the course. */
	answer_id: string;
	ask: string;
	answerer_id: string;
	/** Where it was answered. */
	way: 'practice' | 'course' | 'set' | 'paper';
	assignment_id: string | null;
	/** Of a picture: its id. */
	scenario_id: string;
	cell: string;
	/** The finer skill: a quantity with its datum, or `decision`. */
	skill: string;
	/** 1 or 0. */
	wrong: number;
	/** 1 or 0: on the unsafe side. */
	critical: number;
	/** The one slip that it looked like; empty for none. */
	slip: string;
	/** Monday of the week, UTC. */
	week: string;
	at: string;
}

/** What is done once for a database, such as filling a new table from old ones. */
export interface DoneOnceTable {
	name: string;
	at: string;
}

/** Printed copies of a set. */
export interface PaperSheetTable {
	id: string;
	/** What stands on the paper, with the number of the copy behind it. */
	code: string;
	organisation_id: string;
	set_id: string;
	made_by: string;
	copies: number;
	/** 1 if all copies have the same problems, 0 if each has its own. */
	alike: number;
	seed: string;
	language: string;
	at: string;
}

/** Answers from paper, typed in by a trainer: practice. Rows are inserted, never changed. */
export interface PaperAnswerTable {
	attempt_id: string;
	sheet_id: string;
	/** From 1. */
	copy: number;
	/** Which problem of the sheet, from 0. */
	place: number;
	person_id: string;
	typed_by: string;
	at: string;
}

/** The hands-on part of one person, signed. Rows are inserted, never changed. */
export interface SignOffTable {
	id: string;
	organisation_id: string;
	person_id: string;
	signer_id: string;
	capacity: 'competent-person' | 'qualified-person';
	/** Canonical JSON (RFC 8785) of what is signed for: the checks made, place, day, and the theory passed. */
	record: string;
	/** SHA-256 of `record`, hexadecimal. */
	record_hash: string;
	/** Canonical JSON of the signature: the record's hash, who signed in which capacity, the meaning as it was shown, when. */
	signed: string;
	language: string;
	at: string;
}
