/** A certificate in words: what the chain says of a record, as it is printed. */
import type { PrintedCertificate } from '#lib/paper/index.ts';
import { qrCode, type CertificateFacts } from '#lib/server/index.ts';
import { dayText } from '../day-text.ts';
import { noProofTexts } from './no-proof.ts';
import { handsOnText, headingOf, priorRows, theoryRows, validRow, type CertificateWords } from './training-rows.ts';

/** Characters of a code that are read at once. */
const GROUP = 4;

/** @returns a code as it is read aloud and typed in. */
export function groupedCode(code: string): string {
	return (code.match(new RegExp(`.{1,${String(GROUP)}}`, 'g')) ?? []).join(' ');
}

/** @returns the address at which everybody can see whether a certificate still holds. */
export function verifyAddress(origin: string, code: string): string {
	return `${origin}/v/${code}`;
}

function signatureOf({ training, signer, signedOn }: CertificateFacts, { record: { certificate: c }, language }: CertificateWords): PrintedCertificate['signature'] {
	const { entry, signOff } = training;
	const signature = entry.kind === 'completed' ? signOff?.entry.signature : entry.signature;
	if (signature === undefined || signedOn === null) return { name: '', lines: [c.toSign] };
	return {
		name: signer ?? c.erased,
		lines: [c.signedAs({ as: c.capacities[signature.capacity], day: dayText(signedOn, language) }), signature.meaning, c.signatureOf({ hash: signature.record })]
	};
}

function acrossOf({ standing, training }: CertificateFacts, { record: { certificate: c } }: CertificateWords): string | null {
	if (standing === 'revoked') return c.across.revoked;
	if (standing === 'expired') return c.across.expired;
	return training.entry.kind === 'completed' && training.signOff === undefined ? c.across.theory : null;
}

/**
 * @param origin under which the certificate is checked
 * @returns the certificate in words
 */
export function certificateSheet(facts: CertificateFacts, words: CertificateWords, origin: string): PrintedCertificate {
	const { m, record, language } = words;
	const c = record.certificate;
	const { training, person, before, head, code } = facts;
	const { entry } = training;
	const kind = headingOf(training);
	const count = new Intl.NumberFormat(language);
	const address = verifyAddress(origin, code);
	return {
		heading: c.headings[kind],
		name: person?.name ?? c.erased,
		known: [...(person?.number ? [c.number({ number: person.number })] : []), ...(before === null ? [] : [c.before({ name: before.name })])],
		said: c.said[kind],
		rows: [
			{ name: c.rows.employer, value: facts.employer },
			...(entry.kind === 'completed' ? theoryRows(entry, { present: facts.present, handsOn: handsOnText(training.signOff, words) }, words) : priorRows(entry, words)),
			validRow(entry, facts.until, words),
			...(facts.revokedOn === null ? [] : [{ name: c.rows.revoked, value: c.revokedOn({ day: dayText(facts.revokedOn, language) }) }])
		],
		across: acrossOf(facts, words),
		signature: signatureOf(facts, words),
		qr: { ...qrCode(address), label: c.qr({ address }) },
		verify: [c.verify, `${origin}/v`, c.codeIs],
		code: groupedCode(code),
		foot: [
			c.chain({ entry: count.format(training.seq), head: dayText(facts.today, language), count: count.format(head.seq) }),
			c.entryHash({ hash: training.hash }),
			c.headHash({ hash: head.hash }),
			c.claim,
			...noProofTexts(training, facts.rules, record.recordLaw),
			c.noProof,
			m.verdict.caution
		]
	};
}
