/** A certificate in words: what the chain says of a record, as it is printed. */
import { NO_END, type EntryOf } from '#lib/records/index.ts';
import type { CertificateRow, PrintedCertificate } from '#lib/paper/index.ts';
import { baseOf, qrCode, type CertificateFacts } from '#lib/server/index.ts';
import { languageInfo, type Messages, type RecordMessages } from '#lib/text/index.ts';
import { dayText } from '../day-text.ts';
import { ofHundred, ruleName } from '../rule-words.ts';
import { courseName, lessonName, notCoveredName, scopeName, tableNames } from './record-names.ts';

/** Words and their language. */
export interface CertificateWords {
	readonly m: Messages;
	readonly record: RecordMessages;
	readonly language: 'en' | 'es';
}

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

function momentText(instant: string, zone: string, language: 'en' | 'es'): string {
	return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short', timeZone: zone }).format(new Date(instant));
}

/** What a record is called: no certificate before the hands-on part is signed. */
export function headingOf({ training }: Pick<CertificateFacts, 'training'>): 'whole' | 'theory' | 'prior' {
	if (training.entry.kind === 'prior-training') return 'prior';
	return training.signOff === undefined ? 'theory' : 'whole';
}

function validRow({ until, training }: CertificateFacts, { record: { certificate: c }, language }: CertificateWords): CertificateRow {
	const { entry } = training;
	const by = entry.kind === 'completed' ? c.by[entry.validity.by] : c.by.employer;
	return { name: c.rows.valid, value: until === NO_END ? c.noEnd : c.validUntil({ day: dayText(until, language), by }) };
}

function ratesText(entry: EntryOf<'completed'>, { m, record: { certificate: c }, language }: CertificateWords): string {
	const number = new Intl.NumberFormat(language, { maximumFractionDigits: 0 });
	const list = entry.passRule.rates.map(({ right, allowedTries }) => c.rate({ right: number.format(100 * right), passes: ofHundred(m, language, allowedTries) }));
	return c.rates({ list: list.join('; ') });
}

function completedRows(entry: EntryOf<'completed'>, facts: CertificateFacts, words: CertificateWords): readonly CertificateRow[] {
	const { m, record, language } = words;
	const c = record.certificate;
	const { passRule: rule, supervised } = entry;
	const base = baseOf(rule.id);
	const signed = facts.training.signOff?.entry.record;
	const present = supervised === null ? c.nobodyPresent : c.present({ name: facts.present ?? c.erased, how: supervised.identified, place: supervised.place });
	return [
		{ name: c.rows.course, value: c.courseVersion({ course: courseName(m, entry.course.id), n: entry.course.version }) },
		{ name: c.rows.scope, value: scopeName(m, entry.course.scope) },
		{ name: c.rows.subjects, value: entry.course.lessons.map((one) => lessonName(m, one)).join('; '), small: true },
		{ name: c.rows.notCovered, value: entry.course.notCovered.map((one) => notCoveredName(m, one)).join('; '), small: true },
		{ name: c.rows.tables, value: tableNames(m, entry.rules, entry.practice) },
		{ name: c.rows.language, value: c.languageState({ language: languageInfo(entry.language).name, state: c.reviews[entry.languageState] }) },
		{ name: c.rows.dates, value: c.fromTo({ from: momentText(entry.startedAt, entry.zone, language), to: momentText(entry.endedAt, entry.zone, language), zone: entry.zone }) },
		{ name: c.rows.check, value: c.result(entry) },
		{ name: c.rows.passRule, value: c.rule({ rule: ruleName(m, { base, own: base !== rule.id }), n: rule.version, mark: rule.provisional ? c.marks.provisional : c.marks.judged }) },
		...(rule.rates.length === 0 ? [] : [{ name: c.rows.rates, value: ratesText(entry, words), small: true }]),
		{ name: c.rows.present, value: present },
		{ name: c.rows.handsOn, value: signed === undefined ? c.handsOnMissing : c.handsOn({ day: dayText(signed.day, language), place: signed.place }) },
		{ name: c.rows.basis, value: c.basis.own }
	];
}

function priorRows({ record }: EntryOf<'prior-training'>, { m, record: { certificate: c }, language }: CertificateWords): readonly CertificateRow[] {
	return [
		{ name: c.rows.training, value: record.training },
		{ name: c.rows.scope, value: scopeName(m, record.scope) },
		{ name: c.rows.trained, value: record.trainedDay === null ? c.dayUnknown : dayText(record.trainedDay, language) },
		{ name: c.rows.judged, value: dayText(record.judgedDay, language) },
		{ name: c.rows.document, value: record.document ?? c.noDocument, small: record.document !== null },
		{ name: c.rows.basis, value: c.basis.prior }
	];
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
	const kind = headingOf(facts);
	const count = new Intl.NumberFormat(language);
	const address = verifyAddress(origin, code);
	return {
		heading: c.headings[kind],
		name: person?.name ?? c.erased,
		known: [...(person?.number ? [c.number({ number: person.number })] : []), ...(before === null ? [] : [c.before({ name: before.name })])],
		said: c.said[kind],
		rows: [
			{ name: c.rows.employer, value: facts.employer },
			...(entry.kind === 'completed' ? completedRows(entry, facts, words) : priorRows(entry, words)),
			validRow(facts, words),
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
			c.noProof,
			m.verdict.caution
		]
	};
}
