/** The page of a lesson: its shown example, its practice, its half-done examples, and what the server has to say. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const lessonPage = {
	course: 'Course',
	lessonOf: ({ n, of }: { n: number; of: number }) => `Lesson ${String(n)} of ${String(of)}`,

	/* The shown example. */
	exampleHeading: 'Shown example',
	back: 'Back',
	next: 'Next',
	goOn: 'Now try one yourself',
	goOnAgain: 'Go on to the examples',
	toPractice: 'Back to practice',
	keys: 'The arrow keys go back and on.',
	seeExample: 'See the example again',
	seeLesson: 'The lesson in short',
	planOf: ({ title }: { title: string }) => `From the site: ${title}`,
	stage: 'The fall stands still at this moment. Move it with the slider.',
	workingCaption: ({ name }: { name: string }) => `Working of: ${name}`,

	/* Facts. */
	jurisdiction: ({ place }: { place: string }) => `Rule table: ${place}.`,
	changeTable: 'Other rule tables',
	guestTable: 'Your employer’s rule table takes its place once you have joined.',
	notDecide: 'Known from memory: it decides nothing until a named person has confirmed it.',

	/* Problems. */
	nextFading: 'Half-done examples come next.',
	nextShowing: 'The example comes once more.',
	tryingHeading: 'A first problem',
	tryingLead: 'If it goes well, you go straight to practice. If not, half-done examples come first.',
	practisingHeading: 'Practice',
	practisingLead: ({ n, of }: { n: number; of: number }) => `${String(n)} of ${String(of)} right in a row, without help.`,
	readyHeading: 'You are ready for the check of this lesson.',
	readyGuest: 'Join your crew to take the check. You can practise on.',
	readyLead: 'Take it now, or practise on.',
	passedLead: 'This lesson is passed. A refresher keeps it fresh.',
	checkingLead: 'The check of this lesson is begun.',
	nextProblem: 'Next problem',
	nextExample: 'Next example',
	toLessons: 'To all lessons',
	notOpen: 'This lesson is not open yet. It opens when the lesson before it is ready.',
	answered: 'This problem is answered. What you try now is practice and does not count.',

	/* Half-done examples. */
	fadingHeading: 'Half-done example',
	fadingLead: ({ given, of }: { given: number; of: number }) =>
		given === 0
			? 'No step is given here. Work all of them.'
			: `The first ${plural(given, { one: 'step is', other: `${String(given)} steps are` })} given, of ${String(of)} in all. Work the rest.`,
	fadingPicture: 'The marks are given here. Choose what to do.',
	fadingPictureAll: 'Nothing is given here. Mark what you see, and choose.',
	givenStep: 'Given',
	yourStep: 'Your step',
	checkSteps: 'Check my steps',
	stepsRight: 'Right, all of it.',
	stepsWrong: 'Not yet. The working is below.',

	/* Pictures. */
	markFirst: 'Mark what you see first, or say that there is nothing to mark.',
	chooseFirst: 'Choose one of the answers first.',
	checkPicture: 'Check my answer',
	pictureRight: 'Right, all of it.',
	pictureWrong: 'Not yet.',
	missed: 'Not marked',
	extra: 'Marked without need',
	marksRight: 'Your marks are right.',
	choiceRight: 'Your choice is right.',
	explained: 'What is to be seen',

	/* What the server or another tab has to say. */
	notices: {
		'signed-out': 'You are no longer signed in. Sign in again: nothing is lost, what you did waits on this device.',
		elsewhere: 'This problem was answered in another tab or on another device. Your answer here is practice and does not count.',
		differs: 'The server found this lesson to stand otherwise. Its word counts.',
		refused: 'The server did not take what you did. Open the lesson again.',
		'not-kept': 'This device keeps nothing more. What you do is lost when you close the page.'
	},
	waiting: ({ count }: { count: number }) =>
		plural(count, { one: '1 step waits on this device to be sent.', other: `${String(count)} steps wait on this device to be sent.` }),
	understood: 'Understood'
};
