/**
 * What practice and checks draw from. Which task is next, and with which seed, is worked out elsewhere; everything
 * that is seen of a task follows from its id and that seed.
 */
import { FINDING_TASKS, type Difficulty } from '#lib/findings/index.ts';
import type { CourseCell } from './cells.ts';
import type { ShippedId } from './index.ts';
import type { LessonId } from './lesson.ts';

interface TaskCommon {
	readonly id: string;
	readonly cell: CourseCell;
	readonly difficulty: Difficulty;
}

/** A site problem, asked in part or in whole. A decision is always asked together with its numbers. */
export interface SiteTask extends TaskCommon {
	readonly kind: 'site';
	readonly scenario: ShippedId;
	readonly asks: readonly string[];
}

/** A picture task of findings. */
export interface FindingTask extends TaskCommon {
	readonly kind: 'finding';
	readonly picture: string;
}

export type Task = SiteTask | FindingTask;

/** A site problem as the tables below write it. The difficulty is that of what is asked, not that of the whole site. */
type Row = readonly [scenario: ShippedId, asks: readonly string[], difficulty: Difficulty];

function sites(cell: CourseCell, rows: readonly Row[]): readonly SiteTask[] {
	return rows.map(([scenario, asks, difficulty]) => ({
		id: `${scenario}.${asks.join('+')}`,
		kind: 'site',
		scenario,
		asks,
		cell,
		difficulty
	}));
}

/** All picture tasks of some kinds; their difficulty is their own. */
function pictures(cell: CourseCell, kinds: readonly string[]): readonly FindingTask[] {
	return FINDING_TASKS.filter((task) => kinds.includes(task.kind)).map(({ id, difficulty }) => ({
		id,
		kind: 'finding',
		picture: id,
		cell,
		difficulty
	}));
}

function tasksOf(): Readonly<Record<LessonId, readonly Task[]>> {
	return {
		stages: pictures('stages', ['moment']),
		label: sites('label-and-mass', [
			['stage-grid', ['mass'], 'easy'],
			['stage-grid', ['mass', 'capacity'], 'easy'],
			['stage-grid', ['mass', 'capacity', 'decision'], 'easy'],
			['turbine-nacelle', ['mass'], 'middle'],
			['antenna-swap', ['mass'], 'middle'],
			['antenna-swap', ['mass', 'capacity', 'decision'], 'middle'],
			['deck-stripping', ['mass', 'capacity'], 'hard'],
			['deck-stripping', ['mass', 'capacity', 'decision'], 'hard'],
			['silo-two-workers', ['mass'], 'middle'],
			['girder-frost', ['mass'], 'easy'],
			['silo-weld', ['mass'], 'middle'],
			['silo-weld', ['mass', 'capacity'], 'middle'],
			['silo-weld', ['mass', 'capacity', 'decision'], 'middle']
		]),
		'free-fall': sites('free-fall', [
			['bridge-bearing', ['free-fall'], 'easy'],
			['yard-mast', ['free-fall'], 'easy'],
			['flat-roof-edge', ['free-fall'], 'middle'],
			['telecom-mast', ['free-fall'], 'middle'],
			['tank-roof', ['free-fall'], 'hard']
		]),
		'required-clearance': sites('required-clearance', [
			['bridge-bearing', ['free-fall', 'required'], 'easy'],
			['bridge-bearing', ['required'], 'easy'],
			['yard-mast', ['required'], 'easy'],
			['yard-mast', ['free-fall', 'required'], 'easy'],
			['tank-landing', ['required'], 'easy'],
			['stage-pulley', ['required'], 'middle'],
			['lighting-bridge', ['required'], 'easy'],
			['lighting-bridge', ['required', 'decision'], 'easy'],
			['shaft-landing', ['required'], 'easy'],
			['flat-roof-edge', ['required'], 'middle'],
			['loading-dock', ['required'], 'middle'],
			['silo-top', ['required'], 'hard'],
			['telecom-mast', ['required'], 'hard'],
			['tank-roof', ['free-fall', 'swing-drop', 'required'], 'hard'],
			['lift-shaft', ['required'], 'hard']
		]),
		'available-clearance': sites('available-and-verdict', [
			['loading-dock', ['available'], 'easy'],
			['formwork-deck', ['available'], 'easy'],
			['tank-landing', ['available'], 'easy'],
			['tank-landing', ['required', 'available', 'decision'], 'easy'],
			['stage-pulley', ['available'], 'middle'],
			['shaft-landing', ['available'], 'easy'],
			['shaft-landing', ['required', 'available', 'decision'], 'easy'],
			['silo-top', ['available'], 'middle'],
			['telecom-mast', ['available'], 'middle'],
			['loading-dock', ['required', 'available', 'decision'], 'middle'],
			['silo-top', ['required', 'available', 'decision'], 'hard'],
			['telecom-mast', ['free-fall', 'required', 'available', 'decision'], 'hard']
		]),
		force: sites('force-and-limits', [
			['turbine-nacelle', ['force'], 'easy'],
			['dock-sign', ['force'], 'easy'],
			['girder-frost', ['force'], 'easy'],
			['girder-frost', ['mass', 'force', 'decision'], 'easy'],
			['dock-sign', ['force', 'decision'], 'easy'],
			['turbine-nacelle', ['force', 'body-weights'], 'middle'],
			['turbine-nacelle', ['mass', 'force', 'decision'], 'middle'],
			['silo-two-workers', ['expected'], 'middle'],
			['silo-two-workers', ['mass', 'expected', 'body-weights'], 'middle'],
			['silo-two-workers', ['mass', 'expected', 'decision'], 'middle'],
			['deck-stripping', ['force'], 'middle'],
			['lift-shaft', ['expected'], 'hard']
		]),
		swing: sites('swing-and-path', [
			['viaduct-lamp', ['swing-drop'], 'easy'],
			['viaduct-lamp', ['swing-drop', 'decision'], 'easy'],
			['gutter-repair', ['reach'], 'middle'],
			['gutter-repair', ['swing-drop'], 'middle'],
			['gutter-repair', ['reach', 'swing-drop', 'decision'], 'middle'],
			['formwork-deck', ['reach'], 'middle'],
			['formwork-deck', ['reach', 'decision'], 'middle'],
			['tank-roof', ['swing-drop'], 'middle'],
			['stage-pulley', ['swing-drop'], 'middle'],
			['stage-pulley', ['swing-drop', 'required', 'available', 'decision'], 'middle'],
			['tank-roof', ['free-fall', 'swing-drop', 'required', 'decision'], 'hard']
		]),
		'before-and-after': pictures('decisions', ['gear', 'situation'])
	};
}

