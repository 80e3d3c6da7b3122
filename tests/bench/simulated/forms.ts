/**
 * Forms of the final check as the server puts them together, real draws and all, measured: how equally hard they
 * are, what repeats, what neighbours share.
 */
import { drawPicture } from '#lib/findings/index.ts';
import { rightValue } from '#lib/grading/index.ts';
import { fillSlots, firstPage, tasksFor, type CheckTask, type PassRule, type Slot } from '#lib/mastery/index.ts';
import { checkBook, findTask } from '#lib/server/course/book.ts';
import { drawItem, pageItems, type CheckItem, type DrawnItem } from '#lib/server/course/items.ts';

export interface FormMeasures {
	readonly forms: number;
	/** Standard deviation across forms of the expected raw score, items. */
	readonly spreadOfScore: number;
	readonly meanScore: number;
	/** Items that repeat another of their form. */
	readonly repeated: number;
	/** Items of second tries that repeat one of the first, share. */
	readonly repeatedBetween: number;
	/** Neighbours with the same answer, share of neighbours. */
	readonly collisions: number;
	/** Neighbours that share at least a number or, of two pictures, the choice; share of neighbours. */
	readonly partCollisions: number;
	/** Number answers in the outer twentieths of their task's range, share. */
	readonly atEnds: number;
}

/** Ability of a learner who gets about 85 % right; the mean score over forms says how near. */
const EASE = Math.log(0.85 / 0.15);

function standardDeviation(values: readonly number[]): number {
	const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
	return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / values.length);
}

/** Mean hardness over the places of a blueprint, so that the model learner's average item is 85 % right. */
function meanHardness(slots: readonly Slot[], tasks: readonly CheckTask[]): number {
	const each = slots.map((slot) => {
		const possible = tasksFor(slot, tasks);
		return possible.reduce((sum, task) => sum + task.hardness, 0) / possible.length;
	});
	return each.reduce((sum, one) => sum + one, 0) / each.length;
}

/** Expected raw score: logit of each item = ability − hardness. */
function expectedScore(hardness: readonly number[], mean: number): number {
	return hardness.reduce((sum, one) => sum + 1 / (1 + Math.exp(one - mean - EASE)), 0);
}

/** @returns the greatest difference of hardness among tasks that may stand in one place of the rule. */
export function widestPlace(rule: PassRule): number {
	const tasks = checkBook();
	const spreads = rule.blueprint.map((place) => {
		const hardness = tasksFor({ ...place, from: 'blueprint' }, tasks).map((task) => task.hardness);
		return Math.max(...hardness) - Math.min(...hardness);
	});
	return Math.round(Math.max(...spreads) * 1e6) / 1e6;
}

/** @returns cells and difficulties of the rule that have to make do with tasks of another difficulty. */
export function replacedPlaces(rule: PassRule): readonly string[] {
	const tasks = checkBook();
	const replaced = rule.blueprint.filter((place) => tasksFor({ ...place, from: 'blueprint' }, tasks).every((task) => task.difficulty !== place.difficulty));
	return [...new Set(replaced.map((place) => `${place.cell} ${place.difficulty}`))];
}

/** @returns the spread of the expected score over whole blueprints, tasks chosen but not drawn. */
export function spreadOfWhole(rule: PassRule, forms: number): number {
	const tasks = checkBook();
	const slots = rule.blueprint.map((place): Slot => ({ ...place, from: 'blueprint' }));
	const mean = meanHardness(slots, tasks);
	const scores = Array.from({ length: forms }, (_, i) => {
		const items = fillSlots(slots, tasks, { seed: `whole ${i}`, asked: [], used: new Set(), fits: () => true });
		return expectedScore(items.map((item) => item.task.hardness), mean);
	});
	return standardDeviation(scores);
}

/** @source learning-and-records.md 6.2: a blind guess of a typed number hits 1.7 % of the time */
const LUCK_WITH_NUMBER = 0.017;
/** Pictures drawn to see which answer is the commonest. */
const GUESSED = 2000;

/** How often the best blind answer to a task is right: the commonest key of a picture, a guessed number. */
function luckWith(task: CheckTask): number {
	const asked = findTask(task.id);
	if (asked?.kind !== 'finding') return LUCK_WITH_NUMBER;
	const keys = new Map<string, number>();
	for (let seed = 0; seed < GUESSED; seed += 1) {
		const { key } = drawPicture(asked.picture, seed);
		const answer = `${key.choice} ${key.marks.join()}`;
		keys.set(answer, (keys.get(answer) ?? 0) + 1);
	}
	return Math.max(...keys.values()) / GUESSED;
}

