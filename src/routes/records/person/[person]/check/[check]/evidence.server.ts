/** One question of a check as evidence: where it came from, what was drawn, what was answered, what is right. */
import type { Scenario } from '#lib/scenario/index.ts';
import { storyOf } from '#lib/scenario/index.ts';
import { findingWords } from '#lib/scene/index.ts';
import { drawItem, type DrawnItem, type ItemResult } from '#lib/server/index.ts';
import type { Messages } from '#lib/text/index.ts';
import { formatsFor, toldItem } from '../../../../../learn/check/[lesson]/shown.server.ts';
import { allGivens } from '../../../../../learn/problem/model/plates.ts';
import { writerFor } from '../../../../../learn/problem/model/writing.ts';

/** A question of a check, in words. */
export interface EvidenceItem {
	readonly id: string;
	readonly title: string;
	/** Id of the task. */
	readonly task: string;
	/** Id and version of what was drawn. */
	readonly source: { readonly id: string; readonly version: string };
	readonly seed: string;
	readonly side: 'right' | 'wrong' | 'unsafe';
	/** What was drawn, in words; null where it cannot be drawn any more. */
	readonly drawn: readonly { readonly name: string; readonly value: string }[] | null;
	readonly parts: readonly { readonly name: string; readonly answered: string; readonly right: string }[];
	/** What probably went wrong; empty unless it was asked for. */
	readonly slips: readonly string[];
}

/** Words, and how much is told. */
export interface EvidenceSpeech {
	readonly language: 'en' | 'es';
	/** Of pictures: the organisation's. */
	readonly units: Scenario['units'];
	readonly m: Messages;
	/** Whether slips are told. */
	readonly why: boolean;
}

/** @returns an item as it is drawn; undefined for one of a task or scenario that is not kept any more. */
function drawnAgain(result: ItemResult): DrawnItem | undefined {
	try {
		return drawItem(result.item);
	} catch (error) {
		if (error instanceof RangeError) return undefined;
		throw error;
	}
}

/** @returns an answered item as evidence. */
export function evidenceOf(result: ItemResult, speech: EvidenceSpeech): EvidenceItem {
	const { origin } = result.evidence;
	const { right, unsafe } = result.outcome;
	const common = {
		id: result.item.id,
		task: result.item.task,
		source: { id: String(origin['scenario'] ?? origin['picture'] ?? ''), version: String(origin['version'] ?? '') },
		seed: String(origin['seed'] ?? ''),
		side: right ? ('right' as const) : unsafe ? ('unsafe' as const) : ('wrong' as const)
	};
	const drawn = drawnAgain(result);
	if (drawn?.kind === 'site' && result.kind === 'site') return { ...common, ...site(drawn, result, speech) };
	if (drawn?.kind === 'picture' && result.kind === 'picture') return { ...common, ...picture(drawn, result, speech) };
	return { ...common, title: result.item.task, drawn: null, parts: [], slips: [] };
}

type Told = Pick<EvidenceItem, 'title' | 'drawn' | 'parts' | 'slips'>;

function site(drawn: Extract<DrawnItem, { kind: 'site' }>, result: ItemResult, { language, units, m, why }: EvidenceSpeech): Told {
	const { problem } = drawn;
	const givens = allGivens({ problem, language, m }, writerFor(problem.scenario, language));
	const { parts } = toldItem(result, language, units, m);
	return {
		title: storyOf(problem, language).title,
		drawn: givens.map(({ name, value }) => ({ name, value })),
		parts: parts.map(({ name, yours, right }) => ({ name, answered: yours, right })),
		slips: why && !result.outcome.right ? parts.flatMap(({ lines }) => lines) : []
	};
}

function picture({ picture: one }: Extract<DrawnItem, { kind: 'picture' }>, result: Extract<ItemResult, { kind: 'picture' }>, { language, units, m, why }: EvidenceSpeech): Told {
	const words = findingWords(m, one.shown, formatsFor(units, language));
	const t = { nothing: m.checkPage.markedNothing };
	const marks = (ids: readonly string[]): string => (ids.length === 0 ? t.nothing : ids.map((id) => words.parts[id]?.name ?? id).join(', '));
	const told = why && !result.outcome.right ? toldItem(result, language, units, m).picture?.told : undefined;
	return {
		title: words.title,
		drawn: one.shown.parts.map(({ id }) => ({ name: words.parts[id]?.name ?? id, value: words.parts[id]?.see ?? '' })),
		parts: [
			{ name: words.ask, answered: marks(result.answer.marked), right: marks(one.key.marks) },
			{ name: words.choose, answered: words.choices[result.answer.choice] ?? t.nothing, right: words.choices[one.key.choice] ?? '' }
		],
		slips: told === undefined ? [] : [...told.summary, ...told.notes.filter(({ state }) => state === 'missed' || state === 'extra').map(({ name, why: reason }) => `${name}: ${reason}`)]
	};
}
