/** The learner's own copy of the record, and the line on the start page when retraining is ordered. */
export const ownRecord = {
	title: 'My training record',
	lead: ({ employer }: { employer: string }) => `Your own copy of what ${employer} keeps about your training. You can print it.`,
	link: 'My training record',
	back: 'Back to the course',
	print: 'Copy made on',

	standingHeading: 'Today',
	states: { current: 'current', 'expires-soon': 'expires soon', expired: 'expired', 'in-training': 'in training', never: 'not begun' },
	until: ({ day }: { day: string }) => `Valid until ${day}, the whole day.`,
	noEnd: 'No fixed end.',
	nothing: 'No training on record yet.',

	orderedHeading: 'Retraining is ordered',
	ordered: ({ day }: { day: string }) => `Retraining is ordered. Finish by ${day}.`,
	orderedLate: ({ day }: { day: string }) => `Retraining is ordered. It was due on ${day}.`,
	orderedHow: 'The lessons and the final check are open again. Then a trainer signs the hands-on part.',
	why: ({ reason }: { reason: string }) => `Reason: ${reason}.`,
	reasons: {
		expiry: 'your training runs out',
		'change-of-work': 'your work or site changes',
		'change-of-gear-or-system': 'your gear or system changes',
		'seen-inadequate': 'someone saw that more practice is needed',
		incident: 'there was an incident',
		'yearly-review': 'yearly review'
	},

	theoryTitle: 'Record of theory training',
	wholeTitle: 'Record of training',
	priorTitle: 'Training from before',
	rows: {
		person: 'Name',
		number: 'Number',
		employer: 'Employer',
		course: 'Course',
		scope: 'System',
		passed: 'Theory passed',
		rights: 'Final check',
		language: 'Language',
		validUntil: 'Valid until',
		supervision: 'Trainer at the check',
		signOff: 'Hands-on part',
		training: 'Training',
		trained: 'Given on',
		judged: 'Judged adequate on',
		signer: 'Signed by',
		place: 'In the chain'
	},
	course: ({ title, version }: { title: string; version: string }) => `${title}, version ${version}`,
	rights: ({ right, asked }: { right: string; asked: string }) => `${right} of ${asked} right`,
	supervised: 'a trainer was present',
	alone: 'no trainer was present',
	missing: 'missing: a trainer signs what you can do with your hands',
	revoked: ({ day }: { day: string }) => `Taken back on ${day}. It counts no more.`,
	past: 'From before the last order. It stays on record.',
	capacities: { 'competent-person': 'competent person', 'qualified-person': 'qualified person', employer: 'for the employer' },
	erased: 'identity erased',
	notKnown: 'not known',
	entry: ({ n }: { n: string }) => `entry ${n}`,

	notCovered: 'Not covered',
	certificate: 'Certificate (PDF)',
	credential: 'Signed credential',

	acknowledgeHeading: 'Do you confirm it?',
	/** Word for word what is kept when the learner confirms. */
	acknowledge: 'I had this training. I know what it covers, and what it does not.',
	acknowledgeNote: 'You need not confirm. Your training counts all the same.',
	acknowledgeButton: 'Confirm',
	acknowledged: ({ day }: { day: string }) => `You confirmed it on ${day}.`,
	acknowledgedNow: 'Confirmed. It is on record.',
	notThere: 'This record is not there any more. Nothing was confirmed.',

	chainHeading: 'How to see that nothing was changed',
	chain: ({ n }: { n: string }) => `When this copy was made, the chain of records ended with entry ${n}. Its fingerprint (SHA-256):`,
	chainClaim: 'Changes after the last checkpoint handed out can be detected.'
};
