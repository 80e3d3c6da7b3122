/** What is printed on a certificate, and said in a credential. */
import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

export const certificate = {
	title: 'Certificate',
	/** By what the record is; until the hands-on part is signed it is no certificate. */
	headings: { whole: 'Certificate of training', theory: 'Record of theory training', prior: 'Record of training from before, judged adequate' },
	/** Under the name. */
	said: {
		whole: 'passed the final check of this course, and did the hands-on part in front of a trainer.',
		theory: 'passed the final check of this course. The hands-on part is not signed yet.',
		prior: 'was trained elsewhere or earlier. The employer judged that training adequate.'
	},
	/** Large, across the sheet. */
	across: { revoked: 'REVOKED', theory: 'THEORY ONLY', expired: 'EXPIRED' },
	erased: 'Identity erased',
	number: ({ number }: { number: string }) => `Personal number ${number}`,
	/** Where the name was another at the time. */
	before: ({ name }: { name: string }) => `At that time: ${name}`,

	rows: {
		employer: 'Employer',
		course: 'Course',
		training: 'Training',
		provider: 'Approved provider',
		programme: 'Approved programme',
		scope: 'System',
		subjects: 'Subjects',
		notCovered: 'Not covered',
		tables: 'Rule and practice tables',
		language: 'Language',
		dates: 'Started, finished',
		trained: 'Day of training',
		judged: 'Judged adequate on',
		check: 'Final check',
		passRule: 'Pass rule',
		rates: 'How often it passes',
		present: 'Trainer present',
		handsOn: 'Hands-on part',
		basis: 'Basis',
		valid: 'Valid until',
		document: 'Proof seen (SHA-256)',
		revoked: 'Revoked'
	},
	courseVersion: ({ course, n }: { course: string; n: number }) => `${course}, version ${String(n)}`,
	reviews: { original: 'words as first written', reviewed: 'words reviewed', draft: 'words not yet reviewed by somebody of the trade' },
	languageState: ({ language, state }: { language: string; state: string }) => `${language}, ${state}`,
	fromTo: ({ from, to, zone }: { from: string; to: string; zone: string }) => `${from}; ${to} (${zone})`,
	result: ({ right, asked, unsafe, tries }: { right: number; asked: number; unsafe: number; tries: number }) =>
		`${String(right)} of ${plural(asked, { one: '1 answer right', other: `${String(asked)} answers right` })}, ${String(unsafe)} on the unsafe side; ${tries === 1 ? 'first try' : `try ${String(tries)}`}`,
	rule: ({ rule, n, mark }: { rule: string; n: number; mark: string }) => `${rule}, version ${String(n)}. ${mark}`,
	marks: { provisional: 'Its pass mark is provisional.', judged: 'Judges set its pass mark.' },
	rates: ({ list }: { list: string }) => `Of 100 workers each, one of the tries allowed is passed: ${list}`,
	rate: ({ right, passes }: { right: string; passes: string }) => `right ${right} in 100: ${passes}`,
	present: ({ name, how, place }: { name: string; how: string; place: string }) => `At ${place}: ${name}. The worker was known by: ${how}`,
	nobodyPresent: 'Nobody. The final check was taken alone.',
	handsOn: ({ day, place }: { day: string; place: string }) => `${day}, ${place}: all five checks were seen`,
	handsOnMissing: 'Not signed yet',
	basis: { own: 'Own training', prior: 'Training from before or elsewhere' },
	dayUnknown: 'Not known',
	noDocument: 'None',
	noEnd: 'No fixed end',
	by: { law: 'by law', employer: 'by the employer’s rule', 'nothing-fixed': 'nothing fixed' },
	validUntil: ({ day, by }: { day: string; by: string }) => `${day}, ${by}`,
	revokedOn: ({ day }: { day: string }) => `On ${day}. It counts no more.`,

	capacities: { 'competent-person': 'competent person', 'qualified-person': 'qualified person', employer: 'employer' },
	signedAs: ({ as, day }: { as: string; day: string }) => `Signed electronically on ${day} as ${as}.`,
	signatureOf: ({ hash }: { hash: string }) => `Over the record ${hash}`,
	toSign: 'Trainer or employer, by hand',

	verify: 'Is this still true? Scan it, or open',
	codeIs: 'and type in the code',
	qr: ({ address }: { address: string }) => `QR code that leads to ${address}`,
	tape: 'A tape, drawn as an ornament',
	chain: ({ entry, head, count }: { entry: string; head: string; count: string }) => `Entry ${entry} of the employer’s records, which had ${count} entries when this was printed on ${head}.`,
	entryHash: ({ hash }: { hash: string }) => `Hash of the entry: ${hash}`,
	headHash: ({ hash }: { hash: string }) => `Hash of the last entry: ${hash}`,
	claim: 'Changes after the last checkpoint handed out can be detected.',
	noProof: 'This is no proof of an approved programme. It is no proof of practical training where the law asks for that.',

	/* In the open credential. */
	criteria: 'The final check of the course was passed. Numbers on the unsafe side were counted apart.',
	criteriaWhole: 'The final check of the course was passed. A trainer saw the hands-on part and signed for it.',
	score: 'Right answers in the final check',
	evidenceCheck: 'Final check',
	evidenceAlone: ({ asked, digest }: { asked: number; digest: string }) => `${String(asked)} questions, with nobody present. SHA-256 of the answers: ${digest}`,
	evidencePresent: ({ asked, digest }: { asked: number; digest: string }) => `${String(asked)} questions, with a trainer present. SHA-256 of the answers: ${digest}`,
	evidenceHandsOn: 'Hands-on part',
	evidenceSigned: ({ as, day, hash }: { as: string; day: string; hash: string }) => `Signed on ${day} by a ${as}. SHA-256 of what was signed: ${hash}`,
	evidenceChain: 'Entry of the employer’s records',
	evidenceEntry: ({ entry, hash }: { entry: string; hash: string }) => `Entry ${entry}, hash ${hash}. Changes after the last checkpoint handed out can be detected.`
};
