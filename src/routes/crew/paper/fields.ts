/** The fields of a problem that is typed in from paper. */
import type { Ask } from '#lib/scenario/index.ts';
import { askParts, askText, type Speech } from '../../learn/problem/model/names.ts';
import { answerUnit } from '../../learn/problem/model/writing.ts';

/** One ask as it is typed in. */
export type Field =
	| { readonly kind: 'number'; readonly ask: string; readonly label: string; readonly hint: string; readonly unit: string; readonly wordy: boolean; readonly canBeUnstated: boolean }
	| { readonly kind: 'decision'; readonly ask: string; readonly label: string };

export function fieldsOf(speech: Speech, asks: readonly Ask[]): readonly Field[] {
	const { m, problem, language } = speech;
	const { scenario } = problem;
	const parts = askParts(speech);
	return asks.map((ask): Field => {
		if (ask.kind === 'decision') return { kind: 'decision', ask: ask.id, label: m.decision.question({ name: parts.name }) };
		const text = askText(speech, ask);
		return {
			kind: 'number',
			ask: ask.id,
			label: text.question(parts),
			hint: text.help(parts),
			unit: answerUnit(scenario, ask, language),
			wordy: scenario.units === 'us-inch',
			canBeUnstated: ask.quantity === 'requiredClearance'
		};
	});
}