/** What each lesson practises. */
export const TASKS_OF: Readonly<Record<LessonId, readonly Task[]>> = /* @__PURE__ */ tasksOf();

/** One ask by itself. */
type Alone = readonly [scenario: ShippedId, ask: string, cell: CourseCell, difficulty: Difficulty];
/** A decision with the numbers that it rests on. */
type Decided = readonly [scenario: ShippedId, asks: readonly string[], difficulty: Difficulty];

/** All number asks but the force of deck-stripping, which is one of two, and the same one in every other draw. */
const ALONE: readonly Alone[] = [
	['stage-grid', 'mass', 'label-and-mass', 'easy'],
	['stage-grid', 'capacity', 'label-and-mass', 'easy'],
	['turbine-nacelle', 'mass', 'label-and-mass', 'middle'],
	['bridge-bearing', 'free-fall', 'free-fall', 'easy'],
	['flat-roof-edge', 'free-fall', 'free-fall', 'middle'],
	['telecom-mast', 'free-fall', 'free-fall', 'middle'],
	['tank-roof', 'free-fall', 'free-fall', 'hard'],
	['bridge-bearing', 'required', 'required-clearance', 'easy'],
	['flat-roof-edge', 'required', 'required-clearance', 'middle'],
	['loading-dock', 'required', 'required-clearance', 'middle'],
	['silo-top', 'required', 'required-clearance', 'hard'],
	['telecom-mast', 'required', 'required-clearance', 'hard'],
	['tank-roof', 'required', 'required-clearance', 'hard'],
	['lift-shaft', 'required', 'required-clearance', 'hard'],
	['loading-dock', 'available', 'available-and-verdict', 'easy'],
	['formwork-deck', 'available', 'available-and-verdict', 'easy'],
	['silo-top', 'available', 'available-and-verdict', 'middle'],
	['telecom-mast', 'available', 'available-and-verdict', 'middle'],
	['turbine-nacelle', 'force', 'force-and-limits', 'easy'],
	['turbine-nacelle', 'body-weights', 'force-and-limits', 'middle'],
	['lift-shaft', 'expected', 'force-and-limits', 'hard'],
	['formwork-deck', 'reach', 'swing-and-path', 'middle'],
	['tank-roof', 'swing-drop', 'swing-and-path', 'middle'],
	['antenna-swap', 'mass', 'label-and-mass', 'middle'],
	['antenna-swap', 'capacity', 'label-and-mass', 'middle'],
	['deck-stripping', 'mass', 'label-and-mass', 'middle'],
	['deck-stripping', 'capacity', 'label-and-mass', 'middle'],
	['dock-sign', 'force', 'force-and-limits', 'easy'],
	['silo-two-workers', 'mass', 'label-and-mass', 'easy'],
	['silo-two-workers', 'expected', 'force-and-limits', 'middle'],
	['silo-two-workers', 'body-weights', 'force-and-limits', 'middle'],
	['viaduct-lamp', 'swing-drop', 'swing-and-path', 'easy'],
	['gutter-repair', 'reach', 'swing-and-path', 'middle'],
	['gutter-repair', 'swing-drop', 'swing-and-path', 'middle'],
	['lighting-bridge', 'required', 'required-clearance', 'easy'],
	['shaft-landing', 'required', 'required-clearance', 'easy'],
	['shaft-landing', 'available', 'available-and-verdict', 'easy'],
	['yard-mast', 'free-fall', 'free-fall', 'easy'],
	['yard-mast', 'required', 'required-clearance', 'easy'],
	['girder-frost', 'mass', 'label-and-mass', 'easy'],
	['girder-frost', 'force', 'force-and-limits', 'easy'],
	['tank-landing', 'required', 'required-clearance', 'easy'],
	['tank-landing', 'available', 'available-and-verdict', 'easy'],
	['silo-weld', 'mass', 'label-and-mass', 'middle'],
	['silo-weld', 'capacity', 'label-and-mass', 'middle'],
	['stage-pulley', 'swing-drop', 'swing-and-path', 'middle'],
	['stage-pulley', 'required', 'required-clearance', 'middle'],
	['stage-pulley', 'available', 'available-and-verdict', 'middle']
];

