/** The page of one person: records, tries, orders of retraining, history. */
import type { RevocationReason } from '#lib/records/index.ts';
import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

export const onePerson = {
	title: 'Training record of a person',
	back: 'Who is trained',
	number: 'Number',
	crews: 'Crews',
	noCrew: 'none',
	state: 'State',
	until: 'Valid until',
	leftOn: ({ day }: { day: string }) => `Has left: ${day}`,
	erasedOn: ({ day }: { day: string }) => `Identity erased on ${day}. The records stay.`,
	waysLabel: 'More about this person',
	data: 'All data of this person',
	prior: 'Enter training from before',
	forget: 'Forget the name',

	/* Records. */
	recordsHeading: 'Records',
	noRecords: 'There is no record yet. It comes when the final check is passed.',
	countsToday: 'This record counts today.',
	ranOut: ({ day }: { day: string }) => `This record counted until ${day}.`,
	instead: 'Another record counts in its place.',
	theoryOnly: 'Theory only, until the hands-on part is signed.',
	revokedOn: ({ day, reason }: { day: string; reason: string }) => `Revoked on ${day}: ${reason}. It counts no more.`,
	acknowledged: ({ day }: { day: string }) => `Confirmed by the worker on ${day}`,
	notAcknowledged: 'Not confirmed by the worker',
	employerAcknowledged: ({ name, day }: { name: string; day: string }) => `Confirmed by ${name} on ${day}`,
	notEmployerAcknowledged: 'Not confirmed by the employer',
	acknowledgeHeading: 'Confirm it for the employer',
	/** Word for word what is kept when the employer confirms. */
	acknowledgeMeaning: 'I confirm for the employer that this worker had this training, as it stands here.',
	acknowledgeNote: 'Some laws ask worker and employer each to confirm in writing. Where yours does not, leave it. It cannot be taken back.',
	acknowledgeButton: 'Confirm',
	rows: { acknowledged: 'Worker’s word', employerAcknowledged: 'Employer’s word', ordered: 'Retraining ordered', chain: 'Place in the records', hash: 'Hash of the entry', signed: 'Signed by' },
	orderedFor: ({ reason, day }: { reason: string; day: string }) => `On ${day}: ${reason}`,
	signedBy: ({ name, as, day }: { name: string; as: string; day: string }) => `${name}, ${as}, ${day}`,
	entry: ({ n }: { n: string }) => `Entry ${n}`,
	seeCheck: 'See every answer',
	signOffsHeading: 'Hands-on sign-offs',
	looseSignOff: 'No record of theory goes with it yet.',
	signOffOn: ({ day, place }: { day: string; place: string }) => `Hands-on part on ${day}, ${place}`,
	handOutHeading: 'Hand out',
	papers: { a4: 'A4', letter: 'Letter' },
	certificate: ({ paper, language }: { paper: string; language: string }) => `PDF, ${paper}, ${language}`,
	credential: 'Open credential (file)',
	revokeHeading: 'Revoke this record',
	revokeSignOff: 'Revoke this sign-off',
	revokeSignOffLead: 'The sign-off stays here, and counts no more. A record that it goes with is theory only again.',
	revokeLead: 'The record stays here, and counts no more. Its certificate says so when somebody checks it.',
	revokeReason: 'Reason',
	revokeButton: 'Revoke it',
	reinstate: 'Let it count again',
	revokeReasons: {
		'entered-by-mistake': 'Entered by mistake',
		'wrong-person': 'It is about another person',
		'not-done-as-recorded': 'It was not done as recorded',
		other: 'Another reason'
	} as Readonly<Record<RevocationReason, string>>,

	/* Orders of retraining. */
	ordersHeading: 'Retraining',
	noOrders: 'No retraining is ordered.',
	order: ({ reason, day, due }: { reason: string; day: string; due: string }) => `Ordered on ${day}, due on ${due}: ${reason}.`,
	orderStates: { open: 'Open', done: 'Done', withdrawn: 'Withdrawn' },
	withdraw: 'Withdraw this order',
	orderHeading: 'Order retraining',
	orderLead: 'The course opens again. What was valid holds until the due day.',
	orderAtOnce: 'After an incident, or when too little is known, it ends today.',
	orderReason: 'Reason',
	orderDue: 'To be done until',
	orderButton: 'Order it',

	/* Tries. */
	triesHeading: 'Tries at checks',
	noTries: 'No check was begun yet.',
	lessonTries: ({ count }: { count: number }) => plural(count, { one: '1 try at checks of lessons', other: `${String(count)} tries at checks of lessons` }),
	triesCaption: 'Every try at a check, the newest first',
	tryColumns: { day: 'Day', check: 'Check', result: 'Result' },
	results: { passed: 'Passed', 'not-passed': 'Not passed', running: 'Not ended yet' },
	finalCheck: 'Final check',

	/* Leaving. */
	leaveHeading: 'Leaving and coming back',
	leaveLead: 'Whoever has left cannot sign in. The records stay.',
	leaveDay: 'Last day here',
	leaveButton: 'Mark as left',
	returnLead: 'This person has left, and cannot sign in.',
	returnButton: 'Mark as back',

	/* Export history. */
	handedOutHeading: 'Handed out',
	handedOut: { 'certificate-handed-out': 'Certificate', 'credential-handed-out': 'Open credential', 'person-data-exported': 'All data of this person' },
	nothingHandedOut: 'Nothing was handed out yet.',

	/* History. */
	historyHeading: 'History',
	historyLead: 'All entries about this person, the newest first. The program only adds to them.',
	historyShow: ({ count }: { count: number }) => plural(count, { one: 'Show 1 entry', other: `Show ${String(count)} entries` }),
	by: ({ name }: { name: string }) => `by ${name}`,
	byProgram: 'by the program',
	unknown: 'somebody',
	events: {
		named: ({ name }: { name: string }) => `Name entered: ${name}`,
		left: ({ day }: { day: string }) => `Left on ${day}`,
		returned: ({ day }: { day: string }) => `Came back on ${day}`,
		erased: ({ day }: { day: string }) => `Identity erased on ${day}`,
		formerErased: ({ day }: { day: string }) => `Former names erased on ${day}`,
		checkPassed: ({ check, n }: { check: string; n: number }) => `Passed: ${check}, try ${String(n)}`,
		checkNotPassed: ({ check, n }: { check: string; n: number }) => `Not passed: ${check}, try ${String(n)}`,
		completed: 'Record of theory made',
		handsOn: ({ day }: { day: string }) => `Hands-on part of ${day} signed`,
		prior: ({ day }: { day: string }) => `Training from before judged adequate on ${day}`,
		acknowledged: 'Worker confirmed the training',
		employerAcknowledged: 'Employer confirmed the training',
		ordered: ({ reason, due }: { reason: string; due: string }) => `Retraining ordered: ${reason}, due on ${due}`,
		withdrawn: 'Order of retraining withdrawn',
		revoked: ({ reason }: { reason: string }) => `Record revoked: ${reason}`,
		reinstated: 'Record counts again',
		certificate: 'Certificate made'
	},

	/* What was done. */
	done: {
		order: 'Retraining is ordered. The course is open again.',
		withdraw: 'The order is withdrawn.',
		revoke: 'The record is revoked.',
		reinstate: 'The record counts again.',
		acknowledge: 'Confirmed. It is on record.',
		leave: 'Marked as left.',
		return: 'Marked as back.'
	},
	problems: {
		'no-day': 'Write a day that has come, as in 2026-11-30.',
		'no-due': 'Write a day, as in 2026-11-30.',
		'due-past': 'This day is over. Give today or a later one.',
		'due-far': 'This day is too far away. Give a day within five years.',
		'no-reason': 'Choose a reason.',
		erased: 'The name is erased. Enter the person anew.'
	},

	/* One try. */
	checkBack: 'Back to the person',
	checkOf: ({ check, n }: { check: string; n: number }) => `${check}, try ${String(n)}`,
	checkRunning: 'This check has not ended. Its answers are shown after the end.',
	checkOn: ({ day }: { day: string }) => `Begun on ${day}`,
	why: 'Show what probably went wrong',
	whyNot: 'Hide what probably went wrong',
	whyLead: 'What probably went wrong is meant for teaching. It is no part of the record.',
	itemsLabel: 'Questions, with answers',
	sides: { right: 'Right', wrong: 'Wrong', unsafe: 'Wrong, on the unsafe side' },
	task: 'Task',
	scenario: 'Scenario',
	version: ({ id, n }: { id: string; n: string }) => `${id}, version ${n}`,
	seed: 'Seed',
	answered: 'Answer',
	rightAnswer: 'Right answer',
	valuesCount: ({ count }: { count: number }) => plural(count, { one: '1 value that was drawn', other: `${String(count)} values that were drawn` }),
	notDrawn: 'This question cannot be drawn any more. Its stored values are in the data of this person.'
};
