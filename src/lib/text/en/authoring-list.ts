/** The list of an organisation's scenarios, and bringing one in from a file. */
export const authoringList = {
	lead: 'A scenario is a site with its story. Each problem drawn from it has other numbers.',
	gone: 'The draft is gone, and the scenario with it.',

	ownHeading: 'Your own scenarios',
	none: 'There is none yet. Make a new one, or copy one of the course.',
	untitled: 'Without a title',
	unpublished: 'Draft, not published yet',
	published: ({ version }: { version: string }) => `Version ${version} is published`,
	changed: ({ version }: { version: string }) => `Version ${version} is published, the draft goes further`,
	retired: 'Taken out of use',
	by: ({ name, day }: { name: string; day: string }) => `Made by ${name}, changed on ${day}`,
	/** Of a scenario that the reader may only look at. */
	notYours: 'You can look at it and copy it.',

	makeHeading: 'Make a new one',
	makeLead: 'You begin with a plain site that works. Change it bit by bit until it is yours.',
	makeButton: 'Make a new scenario',

	shippedHeading: 'Scenarios of the course',
	shippedLead: 'Take a copy and change it. The course keeps its own.',
	/** What stands under a title: the site of the drawing and the units. */
	site: ({ site, units }: { site: string; units: string }) => `${site}, ${units}`,
	unitsOf: { metric: 'metres', 'us-decimal': 'feet with decimals', 'us-inch': 'feet and inches' },
	copy: 'Copy',
	copyOf: ({ title }: { title: string }) => `Copy: ${title}`,
	file: 'Save as a file',
	fileOf: ({ title }: { title: string }) => `Save as a file: ${title}`,

	full: ({ most }: { most: string }) => `Your organisation has ${most} scenarios. More there cannot be. Throw drafts away that nobody needs.`
};

export const authoringImport = {
	heading: 'Bring one in from a file',
	lead: 'Take a file that was saved here, or by the same program elsewhere. It comes in as a draft of yours.',
	file: 'File',
	fileHint: 'One scenario as JSON, at most 64 kB.',
	paste: 'Or its text',
	button: 'Bring it in',

	refused: 'Nothing was brought in.',
	why: {
		empty: 'There is no file and no text. Choose a file, or paste its text.',
		'too-long': 'It is far too long for a scenario. Take a file that holds one scenario.',
		'not-utf-8': 'The signs of the file cannot be read. Save it as UTF-8 and try again.',
		'not-json': 'This is not JSON. Take the file as it was saved, or mend it at the place named below.',
		'not-one': 'This is JSON, but no scenario. Take a file that holds one scenario.',
		form: 'The form of the file cannot be trusted. Mend it at the field named below.',
		fields: 'Some fields do not fit. Mend them in the text, or take another file.'
	},
	/** Over the problems, which are told in English. */
	problemsHeading: 'What does not fit',
	problemsLead: 'The names are those of the fields in the file.',
	mended: 'The text stands below. You can mend it there.'
};
