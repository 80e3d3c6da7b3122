export { closeDatabase, database } from './application.ts';
export { compressPage } from './compress.ts';
export { chooseLanguage } from './language.ts';
export { currentGuest, giveGuestToken, guestWhoAnswers } from './guest.ts';
export { openDatabase, type Database } from './db/open.ts';
export {
	findAttempt,
	hasStoredSince,
	storeAttempt,
	type Attempt,
	type NewAttempt,
	type StoreOutcome
} from './db/attempts.ts';
export { problemsOf, readJson, type InputProblem, type InputResult } from './input.ts';
