/** The hands-on part: checks, place, day, signature. */
export const signOff = {
	title: 'Hands-on sign-off',
	back: 'Back to the crew',
	link: 'Sign off the hands-on part',
	lead: 'You saw this person do the work with real gear. Your signature says so.',
	theoryAgain: ({ day }: { day: string }) => `Retraining is ordered, due on ${day}. The final check is not passed again yet.`,
	retrainingDue: ({ day }: { day: string }) => `retraining due ${day}`,
	theoryNone: 'The final check of the theory is not passed yet.',
	theory: ({ day }: { day: string }) => `The final check of the theory was passed on ${day}, with a trainer present.`,
	theoryAlone: ({ day }: { day: string }) => `The final check of the theory was passed on ${day}. No trainer was present.`,
	beforeHeading: 'Signed off before',
	before: ({ day, place, name, as }: { day: string; place: string; name: string; as: string }) => `${day}, ${place}. Signed by ${name}, ${as}.`,
	broken: 'This record and its signature do not belong together any more.',
	/** Of a trainer whose name is forgotten. */
	erased: 'identity erased',
	revoked: 'This sign-off counts no more.',
	formHeading: 'What you saw',
	checksLead: 'Tick what this person did in front of you. All five are needed.',
	checks: {
		inspection: 'Inspected harness, lanyard and connectors before use, and put bad gear aside.',
		donning: 'Put the harness on and had it fit.',
		connecting: 'Connected to the D-ring and the anchorage, and checked each connector.',
		'anchorage-choice': 'Chose an anchorage on site and gave the reason.',
		'rescue-plan': 'Knows the rescue plan of this site: who comes, and with what.'
	},
	day: 'Day',
	dayHint: 'The day on which you saw it.',
	capacity: 'You sign as',
	capacities: { 'competent-person': 'competent person', 'qualified-person': 'qualified person' },
	capacityHint: 'As your employer has named you under the law that holds here.',
	readButton: 'Read what you sign',
	readHeading: 'You are about to sign',
	/** The meaning of the signature, kept word for word. No name of the learner stands in it. */
	meaning: ({ as, what }: { as: string; what: string }) =>
		`I was there. I saw this person do all five checks, on the day and at the place given here. It was about: ${what}. I sign as ${as}.`,
	readLead: 'Your signature cannot be taken back. A mistake is put right by a new one.',
	rows: { person: 'Person', checks: 'Seen', place: 'Place', day: 'Day', theory: 'Theory', hash: 'Record (SHA-256)', signer: 'Signed by' },
	password: 'Your password once more',
	signButton: 'Sign',
	change: 'Change something',
	done: 'The hands-on part is signed off.',
	problems: {
		'all-checks': 'Tick all five checks. What you did not see cannot be signed.',
		'no-day': 'Give the day.',
		'day-to-come': 'This day is still to come. Give the day on which you saw it.',
		'no-capacity': 'Choose as whom you sign.',
		changed: 'Something has changed since you read it. Read it again, then sign.',
		'wrong-password': 'This is not your password.',
		locked: 'Your account is locked after too many wrong passwords. Ask your employer to unlock it.'
	}
};
