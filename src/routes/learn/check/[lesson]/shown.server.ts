/**
 * What a browser is shown of a check. Made on the server, so that seed, plan and key of an item stay there until
 * the check has ended.
 */
import type { Shown } from '#lib/findings/index.ts';
import { LENGTH, SPEED, TIME, echoQuantity, writeQuantity, type Language } from '#lib/quantity/index.ts';
import { practiceTable, ruleTable } from '#lib/rules/index.ts';
import { storyOf, type Ask, type Scenario, type Story } from '#lib/scenario/index.ts';
import { findingExplanation, findingWords, type FindingExplanation, type FindingFormats, type FindingWords, type SiteModel } from '#lib/scene/index.ts';
import type { CheckView, DrawnItem, ItemAnswer, ItemResult } from '#lib/server/index.ts';
import { drawItem } from '#lib/server/index.ts';
import { jurisdictionName, type Messages } from '#lib/text/index.ts';
import { tellDecision, tellNumber } from '../../problem/model/diagnosis.ts';
import { askParts, askText, type Speech } from '../../problem/model/names.ts';
import { besideRows, platesOf, ruleRows, type Plate, type PlateRow } from '../../problem/model/plates.ts';
import { siteModel } from '../../problem/model/site.ts';
import { scaleText } from '../../problem/model/words.ts';
import { answerUnit, unitFor, writerFor } from '../../problem/model/writing.ts';

/** One thing asked of a site problem. */
export type ShownAsk =
	| { readonly kind: 'number'; readonly id: string; readonly label: string; readonly hint: string; readonly unit: string; readonly wordy: boolean; readonly canBeUnstated: boolean }
	| { readonly kind: 'decision'; readonly id: string; readonly label: string; readonly hint: string };

/** What stands on labels, beside the drawing and in the rules. */
export interface ShownLabels {
	readonly heading: string;
	readonly plates: readonly Plate[];
	readonly beside: readonly PlateRow[];
	readonly rules: readonly PlateRow[];
	readonly notes: readonly string[];
}

export type ShownItem =
	| {
			readonly kind: 'site';
			readonly id: string;
			readonly title: string;
			readonly story: Story;
			readonly site: SiteModel;
			readonly scale: string;
			readonly labels: ShownLabels;
			readonly asks: readonly ShownAsk[];
			readonly answers: Extract<ItemAnswer, { kind: 'site' }>['answers'];
	  }
	| {
			readonly kind: 'picture';
			readonly id: string;
			readonly title: string;
			readonly shown: Shown;
			readonly words: FindingWords;
			readonly marked: readonly string[] | null;
			readonly choice: string | null;
	  };

/** One item after the end. */
export interface ToldItem {
	readonly id: string;
	readonly title: string;
	readonly right: boolean;
	readonly unsafe: boolean;
	/** What was asked, what was answered, what is right, and what is said of it. */
	readonly parts: readonly { readonly name: string; readonly yours: string; readonly right: string; readonly lines: readonly string[] }[];
	readonly picture: { readonly shown: Shown; readonly words: FindingWords; readonly told: FindingExplanation } | null;
	/** The same problem in practice. */
	readonly again: { readonly scenario: string; readonly seed: number } | null;
}

/** How quantities of pictures are written: in the organisation's units. */
export function formatsFor(units: Scenario['units'], language: Language): FindingFormats {
	const write = (dimension: typeof LENGTH, decimals: number) => (si: number) => {
		const unit = unitFor(units, dimension);
		return unit === 'ft-in'
			? writeQuantity(si, { unit, language, inchDenominator: 1 })
			: writeQuantity(si, { unit, language, decimals });
	};
	return {
		length: write(LENGTH, units === 'metric' ? 2 : 1),
		time: write(TIME, 2),
		speed: write(SPEED, 1),
		number: (value) => writeQuantity(value, { unit: '1', language, decimals: 1 })
	};
}

/** @returns what is shown of an item that is being answered. */
export function shownItem(item: DrawnItem, answer: ItemAnswer | undefined, language: Language, units: Scenario['units'], m: Messages): ShownItem {
	const { id } = item.item;
	if (item.kind === 'picture') {
		const { shown } = item.picture;
		const words = findingWords(m, shown, formatsFor(units, language));
		const given = answer?.kind === 'picture' ? answer : undefined;
		return { kind: 'picture', id, title: words.title, shown, words, marked: given?.marked ?? null, choice: given?.choice ?? null };
	}
	const speech: Speech = { problem: item.problem, language, m };
	const { scenario } = item.problem;
	const writer = writerFor(scenario, language);
	const story = storyOf(item.problem, language);
	return {
		kind: 'site',
		id,
		title: story.title,
		story,
		site: siteModel(speech, writer),
		scale: scaleText(m, scenario.units, language),
		labels: shownLabels(speech),
		asks: shownAsks(speech, item),
		answers: answer?.kind === 'site' ? answer.answers : {}
	};
}

