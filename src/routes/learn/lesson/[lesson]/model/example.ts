/** A shown example: its plans drawn, and the parts of its captions from the engine. */
import { NUMBER_SLOTS, NAME_SLOTS, lessonNumbers, type CaptionParts, type DrawnPlan, type LessonNumber, type Numbers } from '#lib/course/index.ts';
import { SPEED, TIME, type Language } from '#lib/quantity/index.ts';
import { draw, storyOf, type Problem, type Scenario, type Story } from '#lib/scenario/index.ts';
import type { SiteModel } from '#lib/scene/index.ts';
import type { Messages } from '#lib/text/index.ts';
import { obstacleName, thePlace, type Speech } from '../../../problem/model/names.ts';
import { siteModel } from '../../../problem/model/site.ts';
import { firstThing } from '../../../problem/model/tapes.ts';
import { writerFor, type Writer } from '../../../problem/model/writing.ts';

export interface ShownPlan {
	readonly problem: Problem;
	readonly speech: Speech;
	readonly writer: Writer;
	readonly story: Story;
	readonly site: SiteModel;
}

/** @returns a plan of an example. @throws RangeError on one that cannot be drawn: examples are chosen so that theirs can. */
export function shownPlan(scenarios: Readonly<Record<string, Scenario>>, { scenario: id, seed }: DrawnPlan, language: Language, m: Messages): ShownPlan {
	const scenario = scenarios[id];
	const drawn = scenario === undefined ? undefined : draw(scenario, seed);
	if (scenario === undefined || drawn?.kind !== 'drawn') throw new RangeError(`the example's plan "${id}" with seed ${String(seed)} cannot be drawn`);
	const { problem } = drawn;
	const speech: Speech = { problem, language, m };
	const writer = writerFor(scenario, language);
	return { problem, speech, writer, story: storyOf(problem, language), site: siteModel(speech, writer) };
}

function written(writer: Writer, number: LessonNumber): string {
	switch (number.kind) {
		case 'given':
			return writer.given(number.id, number.si);
		case 'quantity':
			return writer.quantity(number.id, number.si);
		case 'time':
			return writer.full(number.si, TIME);
		case 'speed':
			return writer.full(number.si, SPEED);
	}
}

const NOTHING = Object.fromEntries([...NUMBER_SLOTS, ...NAME_SLOTS].map((slot) => [slot, ''])) as CaptionParts;

/** @returns what a caption or an idea is given; of pictures, which have no plan, nothing. */
export function captionParts(plan: ShownPlan | undefined, numbers: Numbers): CaptionParts {
	if (plan === undefined) return NOTHING;
	const { problem, speech, writer } = plan;
	const first = firstThing(problem);
	const values = Object.entries(lessonNumbers(problem, numbers)).flatMap(([slot, number]) => (number === undefined ? [] : [[slot, written(writer, number)]]));
	return {
		...NOTHING,
		name: problem.drawn.person,
		surface: thePlace(speech, 'surface'),
		lowerLevel: thePlace(speech, 'lowerLevel'),
		anchorage: thePlace(speech, 'anchorage'),
		thing: first.obstacle === undefined ? thePlace(speech, 'lowerLevel') : obstacleName(speech, first.obstacle),
		...Object.fromEntries(values)
	};
}
