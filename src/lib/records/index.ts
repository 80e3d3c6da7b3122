export { canonicalJson, isCanonical } from './canonical.ts';
export { CREDENTIAL_CONTEXTS, claimsOf, credentialOf, numericDate, type CredentialContent } from './credential.ts';
export type { Credential, CredentialClaims, Profile } from './credential-schema.ts';
export { LEAST_DAY, NO_END, addDays, addMonths, daysBetween } from './days.ts';
export { CAPACITIES, HANDS_ON_CHECKS, type Capacity, type HandsOnCheck } from './hands-on.ts';
export { commitmentsIn, nameAt } from './names-in.ts';
export { RETRAINING_REASONS, REVOCATION_REASONS, endsAtOnce, type RetrainingReason, type RevocationReason } from './reasons.ts';
export {
	TRAINING_STATES,
	isWhole,
	ofKind,
	personRecord,
	stateOn,
	trainingDay,
	validityOf,
	type PersonRecord,
	type Placed,
	type RetrainingOrder,
	type SignOffRecord,
	type TrainingDetail,
	type TrainingRecord,
	type TrainingState,
	type Validity
} from './person-record.ts';
export type { Entry, EntryKind, EntryOf, HandsOnRecord, PriorTraining, Signature, TheoryPassed } from './schema.ts';
export { isWithdrawn, lastDayOf, standingOf, type Standing } from './standing.ts';