function shownAsks(speech: Speech, item: Extract<DrawnItem, { kind: 'site' }>): readonly ShownAsk[] {
	const { m, language } = speech;
	const { scenario } = item.problem;
	const parts = askParts(speech);
	return item.asks.map((ask): ShownAsk => {
		if (ask.kind === 'decision') return { kind: 'decision', id: ask.id, label: m.decision.question({ name: parts.name }), hint: m.decision.help };
		const text = askText(speech, ask);
		return {
			kind: 'number',
			id: ask.id,
			label: text.question(parts),
			hint: text.help(parts),
			unit: answerUnit(scenario, ask, language),
			wordy: scenario.units === 'us-inch',
			canBeUnstated: ask.quantity === 'requiredClearance'
		};
	});
}

/** @returns what stands on labels, beside the drawing and in the rules of a problem. */
export function shownLabels(speech: Speech): ShownLabels {
	const { m, problem, language } = speech;
	const writer = writerFor(problem.scenario, language);
	const { plan, person } = problem.drawn;
	const table = ruleTable(plan.rules);
	const practice = practiceTable(plan.practice);
	const custom = m.customs[problem.resolved.shape.custom];
	return {
		heading: m.page.labelsOn({ name: person }),
		plates: platesOf(speech, writer),
		beside: besideRows(speech, writer),
		rules: ruleRows(speech, writer),
		notes: [
			`${custom.name}. ${custom.what}`,
			...(table === undefined ? [] : [`${jurisdictionName(m, table.jurisdiction)}: ${table.title}.`]),
			...(practice === undefined ? [] : [`${practice.title}. ${m.page.practiceNotLaw}`])
		]
	};
}

/** @returns an item after the end: with key and diagnosis. */
export function toldItem(result: ItemResult, language: Language, units: Scenario['units'], m: Messages): ToldItem {
	const drawn = drawItem(result.item);
	const { right, unsafe } = result.outcome;
	const common = { id: result.item.id, right, unsafe };
	if (drawn.kind === 'picture' && result.kind === 'picture') {
		const formats = formatsFor(units, language);
		const words = findingWords(m, drawn.picture.shown, formats);
		const told = findingExplanation(m, drawn.picture, result.grades, formats);
		return { ...common, title: words.title, parts: [], picture: { shown: drawn.picture.shown, words, told }, again: null };
	}
	if (drawn.kind !== 'site' || result.kind !== 'site') throw new Error(`The item ${result.item.id} is drawn otherwise than it was answered`);
	const { scenario, seed } = drawn.problem;
	return {
		...common,
		title: storyOf(drawn.problem, language).title,
		parts: toldParts({ problem: drawn.problem, language, m }, drawn.asks, result),
		picture: null,
		again: { scenario: scenario.id, seed }
	};
}

function toldParts(speech: Speech, asks: readonly Ask[], { answer, grades }: Extract<ItemResult, { kind: 'site' }>): ToldItem['parts'] {
	const { m, problem } = speech;
	const writer = writerFor(problem.scenario, speech.language);
	const names = askParts(speech);
	return asks.flatMap((ask) => {
		const grade = grades[ask.id];
		if (ask.kind === 'decision') {
			if (grade?.kind !== 'decision') return [];
			const { decision } = m.verdict;
			return [{ name: m.decision.question({ name: names.name }), yours: decision[grade.decision], right: decision[grade.right], lines: [tellDecision(speech, grade)] }];
		}
		if (grade?.kind !== 'number') return [];
		const told = tellNumber(speech, writer, ask, grade, undefined);
		const given = answer.answers[ask.id];
		return [
			{
				name: askText(speech, ask).question(names),
				yours: given?.kind === 'number' ? (grade.read === undefined ? given.text : echoQuantity(grade.read, speech.language)) : m.decision.notStated,
				right: grade.right === undefined ? m.decision.notStated : writer.quantity(ask.quantity, grade.right),
				lines: [told.heading, ...told.lines]
			}
		];
	});
}

/** @returns the items of the page at hand as they are shown. */
export function shownPage(view: CheckView, units: Scenario['units'], m: Messages): readonly ShownItem[] {
	return view.items.map((item) => shownItem(item, view.answers[item.item.id], view.language, units, m));
}
