/** From a task and a seed to a picture. Pure and total; the same on every machine. */
import { chanceOf, type Chance } from '#lib/scenario/index.ts';
import { looksOf, lookOf, type Look, type Meaning } from './forms.ts';
import { drawMoment } from './moment.ts';
import { shuffled, weighted } from './order.ts';
import type { Picture, PictureKey, Shown, ShownChoice, ShownPart } from './picture.ts';
import { TASKS, type ChoiceRule, type PartsTask, type Slot, type Task } from './tasks.ts';

/** Raised whenever the way of drawing changes; old versions stay in the code. */
export const PICTURE_DRAW_VERSION = 1;

/** @returns the task of an id. @throws RangeError on an id that is not there. */
export function taskOf(id: string): Task {
	const found = TASKS.find((task) => task.id === id);
	if (found === undefined) throw new RangeError(`there is no picture task "${id}"; there are ${TASKS.map((task) => task.id).join(', ')}`);
	return found;
}

/**
 * @param seed any whole number.
 * @returns the picture of the seed.
 * @throws RangeError on a task that is not there.
 */
export function drawPicture(id: string, seed: number): Picture {
	const task = taskOf(id);
	const chance = chanceOf(['picture', task.id, task.version, PICTURE_DRAW_VERSION, seed]);
	const { shown, key } = task.kind === 'moment' ? drawMoment(task, chance) : drawParts(task, chance);
	const { version, kind, difficulty, skills } = task;
	return { id, version, seed, kind, difficulty, skills, shown, key };
}

function drawParts(task: PartsTask, chance: Chance): { shown: Shown; key: PictureKey } {
	const count = weighted(task.counts, chance);
	const order = shuffled(
		task.slots.map((slot) => slot.id),
		chance
	);
	const toMark = new Set(order.slice(0, count));
	const parts = task.slots.map((slot): ShownPart => ({ id: slot.id, form: slot.form, look: drawLook(slot, toMark.has(slot.id), chance) }));
	const looks = new Map(task.slots.map((slot, i) => [slot.id, lookOf(slot.form, parts[i]?.look ?? '')]));
	const marks = parts.filter((part) => toMark.has(part.id)).map((part) => part.id);
	return {
		shown: {
			task: task.id,
			version: task.version,
			kind: task.kind,
			drawing: task.drawing,
			parts,
			choices: CHOICES[task.choice].map((id): ShownChoice => ({ id })),
			numbers: {}
		},
		key: {
			marks,
			choice: rightChoice(task.choice, marks, looks),
			criticalChoices: criticalChoices(task.choice, marks, looks),
			criticalMarks: true,
			notes: Object.fromEntries([...looks].map(([part, look]) => [part, look.note])),
			facts: {}
		}
	};
}

function drawLook(slot: Slot, toMark: boolean, chance: Chance): string {
	const among = looksOf(slot.form).filter(([, look]) => (look.means === 'fine') !== toMark);
	const weights = among.map(([, look]) => look.weight ?? 1);
	return among[weighted(weights, chance)]?.[0] ?? '';
}

const CHOICES: Readonly<Record<ChoiceRule, readonly string[]>> = {
	use: ['use', 'take-out'],
	wear: ['use', 'put-right', 'take-out'],
	'of-two': ['first', 'second', 'both', 'neither'],
	go: ['go-on', 'stop']
};

function rightChoice(rule: ChoiceRule, marks: readonly string[], looks: ReadonlyMap<string, Look>): string {
	const any = (means: Meaning): boolean => marks.some((id) => looks.get(id)?.means === means);
	switch (rule) {
		case 'use':
			return marks.length > 0 ? 'take-out' : 'use';
		case 'wear':
			return any('take-out') ? 'take-out' : marks.length > 0 ? 'put-right' : 'use';
		case 'of-two': {
			const first = marks.some((id) => id.startsWith('first-'));
			const second = marks.some((id) => id.startsWith('second-'));
			return first ? (second ? 'neither' : 'second') : second ? 'first' : 'both';
		}
		case 'go':
			return marks.length > 0 ? 'stop' : 'go-on';
	}
}

/** Choices by which something would be used or done that must not be. */
function criticalChoices(rule: ChoiceRule, marks: readonly string[], looks: ReadonlyMap<string, Look>): readonly string[] {
	const right = rightChoice(rule, marks, looks);
	switch (rule) {
		case 'use':
			return right === 'take-out' ? ['use'] : [];
		case 'wear':
			return right === 'take-out' ? ['use', 'put-right'] : right === 'put-right' ? ['use'] : [];
		case 'of-two':
			return { first: ['second', 'both'], second: ['first', 'both'], both: [], neither: ['first', 'second', 'both'] }[right] ?? [];
		case 'go':
			return right === 'stop' ? ['go-on'] : [];
	}
}
