import type { Attempt } from '../db/attempts.ts';
import type { Database } from '../db/open.ts';
import { claimGuest, isAnswerer, keepRegraded, notYetRegraded, practisedAnswers, type PractisedAnswer } from '../db/practised.ts';
import type { PractisedTable } from '../db/schema.ts';
import { markAnswers, type ReadGrade, type Scenarios } from '../attempts/mark.ts';
import { shippedVersions } from '../attempts/shipped.ts';

/** How many answers are graded again before others get their turn. @reason a few milliseconds each. */
const AT_ONCE = 20;

/** What came of a guest's joining. */
export type JoinedGuest =
	/** The guest is this person; now or since before. */
	| { readonly kind: 'joined' }
	/** The guest belongs to somebody else, and is left alone. */
	| { readonly kind: 'not-theirs' };

/**
 * Makes what a guest practised the practice of a person: the guest is entered once, and every answer from before
 * is drawn again and graded again by the code that graded it first. The answers themselves stay as they are. What
 * was practised so is shown, and counts for nothing.
 * @param guest id of the guest of this browser
 */
export async function joinGuest(
	db: Database,
	guest: string,
	person: string,
	now: Date,
	scenarios: Scenarios = shippedVersions
): Promise<JoinedGuest> {
	if (!(await claimed(db, guest, person, now))) return { kind: 'not-theirs' };
	await gradeAgain(db, person, now, scenarios);
	return { kind: 'joined' };
}

/** Enters that a guest is this person, and nothing else. @returns false if the guest is somebody else */
export async function claimed(db: Database, guest: string, person: string, now: Date): Promise<boolean> {
	if (await isAnswerer(db, guest)) return false;
	return (await claimGuest(db, guest, person, now.toISOString())) === person;
}

/**
 * @returns what a person had practised as a guest, before joining, oldest first. Practice: it never counts as ready.
 * Where joining was stopped before all was graded again, that is done now.
 */
export async function practisedBefore(
	db: Database,
	person: string,
	now: Date = new Date(),
	scenarios: Scenarios = shippedVersions
): Promise<readonly PractisedAnswer[]> {
	await gradeAgain(db, person, now, scenarios);
	return practisedAnswers(db, person);
}

/**
 * Grades again what was not graded again yet. Whatever stops it, what is kept is whole, and the next call goes on.
 */
async function gradeAgain(db: Database, person: string, now: Date, scenarios: Scenarios): Promise<void> {
	for (;;) {
		const attempts = await notYetRegraded(db, person, AT_ONCE);
		if (attempts.length === 0) return;
		await keepRegraded(
			db,
			attempts.map((attempt) => ({ ...regraded(attempt, scenarios), person_id: person, at: now.toISOString() }))
		);
		// Others are served in between.
		await new Promise((turn) => setImmediate(turn));
	}
}

/** Draws and grades a stored answer again. */
function regraded(attempt: Attempt, scenarios: Scenarios): Pick<PractisedTable, 'attempt_id' | 'all_right' | 'regraded'> {
	const marked = markAnswers(sentAgain(attempt), scenarios);
	if (marked.kind !== 'read') {
		return { attempt_id: attempt.id, all_right: allRight(JSON.parse(attempt.result)), regraded: 'not-drawn' };
	}
	const { grades, drawn } = marked.value;
	const alike = JSON.stringify(grades) === attempt.result && JSON.stringify(drawn) === attempt.plan;
	return { attempt_id: attempt.id, all_right: allRight(grades), regraded: alike ? 'alike' : 'differs' };
}

/** A stored answer as it was sent: its answers name the asks, for a part of a scenario may have been asked alone. */
function sentAgain(attempt: Attempt): object {
	const answers: Readonly<Record<string, unknown>> = JSON.parse(attempt.answers);
	return {
		id: attempt.id,
		scenario: attempt.scenario_id,
		version: attempt.scenario_version,
		drawVersion: attempt.draw_version,
		slipSetVersion: attempt.slip_set_version,
		seed: Number(attempt.seed),
		acceptedTry: attempt.accepted_try,
		language: attempt.language,
		asks: Object.keys(answers),
		answers
	};
}

/** @returns 1 if every ask was right, a decision together with its numbers; else 0. */
function allRight(grades: Readonly<Record<string, ReadGrade>>): number {
	const all = Object.values(grades);
	const right = (grade: ReadGrade) =>
		(grade.mark.kind === 'right' || grade.mark.kind === 'right-by-rounding') && (grade.kind === 'number' || grade.counts);
	return Number(all.length > 0 && all.every(right));
}
