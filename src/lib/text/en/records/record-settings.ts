/** How long training counts, when its end is soon, and how long names are kept. */
export const recordSettings = {
	title: 'Settings of records',
	lead: 'They hold from now on. What was passed before keeps the end that it has.',
	link: 'How long training is valid, and how long names are kept',
	back: 'Back to the settings',
	validityHeading: 'How long training is valid',
	months: 'Valid for (months)',
	monthsHint: 'Only to be stricter than the law. Leave it empty for no period of your own.',
	soonHeading: 'When the end is soon',
	soonDays: 'Expires soon means within (days)',
	soonDaysHint: 'From 1 to 365.',
	keepHeading: 'Names of people who left',
	keepMonths: 'Forget the name after (months)',
	keepMonthsHint: 'Counted from the day they left, 12 at least. Leave it empty to keep names for good. The record stays, without the name.',
	keepLaw: 'Some laws ask to keep records for years after someone leaves. Look up yours before you choose.',
	save: 'Save',
	saved: 'Saved.',
	problems: {
		'bad-months': 'Give a whole number of months from 1 to 120, or leave it empty.',
		'not-stricter': 'The law here is stricter than this. Give fewer months, or leave it empty.',
		'bad-days': 'Give a whole number of days from 1 to 365.',
		'bad-keep': 'Give a whole number of months from 12 to 600, or leave it empty.'
	}
};
