/** What an open credential says in words: in the language of the training. No name stands in it but the employer's. */
import type { CredentialWords, ToTell } from '#lib/server/index.ts';
import type { Messages, RecordMessages } from '#lib/text/index.ts';
import { dayText } from '../day-text.ts';
import { courseName, scopeName } from './record-names.ts';

/** @returns a credential's words. @param m messages of the language of the training, as `record` are */
export function credentialWords(m: Messages, { certificate: c }: RecordMessages, { entry, signOff, seq, hash }: ToTell): CredentialWords {
	const { language, asked, digest } = entry;
	const course = courseName(m, entry.course.id);
	const name = signOff === undefined ? c.headings.theory : c.headings.whole;
	const check = entry.supervised === null ? c.evidenceAlone({ asked, digest }) : c.evidencePresent({ asked, digest });
	const signed =
		signOff === undefined
			? []
			: [
					{
						name: c.evidenceHandsOn,
						narrative: c.evidenceSigned({ as: c.capacities[signOff.signature.capacity], day: dayText(signOff.record.day, language), hash: signOff.signature.record })
					}
				];
	return {
		name: `${name}: ${course}`,
		language,
		achievement: {
			name: `${name}: ${course}`,
			description: `${scopeName(m, entry.course.scope)}. ${c.noProof}`,
			criteria: signOff === undefined ? c.criteria : c.criteriaWhole
		},
		score: c.score,
		evidence: [
			{ name: c.evidenceCheck, narrative: check },
			...signed,
			{ name: c.evidenceChain, narrative: c.evidenceEntry({ entry: String(seq), hash }) }
		]
	};
}
