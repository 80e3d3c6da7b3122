/** Tables of the records: the chain of each organisation and what hangs on it. As migrate-records.ts makes them. */

/** Where an organisation's chain ends: locked by whoever appends. */
export interface RecordHeadTable {
	organisation_id: string;
	/** Of the last entry; 0 before the first. */
	seq: number;
	/** Of the last entry; 64 zeros before the first. */
	hash: string;
}

/** The entries of all chains. Rows are inserted, never changed. */
export interface RecordEntryTable {
	organisation_id: string;
	/** From 1, without gaps. */
	seq: number;
	/** As in the payload. */
	kind: string;
	/** As in the payload; null for entries about nobody. */
	person_id: string | null;
	/** As in the payload: ISO 8601, UTC. */
	at: string;
	/** Canonical JSON (RFC 8785) of the entry. */
	payload: string;
	/** Hash of the entry before; 64 zeros for the first. */
	prev: string;
	/** SHA-256 of the canonical JSON of { payload, prev, seq }, hexadecimal. */
	hash: string;
}

/** Signed roots over the chain as it was. Rows are inserted, never changed. */
export interface RecordCheckpointTable {
	organisation_id: string;
	/** How many entries it covers, from the first. */
	size: number;
	/** Root of the Merkle tree over their hashes (RFC 6962), hexadecimal. */
	root: string;
	/** Of the key that signed it. */
	kid: string;
	/** The whole checkpoint as JWS, compact. */
	token: string;
	/** JSON: hashes of the tree's edge, hexadecimal, the largest subtree first: the next checkpoint goes on from them. */
	edge: string;
	at: string;
}

/** The public halves of keys that signed something. Private halves are in no table. */
export interface SigningKeyTable {
	/** RFC 7638 thumbprint. */
	kid: string;
	use: 'checkpoint' | 'credential';
	alg: string;
	/** JSON: the public JWK. */
	jwk: string;
	since: string;
	/** From then on it signs nothing more; what it signed stays good. */
	retired_at: string | null;
}

/** What a commitment in the chain holds. Rows are inserted and forgotten, never changed. */
export interface IdentityTable {
	/** SHA-256 over salt, name and personal number, hexadecimal: what stands in the chain. */
	commitment: string;
	organisation_id: string;
	person_id: string;
	/** 32 random bytes, hexadecimal. */
	salt: string;
	name: string;
	personal_number: string | null;
	at: string;
}

/** Codes of certificates. Rows are inserted, never changed. */
export interface CertificateTable {
	/** 128 random bits, base64url: what the QR code leads to. */
	code: string;
	organisation_id: string;
	person_id: string;
	/** The completion or prior training. */
	record_id: string;
	/** Place in the organisation's list of revoked credentials, drawn at random. */
	status_index: number;
	made_by: string;
	at: string;
}

/** How each learner stands, made from the chain so that questions about many are quick; no record. */
export interface TrainingStateTable {
	person_id: string;
	organisation_id: string;
	/** 1 or 0: left the organisation. */
	gone: number;
	/** The name as it is sorted: folded. */
	sort_name: string;
	/** What is searched: personal number and name, folded. */
	search: string;
	/** What two ways of writing one name have in common: `nameKey`. Empty for a forgotten one. */
	name_key: string;
	/** 1 or 0: the course was begun. */
	begun: number;
	/** Last local day on which the training is valid, `9999-12-31` for no end; null where there is none. */
	until: string | null;
	/** Id of the record that counts. */
	record_id: string | null;
	/** Local day of that record. */
	record_day: string | null;
	/** Due day of an open order of retraining. */
	due: string | null;
	/** A `TrainingDetail`, or empty. */
	detail: string;
	/** 1 or 0: the name is forgotten. */
	erased: number;
}

/** What an organisation wants of its records. */
export interface RecordSettingsTable {
	organisation_id: string;
	/** Months that a completion is valid at most, beside law's; null for law's alone. */
	validity_months: number | null;
	/** How many days ahead an end is soon. */
	soon_days: number;
	/** Months after which the names of people who left are forgotten; null for never. */
	keep_months: number | null;
	changed_at: string;
}

/** What a job did: checking the chain, checkpoints, backups, forgetting. Rows are inserted, never changed. */
export interface JobReportTable {
	id: string;
	job: string;
	/** Null for jobs of the whole server. */
	organisation_id: string | null;
	began_at: string;
	ended_at: string;
	outcome: 'done' | 'failed';
	/** JSON: what it did, in counts; no names. */
	detail: string;
}
