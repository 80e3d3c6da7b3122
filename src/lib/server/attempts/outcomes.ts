/** Rows of what answers came to, made from the server's own grades. */
import { outcomesOf, type Grades } from '#lib/flow/index.ts';
import type { Picture, PictureGrade } from '#lib/findings/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import type { OutcomeTable } from '../db/schema.ts';

/** Whose answer it is, where it was given, and when. */
export interface Answered {
	readonly answerer: string;
	readonly way: OutcomeTable['way'];
	/** Of a practice set. */
	readonly assignment?: string;
	readonly now: Date;
}

const DAY = 24 * 60 * 60 * 1000;
/** @source 1 January 1970 was a Thursday: three days after a Monday */
const THURSDAY = 3;
const WEEK = 7;

/** @returns the Monday of a time's week, UTC: `2026-11-30`. */
export function weekOf(at: Date): string {
	const day = Math.floor(at.getTime() / DAY);
	return new Date((day - ((day + THURSDAY) % WEEK)) * DAY).toISOString().slice(0, 'YYYY-MM-DD'.length);
}

function common({ answerer, way, assignment, now }: Answered) {
	return { answerer_id: answerer, way, assignment_id: assignment ?? null, week: weekOf(now), at: now.toISOString() };
}

/** A graded site problem, as far as its outcomes are made of it. */
export interface Graded {
	/** What was sent, by its id. */
	readonly sent: { readonly id: string };
	readonly scenario: Scenario;
	readonly grades: Grades;
}

/** @returns a row for each ask of a site problem that tells something. */
export function siteOutcomes({ sent, scenario, grades }: Graded, of: Answered): readonly OutcomeTable[] {
	return outcomesOf(scenario.asks, grades).map(({ ask, cell, skill, wrong, critical, slip }) => ({
		...common(of),
		answer_id: sent.id,
		ask,
		scenario_id: scenario.id,
		cell,
		skill,
		wrong: Number(wrong),
		critical: Number(critical),
		slip: slip ?? ''
	}));
}

/** @returns the row of an answered picture. @param event the course's event that holds the answer */
export function pictureOutcome(event: string, cell: string, picture: Pick<Picture, 'id' | 'skills'>, grade: PictureGrade, of: Answered): OutcomeTable {
	return {
		...common(of),
		answer_id: event,
		ask: 'picture',
		scenario_id: picture.id,
		cell,
		skill: picture.skills[0] ?? picture.id,
		wrong: Number(!grade.right),
		critical: Number(!grade.right && grade.critical),
		slip: ''
	};
}
