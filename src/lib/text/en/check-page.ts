/** The page of a check: lesson check and final check. */
import type { FailReason } from '#lib/mastery/index.ts';

export const checkPage = {
	lessonTitle: ({ lesson }: { lesson: string }) => `Check: ${lesson}`,
	finalTitle: 'Final check',
	/** Before it is begun. */
	finalLead: 'Now show that you can plan a tie-off by yourself.',
	lessonLead: 'A short check of this lesson. The final check needs all of these. This one certifies nothing.',
	how: 'How it goes',
	first: ({ n, passAtMost }: { n: number; passAtMost: number }) =>
		passAtMost === 0 ? `There are ${n} questions. Without an error you pass.` : `There are ${n} questions. With at most ${passAtMost} wrong you pass.`,
	on: ({ n }: { n: number }) => `With some errors it goes on, to ${n} questions at most, and a few extra ones.`,
	failAt: ({ n }: { n: number }) => `With ${n} errors or more it ends.`,
	unsafe: ({ n }: { n: number }) => (n === 1 ? 'Two numbers on the unsafe side fail the check.' : `More than ${n} numbers on the unsafe side fail the check.`),
	noHelp: 'There is no help, and no time limit. You may stop and go on later.',
	review: 'You look over each page before you hand it in. After that it cannot be changed.',
	after: 'Right answers and reasons come after the end.',
	triesLeft: ({ left, perDay }: { left: number; perDay: number }) =>
		`${left === 1 ? 'You have one try' : `You have ${left} tries`}, ${perDay} a day at most. Every try has new questions.`,
	supervised: ({ place }: { place: string }) => `A trainer has opened this check as supervised, at ${place}.`,
	unsupervised: 'Nobody supervises this check. It is stored and printed as unsupervised.',
	begin: 'Begin the check',
	shut: {
		'not-ready': 'This check is not open yet. Finish the practice first.',
		tomorrow: 'Today’s tries are used up. Practise, and try again tomorrow.',
		locked: 'Your tries are used up. Practise, and ask your trainer to unlock the check.',
		passed: 'You have passed this check.'
	} as Readonly<Record<'not-ready' | 'tomorrow' | 'locked' | 'passed', string>>,
	/** While it runs. */
	item: ({ n, of }: { n: number; of: number }) => `Question ${n} of ${of}`,
	save: 'Keep and go on',
	saveLast: 'Keep and look the page over',
	back: 'Back',
	toReview: 'Look the page over',
	saved: 'Kept.',
	saving: 'Keeping …',
	notSaved: 'No connection. Your answer stays here. Try again when the signal is back.',
	notStored: 'The server cannot store answers just now. Yours stays here. Try again in a while; if this goes on, tell your trainer.',
	sessionOver: 'You are no longer signed in. Your kept answers are stored. Sign in and go on.',
	elsewhere: 'This check has gone on in another window. The page shows where it stands now.',
	fillAll: 'Answer everything that is asked here.',
	reviewTitle: 'Look the page over',
	reviewLead: 'You can still change every answer. After handing in you cannot.',
	empty: 'Not answered yet',
	change: ({ n }: { n: number }) => `Change question ${n}`,
	handIn: 'Hand the page in',
	handingIn: 'Handing in …',
	stillEmpty: ({ count }: { count: number }) => (count === 1 ? 'One question is not answered yet.' : `${count} questions are not answered yet.`),
	nextPage: 'The page is handed in. Here is the next one.',
	/** After the end. */
	passed: 'Passed',
	failed: 'Not passed',
	cellsOpen: 'Not passed yet',
	passedFinal: 'You have shown that you can plan this tie-off. A trainer still has to sign off the hands-on part.',
	passedLesson: 'This lesson is done.',
	why: {
		errors: 'There were too many errors.',
		'unsafe-numbers': 'There were too many numbers on the unsafe side.',
		'failing-plan-accepted-again': 'You tied off twice to a plan that fails.'
	} as Readonly<Record<FailReason, string>>,
	backToLessons: ({ lessons }: { lessons: string }) => `Do these again before the next try: ${lessons}.`,
	practiseFirst: 'Practise a little more, then try again with new questions.',
	count: ({ right, of }: { right: number; of: number }) => `${right} of ${of} right`,
	unsafeCount: ({ count }: { count: number }) => (count === 1 ? 'One number on the unsafe side' : `${count} numbers on the unsafe side`),
	yours: 'Your answer',
	right: 'Right answer',
	see: 'Work this problem again in practice',
	reasons: 'Reasons',
	itemRight: 'right',
	itemWrong: 'not right',
	changeShort: 'Change',
	markedNothing: 'Nothing marked',
	toCourse: 'Back to the course'
};
