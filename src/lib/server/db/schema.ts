/**
 * The tables, as TypeScript sees them. The subset of types is what SQLite and PostgreSQL treat alike:
 * text for ids and for times (ISO 8601, UTC, always 24 characters), text for JSON, integer for counts.
 */

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

/** All tables by their names. */
export interface Tables {
	guest: GuestTable;
	attempt: AttemptTable;
}
