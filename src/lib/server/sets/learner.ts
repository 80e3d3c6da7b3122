/** Practice sets as a learner has them. */
import { replaySet, type RoundResult, type SetAnswer, type SetContent, type SetPlace, type SetRule, type SetState } from '#lib/flow/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { dayIn } from '../course/day.ts';
import type { Database } from '../db/open.ts';
import { findOwnSet, openSetsOf, setAnswersOf, type OwnAssignmentRow, type SetAnswerRow } from '../db/own-sets.ts';
import { findOrganisation } from '../db/people.ts';
import type { Person } from '../people/who.ts';
import { knownPlaces } from './places.ts';
import { setScenarios } from './scenarios.ts';
import { standingOf, type Due, type PersonSetState } from './states.ts';

/** A set on a learner's start page. */
export interface OwnSet extends Pick<PersonSetState, 'state' | 'late' | 'answered' | 'of' | 'right' | 'round'> {
	/** Id of the assignment. */
	readonly assignment: string;
	readonly name: string;
	/** YYYY-MM-DD at the site. */
	readonly dueDay: string | null;
}

/** A set as it is worked on: everything that a device needs to go on without signal. */
export interface SetDesk {
	/** Id of the assignment. */
	readonly assignment: string;
	readonly name: string;
	/** YYYY-MM-DD at the site. */
	readonly dueDay: string | null;
	readonly late: boolean;
	/** The language of the problems; null for the learner's own. */
	readonly language: SetContent['language'];
	readonly count: number;
	readonly rule: SetRule;
	readonly state: SetState;
	/** The round at hand; the passed one, once a round is passed. */
	readonly round: number;
	/** What counts so far, by place: `replaySet` makes the same state of it. */
	readonly answers: readonly SetAnswer[];
	/** Rounds that are over. */
	readonly over: readonly RoundResult[];
	/** The problems of the round at hand; none once a round is passed. */
	readonly places: readonly SetPlace[];
	/** The documents that they are drawn from. */
	readonly scenarios: readonly Scenario[];
}

/** What was read by the schema before it was stored, and never changes. */
export function contentOf(row: Pick<OwnAssignmentRow, 'content'>): SetContent {
	return JSON.parse(row.content) as SetContent;
}

/** @returns answers that count as the rounds that they make. */
function roundsIn(answers: readonly SetAnswerRow[], count: number) {
	return [...Map.groupBy(answers, (one) => Math.floor(one.place / count))].map(([round, of]) => ({
		round,
		answered: of.length,
		right: of.filter((one) => one.right).length,
		critical: of.reduce((sum, one) => sum + one.critical, 0),
		lastAt: of.reduce((last, one) => (one.at > last ? one.at : last), '')
	}));
}

async function dayAt(db: Database, learner: Person, now: Date): Promise<Pick<Due, 'zone' | 'today'>> {
	const organisation = await findOrganisation(db, learner.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	return { zone: organisation.zone, today: dayIn(organisation.zone, now) };
}

/** Sorts behind every day. */
const NO_DAY = 'none';
/** Of one day, what was begun comes first. */
const STATES = ['under-way', 'not-started', 'done'] as const;

function compare(one: string, other: string): number {
	return one < other ? -1 : Number(one > other);
}

/** @returns the sets that a learner has: those to be worked by their due days, then those that are done, the newest first. */
export async function setsOf(db: Database, learner: Person, now: Date): Promise<readonly OwnSet[]> {
	if (learner.role !== 'learner') return [];
	const rows = await openSetsOf(db, learner);
	const at = await dayAt(db, learner, now);
	const answers = Map.groupBy(await setAnswersOf(db, learner.id, rows.map(({ id }) => id)), (one) => one.assignment);
	const sets = rows.map((row): OwnSet => {
		const content = contentOf(row);
		const { state, late, answered, of, right, round } = standingOf(content, roundsIn(answers.get(row.id) ?? [], content.count), { ...at, dueDay: row.dueDay });
		return { assignment: row.id, name: row.name, dueDay: row.dueDay, state, late, answered, of, right, round };
	});
	const open = sets.filter((one) => one.state !== 'done');
	open.sort((a, b) => compare(a.dueDay ?? NO_DAY, b.dueDay ?? NO_DAY) || STATES.indexOf(a.state) - STATES.indexOf(b.state));
	return [...open, ...sets.filter((one) => one.state === 'done').reverse()];
}

/** @returns a set to be worked on; null if there is none of that id, it is not theirs, it was recalled, or a scenario of it cannot be read any more. */
export async function setDesk(db: Database, learner: Person, assignment: string, now: Date): Promise<SetDesk | null> {
	if (learner.role !== 'learner') return null;
	const row = await findOwnSet(db, learner, assignment);
	if (row === null || row.closed) return null;
	const content = contentOf(row);
	const { count, rule } = content;
	const stored = await setAnswersOf(db, learner.id, [row.id]);
	const { late } = standingOf(content, roundsIn(stored, count), { ...(await dayAt(db, learner, now)), dueDay: row.dueDay });
	const answers = stored.map(({ place, right, critical }): SetAnswer => ({ place, right, critical }));
	const { state, context } = replaySet(content, answers);
	const scenarios = state === 'passed' ? [] : await setScenarios(db, learner.organisation, content);
	if (state !== 'passed' && scenarios.length < content.scenarios.length) return null;
	const places = state === 'passed' ? [] : await knownPlaces({ assignment: row.id, content, seed: row.seed, person: learner.id, scenarios }, context.round);
	return {
		assignment: row.id,
		name: row.name,
		dueDay: row.dueDay,
		late,
		language: content.language,
		count,
		rule,
		state,
		round: context.round,
		answers,
		over: context.over,
		places,
		scenarios: scenarios.filter((one) => places.some((place) => place.scenario === one.id))
	};
}
