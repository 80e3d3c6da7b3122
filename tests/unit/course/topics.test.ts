import { describe, expect, test } from 'vitest';
import { LESSON_IDS, OPEN_REASONS, TOPIC_LISTS, type TopicList } from '#lib/course/index.ts';
import { LANGUAGES, messages } from '#lib/text/index.ts';

const lists: readonly TopicList[] = TOPIC_LISTS;
const all = lists.flatMap((list) => list.topics);

/** How many topics each law names, as it numbers or lists them. */
const COUNTS = {
	// 29 CFR 1926.503(a)(2)(i) to (viii).
	'us-construction': 8,
	// 29 CFR 1910.30(a)(3)(i) to (iv).
	'us-general-industry': 4,
	// Alberta OHS Code s. 141, text of 2009: law, plan, methods, hazards, anchorages, connecting, body, inspection, emergency, practice.
	'ca-alberta': 10,
	// SOR/2021-247 and -248 s. 112(1): law, hazards, order, means, choice, body, use, emergency.
	'ca-offshore': 8
};

describe('topics that laws name', () => {
	test('are all there, numbered as the law does', () => {
		expect(Object.fromEntries(lists.map((list) => [list.id, list.topics.length]))).toEqual(COUNTS);
		const numerals = ['(i)', '(ii)', '(iii)', '(iv)', '(v)', '(vi)', '(vii)', '(viii)'];
		for (const list of lists.slice(0, 2)) expect(list.topics.map((topic) => topic.item)).toEqual(numerals.slice(0, list.topics.length));
		expect(new Set(all.map((topic) => topic.id)).size).toBe(all.length);
	});

	test('are treated by a lesson, or left to others with the reason', () => {
		expect(all.filter((topic) => topic.lessons.length === 0 && topic.open.length === 0)).toEqual([]);
		for (const topic of all) {
			expect(topic.lessons).toEqual(LESSON_IDS.filter((id) => topic.lessons.includes(id)));
			for (const reason of topic.open) expect(OPEN_REASONS).toContain(reason);
		}
	});

	test('give every lesson its ground', () => {
		const treated = new Set(all.flatMap((topic) => topic.lessons));
		expect(LESSON_IDS.filter((id) => !treated.has(id))).toEqual([]);
	});

	test('practice with the gear is never said to be treated in full', () => {
		for (const id of ['ca-alberta.practice', 'ca-offshore.use', 'ca-offshore.emergency', 'us-construction.upkeep', 'us-general-industry.upkeep']) {
			expect(all.find((topic) => topic.id === id)?.open).toContain('hands-on');
		}
	});

	test.each(LANGUAGES)('have words in %s, and no others', async (language) => {
		const { of, trainer } = (await messages(language)).topics;
		expect(Object.keys(of).toSorted()).toEqual(all.map((topic) => topic.id).toSorted());
		expect(Object.keys(trainer)).toEqual(lists.map((list) => list.id));
	});
});
