/** Forgetting a name: what goes, what stays, and when it may be. */
import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

export const forgetting = {
	title: 'Forget a name',
	back: 'Back to the record',
	whatHeading: 'What this does',
	what: [
		'Name, former names, number and e-mail are taken out of the data.',
		'The person is signed out and is on no list any more.',
		'The record stays, and the chain still holds. In place of the name it says “identity erased”.',
		'Certificates that were handed out say so too when they are looked up.',
		'It cannot be taken back.'
	],
	notHeading: 'What this does not reach',
	not: [
		'Backups and files from before still hold the name. Delete them when their time is over.',
		'What was signed stays as it was written: the place, and how somebody was identified.'
	],
	nowHeading: 'May it be forgotten now?',
	allowed: 'Yes. Nothing that has to be kept needs this name.',
	stillThere: 'No. This person is still there. Mark on the record that they have left, then come back here.',
	keptFor: ({ count }: { count: number }) => plural(count, { one: 'The latest certification is kept with its name for 1 month after leaving.', other: `The latest certification is kept with its name for ${String(count)} months after leaving.` }),
	certification: ({ day }: { day: string }) => `Not all of it. The latest certification has to be kept with its name. From ${day} on the name can be forgotten.`,
	signed: 'Not all of it. This person signed records of others. The name is kept as long as one of those people has a name here.',
	goesNow: 'What goes now: PIN or password, e-mail, language, crews, and former names that no kept record shows.',
	staysNow: 'What stays for now: the name and the number.',
	before: ({ day }: { day: string }) => `This name was forgotten on ${day}.`,
	formHeading: 'Confirm',
	reason: 'Why',
	reasons: { 'asked-for': 'The person asked for it', 'kept-long-enough': 'It was kept long enough' },
	number: 'Personal number of this person',
	name: 'Name of this person',
	typeIt: ({ what }: { what: string }) => `Type ${what}, so that nobody else is meant.`,
	forgetButton: 'Forget this name',
	reduceButton: 'Take out all but the name',
	refuseButton: 'Note that it was refused',
	refuseLead: 'You can note in the log that it was asked for and refused.',
	problems: { 'not-meant': 'This is not the person of this page.', missing: 'Fill this in.', 'not-listed': 'Choose one of the list.' },
	problemsTitle: 'Nothing was done. Look at the marked fields.',
	forgotten: 'The name is forgotten.',
	reduced: 'All but the name is taken out. The log says what was kept and why.',
	refused: 'Noted: it was asked for and refused. Nothing was taken out.'
};
