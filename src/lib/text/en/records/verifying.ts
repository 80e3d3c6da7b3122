/** The public pages on which anybody can see whether a certificate or a credential holds. */
export const verifying = {
	title: 'Check a certificate',
	lead: 'Type in the code of the paper, or paste a credential. You see whether it still holds.',

	/* Giving it. */
	given: 'Code or credential',
	givenHint: 'The code stands under the square on the paper. Spaces do not matter, capital letters do.',
	file: 'Or a file with the credential',
	fileHint: 'A text file, at most 20 kB.',
	checkButton: 'Check it',
	problems: {
		missing: 'Type in a code, or paste a credential.',
		'too-long': 'This is too long for a credential. Choose another file or text.',
		'no-code': 'This is no code and no credential. A code has 22 signs.'
	},

	/* A certificate. */
	standing: {
		valid: 'Valid',
		'theory-only': 'Theory only',
		expired: 'Expired',
		revoked: 'Revoked',
		unknown: 'Unknown'
	},
	means: {
		valid: 'This training was recorded and counts today.',
		'theory-only': 'The theory was passed. The hands-on part is not signed.',
		expired: 'This training was recorded. It does not count any more.',
		revoked: 'The employer took this record back. It does not count.',
		unknown: 'No certificate has this code. Compare it with the paper, letter by letter.'
	},
	since: ({ day }: { day: string }) => `Revoked since ${day}`,
	rows: { course: 'Course', training: 'Training', scope: 'System', day: 'Day', until: 'Valid until', employer: 'Employer', person: 'Person', from: 'Valid from', what: 'Credential' },
	noEnd: 'No fixed end',
	erased: 'Identity erased',
	caution: 'This says what was recorded. It does not say who holds the paper. It allows no work.',

	/* The name. */
	nameHeading: 'Is it the right person?',
	name: 'Name on the paper',
	nameHint: 'Accents and the order of the names do not matter.',
	nameButton: 'Compare the name',
	fits: 'The name fits this certificate.',
	differs: 'The name does not fit this certificate.',
	nameGone: 'The name was erased. There is nothing left to compare.',
	wait: ({ count }: { count: number }) => (count === 1 ? 'Try again in 1 second.' : `Try again in ${String(count)} seconds.`),
	waitLong: 'Too many names were tried from here. Ask the employer.',
	other: 'Check another one',

	/* A credential. */
	credential: {
		holds: 'The credential holds',
		'not-readable': 'This is no credential',
		'not-ours': 'Not one of ours',
		'wrong-key': 'Signed with a wrong key',
		changed: 'Changed after it was signed',
		'not-yet-valid': 'Not yet valid',
		expired: 'Expired',
		revoked: 'Revoked'
	},
	credentialMeans: {
		holds: 'It was signed here, nothing in it was changed, and it counts today.',
		'not-readable': 'The text is not whole, or it is something else.',
		'not-ours': 'Nobody on this server has issued it. It may be good elsewhere.',
		'wrong-key': 'It says that it comes from here. The key that signed it is none of ours.',
		changed: 'Its text and its signature do not belong together. Do not rely on it.',
		'not-yet-valid': 'Its first day is still to come.',
		expired: 'Its last day is over, or new training was ordered.',
		revoked: 'The employer took it back. It does not count.'
	}
};
