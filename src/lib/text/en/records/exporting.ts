/** Records as files. */
export const exporting = {
	title: 'Exports',
	lead: 'Records as files, for an inspector or for other programs. Each download is noted in the log.',
	today: 'As it stands today',
	byDays: 'By days',
	byDaysLead: 'Leave both days empty for all of it.',
	from: 'First day',
	to: 'Last day',
	problems: {
		'not-a-day': 'Write year, month and day, as in 2026-03-14.',
		'ends-before': 'This day is before the first day.'
	},
	spreadsheet: 'For a spreadsheet program',
	spreadsheetDetail: 'A mark at the start of the file tells the program how letters with accents are written.',
	download: 'Download',
	files: {
		'people.csv': 'Everyone: crews, state today, and until when it is valid.',
		'completions.csv': 'Every completion and prior training, with all that their records hold and who signed.',
		'retraining.csv': 'Every order of retraining, and what became of it.',
		'answers.csv': 'Every answer of checks that ended: as it was typed, the right value, the grade.',
		'log.csv': 'Who did what, with all that was noted.',
		'everything.json': 'All records in one file, with the chain and its keys. Others can check it with programs of their own. It holds names: keep it well.'
	},
	guard: 'A text that a spreadsheet would take for a formula has an apostrophe before it.'
};
