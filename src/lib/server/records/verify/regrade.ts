/** Answers of checks, marked again from the values that are stored with them, and drawn again from their seeds. */
import { FINDING_TASKS, PICTURE_DRAW_VERSION, drawPicture, type FindingTask, type Picture, type Shown } from '#lib/findings/index.ts';
import { hashOf, standing, type ItemOutcome, type PassRule } from '#lib/mastery/index.ts';
import { canonicalJson, type EntryOf } from '#lib/records/index.ts';
import { DRAW_VERSION, draw, problemOf, type Drawn, type Scenario } from '#lib/scenario/index.ts';
import { SLIP_SET_VERSION } from '#lib/slips/index.ts';
import { ENGINE_VERSION } from '../../attempts/receive.ts';
import { asksOf, findTask, scenarioOf } from '../../course/book.ts';
import type { StoredStep } from '../../course/check-replay.ts';
import { gradeDrawn, type CheckItem, type DrawnItem, type ItemAnswer, type ItemResult } from '../../course/items.ts';
import { pictureEvidence, type MarkingKey } from '../../course/origin.ts';
import type { CheckEvent, CheckTry } from '../../db/checks.ts';
import type { BreakKind, CountName, Found } from './result.ts';

/** Which items are drawn again from their seeds. */
export interface Redraw {
	/** Share of the items, from 0 to 1. */
	readonly share: number;
	/** Decides which: the same seed takes the same items. */
	readonly seed: number;
}

/** What marking again needs. */
export interface Marking {
	readonly redraw: Redraw;
	readonly count: (name: CountName, by: number) => void;
}

/** @source a hash of 32 bits */
const HASHES = 2 ** 32;

/**
 * Marks a try again, page by page, and holds marks, outcomes and verdicts against those that are stored. What stands in
 * the events is as it was entered: the digest was compared before.
 */
export function regradeTry(of: CheckTry, events: readonly CheckEvent[], entry: EntryOf<'check-ended'>, marking: Marking): Found {
	const broken = (event: CheckEvent, problem: BreakKind): Found => ({ table: 'check_event', row: event.id, column: 'payload', seq: null, problem });
	const rule = JSON.parse(of.rule) as PassRule;
	const language = of.language === 'es' ? 'es' : 'en';
	const outcomes: ItemOutcome[] = [];
	let items: readonly CheckItem[] = [];
	let answers = new Map<string, ItemAnswer>();
	let verdict = '';
	for (const event of events) {
		const step = JSON.parse(event.payload) as StoredStep;
		if (step.kind === 'page') items = step.items;
		else if (step.kind === 'answered') answers.set(step.item, step.answer);
		else {
			if (step.results.length !== items.length) return broken(event, 'marks-differ');
			for (const [i, result] of step.results.entries()) {
				const item = items[i];
				if (item === undefined || !alike(item, result.item)) return broken(event, 'marks-differ');
				const problem = regradeItem(of.id, result, answers.get(item.id), language, marking);
				if (problem !== undefined) return broken(event, problem);
				outcomes.push(result.outcome);
			}
			if (!alike(standing(rule, outcomes), step.standing)) return broken(event, 'verdict-differs');
			verdict = step.standing.kind;
			items = step.items;
			answers = new Map();
		}
	}
	if ((verdict === 'passed') === entry.passed) return undefined;
	return { table: 'check_try', row: of.id, column: null, seq: null, problem: 'verdict-differs' };
}

function regradeItem(check: string, result: ItemResult, answer: ItemAnswer | undefined, language: 'en' | 'es', { redraw, count }: Marking): BreakKind | undefined {
	const drawn = storedItem(result);
	if (drawn === undefined) {
		count('notRegradable', 1);
		return undefined;
	}
	count('regraded', 1);
	if (isTaken(redraw, check, result.item.id)) {
		count('redrawn', 1);
		if (!(drawn.kind === 'site' ? drawsSiteAgain(drawn.problem.scenario, result) : drawsPictureAgain(drawn.picture, result))) return 'draw-differs';
	}
	const again = gradeDrawn(drawn, answer, language);
	return alike(again.grades, result.grades) && alike(again.outcome, result.outcome) && alike(again.answer, result.answer) ? undefined : 'marks-differ';
}

function isTaken({ share, seed }: Redraw, check: string, item: string): boolean {
	return share >= 1 || (share > 0 && hashOf(['redraw', seed, check, item]) < share * HASHES);
}

/** @returns an item as its stored values describe it; undefined where what it was drawn from is kept here in another version only. */
function storedItem({ item, evidence: { origin, drawn, key } }: ItemResult): DrawnItem | undefined {
	const task = findTask(item.task);
	if (task === undefined) return undefined;
	if (task.kind === 'finding') {
		const of = FINDING_TASKS.find((one) => one.id === task.picture);
		const kept = origin.picture === task.picture && origin.version === of?.version && origin.drawVersion === PICTURE_DRAW_VERSION;
		return kept && of !== undefined ? { kind: 'picture', item, picture: storedPicture(of, item.seed, drawn, key) } : undefined;
	}
	const scenario = scenarioOf(task);
	const kept =
		origin.scenario === scenario.id &&
		origin.version === scenario.version &&
		origin.drawVersion === DRAW_VERSION &&
		origin.slipSetVersion === SLIP_SET_VERSION &&
		origin.engineVersion === ENGINE_VERSION;
	if (!kept) return undefined;
	return { kind: 'site', item, problem: problemOf(scenario, drawn as Drawn, item.seed, Number(origin.acceptedTry)), asks: asksOf(task) };
}

/** @returns a picture with what it is marked by; what explains it is left out. Without a stored key it is drawn. */
function storedPicture(of: FindingTask, seed: number, drawn: unknown, key: MarkingKey | undefined): Picture {
	return key === undefined ? drawPicture(of.id, seed) : { ...of, seed, shown: drawn as Shown, key: { ...key, notes: {}, facts: {} } };
}

function drawsPictureAgain({ id, seed }: Picture, { evidence }: ItemResult): boolean {
	const again = pictureEvidence(drawPicture(id, seed));
	return alike(again.origin, evidence.origin) && alike(again.drawn, evidence.drawn) && (evidence.key === undefined || alike(again.key, evidence.key));
}

function drawsSiteAgain(scenario: Scenario, { item, evidence: { origin, drawn } }: ItemResult): boolean {
	const again = draw(scenario, item.seed);
	return again.kind === 'drawn' && again.problem.acceptedTry === origin.acceptedTry && item.seed === origin.seed && alike(again.problem.drawn, drawn);
}

/** Whether two hold the same, as JSON; most often they are the same text. */
function alike(one: unknown, other: unknown): boolean {
	const text = JSON.stringify(one);
	return text === JSON.stringify(other) || canonicalJson(JSON.parse(text)) === canonicalJson(other);
}
