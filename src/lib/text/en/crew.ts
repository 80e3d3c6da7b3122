/** Joining a crew, and the pages of those who keep crews. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const join = {
	title: 'Join your crew',
	lead: 'Your trainer has the code of your crew.',
	code: 'Crew code',
	codeHint: 'Eight letters and digits.',
	name: 'Your name',
	nameHint: 'First and last name, as your employer writes them.',
	goOn: 'Go on',
	notOnList: 'No crew has this code, this name and this number on one list. Check all three, or ask your trainer to add you.',
	joinedBefore: 'Joined before? Sign in',
	pinTitle: 'Choose your PIN',
	pinLead: 'You are on the list. From now on you sign in with your number and this PIN.',
	/** Over who is joining. */
	joining: 'Joining as',
	pin: 'PIN',
	pinHint: 'Six digits that nobody guesses: no row, no number twice over, not your own number.',
	again: 'The same PIN once more',
	joinButton: 'Join',
	other: 'This is not me',
	practised: 'What you practised on this device comes with you. It is shown as practice and counts for no check.',
	hasPinTitle: 'You have joined already',
	hasPinLead: 'Sign in with your number and your PIN. If you do not know the PIN any more, ask your trainer for a new one.',
	problems: {
		'not-six-digits': 'Write six digits.',
		weak: 'This PIN is too easy to guess. Mix the digits.',
		differs: 'This is not the same PIN.'
	}
};

export const crew = {
	title: 'Crews',
	lead: 'People join with the code of their crew.',
	context: 'Crews',
	all: 'All crews',
	none: 'There is no crew yet.',
	people: ({ count }: { count: number }) => plural(count, { one: '1 person', other: `${String(count)} people` }),
	trainersAre: ({ names }: { names: string }) => `Trainers: ${names}`,
	noTrainer: 'No trainer yet.',
	putAwayHeading: 'Crews put away',
	makeHeading: 'Make a crew',
	name: 'Name of the crew',
	makeButton: 'Make the crew',

	/* One crew. */
	code: 'Crew code',
	codeLead: ({ address }: { address: string }) => `People join at ${address} with this code, their name and their number.`,
	qr: 'QR code that opens the page for joining with this crew code',
	qrLead: 'Hold the camera of a phone at it to join.',
	isPutAway: 'This crew is put away. Nobody can join it.',
	listHeading: 'People',
	listCaption: 'Who is on the list of this crew',
	listNone: 'Nobody is on the list yet.',
	columns: { name: 'Name', number: 'Number', state: 'State', progress: 'Course' },
	states: {
		joined: 'has joined',
		'not-joined': 'has not joined yet',
		locked: 'locked after too many tries',
		'used-up': 'final check: tries used up, waits for you to unlock it',
		open: 'final check is open'
	},
	/** How far somebody is in the course. */
	progress: ({ passed, of }: { passed: number; of: number }) => `${String(passed)} of ${String(of)} lessons passed`,
	/** Much practice without being ready. */
	stuck: ({ lessons }: { lessons: string }) => `stuck at: ${lessons}`,
	notBegun: 'not begun',
	finished: 'final check passed',
	lastDay: ({ day }: { day: string }) => `last on ${day}`,
	handsOn: ({ day }: { day: string }) => `hands-on signed off for ${day}`,
	addHeading: 'Add a person',
	addLead: 'They join with this name and this number.',
	numberHint: 'The number your employer knows this person by.',
	personName: 'First and last name',
	addButton: 'Add',
	byList: 'Add many people by list',
	entered: ({ count }: { count: number }) => plural(count, { one: '1 person was added.', other: `${String(count)} people were added.` }),
	crewHeading: 'This crew',
	renameButton: 'Rename',
	putAway: 'Put this crew away',
	putAwayLead: 'Once put away, nobody can join it. People and records stay.',
	takeUp: 'Take this crew up again',
	trainersHeading: 'Trainers',
	trainersLead: 'Trainers see the crews they are in charge of, and no others.',
	trainer: 'Trainer',
	assignButton: 'Put in charge',
	release: 'Release',
	releaseOf: ({ name }: { name: string }) => `Release ${name}`,
	nobodyToAssign: 'There is no other trainer. Invite one on the page of the people.',

	/* One person. */
	close: 'Close',
	checkHeading: 'Open a supervised final check',
	checkLead: 'You are there while it is done. It counts as supervised if it ends within two hours.',
	place: 'Where',
	placeHint: 'Site and room. Write no names: this stays in the record.',
	identified: 'How you know who it is',
	identifiedHint: 'For example a badge with a photo, or that you know the person. Write no names: this stays in the record.',
	openButton: 'Open the final check',
	openUntil: ({ time, place }: { time: string; place: string }) => `Open until ${time}, ${place}.`,
	usedUpHeading: 'The tries at the final check are used up',
	usedUpLead: 'Practise with this person first. Then the check can be tried again.',
	unlockButton: 'Let them try again',
	pinHeading: 'New PIN',
	pinLead: 'The old PIN ends, on every device. The person joins again with the crew code and chooses a new one.',
	pinButton: 'Reset the PIN',
	moveHeading: 'Move to another crew',
	moveTo: 'Crew',
	moveButton: 'Move',
	offHeading: 'Take off this list',
	offLead: 'The person and all that was done stay with the organisation.',
	offButton: 'Take off the list',

	/* What was done. */
	done: {
		made: 'The crew is made. Add its people now.',
		renamed: 'The crew has its new name.',
		'put-away': 'The crew is put away.',
		'taken-up': 'The crew is taken up again.',
		added: 'The person is on the list and can join now.',
		moved: 'The person is in the other crew now.',
		'taken-off': 'The person is off this list.',
		'pin-reset': 'The PIN is reset. The person can join again now.',
		unlocked: 'The person can try the final check again.',
		opened: 'The final check is open for this person.',
		assigned: 'The trainer is in charge of this crew now.',
		released: 'The trainer is not in charge of this crew any more.'
	},
	problems: {
		'number-taken': 'Somebody else in your organisation has this number. Check the number and the name.',
		'on-list': 'This person is on the list already.',
		archived: 'This crew is put away. Take it up again first.',
		'not-used-up': 'There are tries left. Nothing needs to be unlocked.',
		'no-crew': 'Choose another crew.',
		'no-trainer': 'Choose a trainer.'
	}
};