/** @returns how often somebody who knows nothing of a cell answers its items on the first page right, on average. */
export function luckIn(rule: PassRule, cell: string): number {
	const tasks = checkBook();
	const each = firstPage(rule)
		.filter((slot) => slot.cell === cell)
		.flatMap((slot) => {
			const lucks = tasksFor(slot, tasks).map(luckWith);
			return lucks.reduce((sum, one) => sum + one, 0) / lucks.length;
		});
	return each.reduce((sum, one) => sum + one, 0) / each.length;
}

/** What of an item is asked and answered, as texts that are equal when the things are. */
interface Content {
	readonly task: string;
	readonly whole: string;
	readonly answer: string;
	readonly parts: readonly string[];
	readonly numbers: readonly { readonly of: string; readonly value: number }[];
}

function contentOf(item: CheckItem, drawn: DrawnItem): Content {
	if (drawn.kind === 'picture') {
		const { shown, key } = drawn.picture;
		return {
			task: item.task,
			whole: JSON.stringify(shown),
			answer: `${key.choice} ${key.marks.join()}`,
			parts: [`choice ${key.choice}`],
			numbers: []
		};
	}
	const { problem, asks } = drawn;
	const numbers = asks.flatMap((ask) => {
		const value = ask.kind === 'number' ? rightValue(problem, ask) : undefined;
		return value === undefined ? [] : [{ of: `${item.task} ${ask.id}`, value }];
	});
	const written = numbers.map(({ value }) => value.toFixed(4));
	return {
		task: item.task,
		whole: `${problem.scenario.id} ${JSON.stringify(problem.drawn)}`,
		answer: written.join(),
		parts: written,
		numbers
	};
}

/**
 * @param learners each with a first try and a second one after it.
 * @returns what the first pages of their forms are like.
 */
export function measureForms(rule: PassRule, learners: number): FormMeasures {
	const tasks = checkBook();
	const hardness = new Map(tasks.map((task) => [task.id, task.hardness]));
	const slots = firstPage(rule);
	const mean = meanHardness(slots, tasks);
	const scores: number[] = [];
	const answers = new Map<string, number[]>();
	let items = 0;
	let repeated = 0;
	let again = 0;
	let pairs = 0;
	let same = 0;
	let share = 0;
	for (let learner = 0; learner < learners; learner += 1) {
		let used: readonly CheckItem[] = [];
		const seen = new Set<string>();
		for (const nth of [1, 2]) {
			const form = pageItems(slots, `learner ${learner} try ${nth}`, [], used);
			const contents = form.map((item) => contentOf(item, drawItem(item)));
			scores.push(expectedScore(form.map((item) => hardness.get(item.task) ?? NaN), mean));
			const here = new Set(contents.map((one) => one.whole));
			repeated += contents.length - here.size;
			again += [...here].filter((one) => seen.has(one)).length;
			contents.forEach((one, i) => {
				const last = contents[i - 1];
				if (last !== undefined) {
					pairs += 1;
					if (one.answer === last.answer) same += 1;
					if (one.parts.some((part) => last.parts.includes(part))) share += 1;
				}
				for (const { of, value } of one.numbers) listAt(answers, of).push(value);
			});
			if (nth === 1) {
				used = form;
				for (const one of here) seen.add(one);
			} else items += contents.length;
		}
	}
	return {
		forms: 2 * learners,
		spreadOfScore: standardDeviation(scores),
		meanScore: scores.reduce((sum, one) => sum + one, 0) / scores.length,
		repeated,
		repeatedBetween: again / items,
		collisions: same / pairs,
		partCollisions: share / pairs,
		atEnds: shareAtEnds(answers)
	};
}

function listAt(lists: Map<string, number[]>, key: string): number[] {
	const list = lists.get(key) ?? [];
	lists.set(key, list);
	return list;
}

/** Share of number answers that lie in the outer twentieths of all that their task gave. */
function shareAtEnds(answers: ReadonlyMap<string, readonly number[]>): number {
	let all = 0;
	let outer = 0;
	for (const values of answers.values()) {
		const low = values.reduce((a, b) => Math.min(a, b), Infinity);
		const high = values.reduce((a, b) => Math.max(a, b), -Infinity);
		const edge = (high - low) / 20;
		all += values.length;
		outer += values.filter((one) => one < low + edge || one > high - edge).length;
	}
	return all === 0 ? 0 : outer / all;
}

