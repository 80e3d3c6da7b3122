/** What a record is no proof of under the law that it was made under, in words. */
import type { TrainingRecord } from '#lib/records/index.ts';
import { recordLaw } from '#lib/rules/index.ts';
import type { RecordMessages } from '#lib/text/index.ts';

/**
 * @param rules rule table of the organisation today: the law for training from elsewhere, whose record names no table
 * @returns a sentence for each thing that this law asks for beside; none where it asks for nothing more
 */
export function noProofTexts({ entry }: Pick<TrainingRecord, 'entry'>, rules: string, words: RecordMessages['recordLaw']): readonly string[] {
	const law = recordLaw(entry.kind === 'completed' ? entry.rules : rules);
	return law?.notProofOf.map(({ what }) => words.notProofOf[what]) ?? [];
}