const DECIDED: readonly Decided[] = [
	['bridge-bearing', ['free-fall', 'required'], 'easy'],
	['stage-grid', ['mass', 'capacity'], 'easy'],
	['flat-roof-edge', ['free-fall', 'required'], 'middle'],
	['turbine-nacelle', ['mass', 'force'], 'middle'],
	['formwork-deck', ['reach'], 'middle'],
	['loading-dock', ['required', 'available'], 'middle'],
	['silo-top', ['required', 'available'], 'hard'],
	['telecom-mast', ['free-fall', 'required', 'available'], 'hard'],
	['tank-roof', ['free-fall', 'required'], 'hard'],
	['lift-shaft', ['required'], 'hard'],
	['dock-sign', ['force'], 'easy'],
	['viaduct-lamp', ['swing-drop'], 'easy'],
	['lighting-bridge', ['required'], 'easy'],
	['shaft-landing', ['required', 'available'], 'easy'],
	['antenna-swap', ['mass', 'capacity'], 'middle'],
	['silo-two-workers', ['mass', 'expected'], 'middle'],
	['gutter-repair', ['reach', 'swing-drop'], 'middle'],
	['deck-stripping', ['mass', 'capacity'], 'hard'],
	['yard-mast', ['free-fall', 'required'], 'easy'],
	['girder-frost', ['mass', 'force'], 'easy'],
	['tank-landing', ['required', 'available'], 'easy'],
	['silo-weld', ['mass', 'capacity'], 'middle'],
	['stage-pulley', ['required', 'available'], 'middle']
];

/**
 * Pictures that are practised and never checked.
 * @reason it has four possible answers: whoever always gives the same one is right three times in ten
 */
const PRACTICE_ONLY = ['moment-now'];

function checkTasks(): readonly Task[] {
	return [
		...ALONE.map(
			([scenario, ask, cell, difficulty]): SiteTask => ({ id: `check.${scenario}.${ask}`, kind: 'site', scenario, asks: [ask], cell, difficulty })
		),
		...DECIDED.map(
			([scenario, numbers, difficulty]): SiteTask => ({
				id: `check.${scenario}.decision`,
				kind: 'site',
				scenario,
				asks: [...numbers, 'decision'],
				cell: 'decisions',
				difficulty
			})
		),
		...[...pictures('stages', ['moment']), ...pictures('decisions', ['gear', 'situation'])]
			.filter((task) => !PRACTICE_ONLY.includes(task.picture))
			.map((task) => ({ ...task, id: `check.${task.id}` }))
	];
}

/** What checks ask: one item is one ask, a decision with its numbers, or a picture. */
export const CHECK_TASKS: readonly Task[] = /* @__PURE__ */ checkTasks();
