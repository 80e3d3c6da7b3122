/** Signing in, setting up an organisation, its staff and its settings. */
import { account } from './account.ts';

export const people = {
	...account,

	/* Sign in. */
	signInLead: 'Practice is open to everyone. Sign in for your own course and record.',
	workers: 'Workers',
	workersLead: 'With your personal number and your PIN.',
	staff: 'Trainers and employers',
	number: 'Personal number',
	numberHint: 'The number your employer knows you by.',
	pin: 'PIN',
	pinHint: 'Six digits.',
	crewCode: 'Crew code',
	crewCodeHint: 'More than one employer uses this number here. The code of your crew tells which one is yours.',
	email: 'E-mail',
	password: 'Password',
	signInButton: 'Sign in',
	notJoined: 'New here? Join your crew',
	ended: 'Sign in to open this page. If you were signed in, that has ended.',
	refusedLearner: 'This number and this PIN do not fit together, or too many tries were made. Your trainer can give you a new PIN.',
	refusedStaff: 'This e-mail and this password do not fit together, or too many tries were made. Your employer can give you a new code.',
	wait: ({ count }: { count: number }) => (count === 1 ? 'Try again in 1 second.' : `Try again in ${count} seconds.`),

	/* Set up. */
	setUpTitle: 'Set up your organisation',
	setUpLead: 'The code stands where the server was started. It works once.',
	setUpCode: 'Set-up code',
	organisationHeading: 'The organisation',
	organisationName: 'Name of the organisation',
	rules: 'Rule table',
	rulesHint: 'The law that the course speaks of.',
	ruleTable: ({ place, scope }: { place: string; scope: string }) => `${place}: ${scope}`,
	units: 'Units',
	unitSystems: { metric: 'Metres and kilograms', us: 'Feet and pounds' },
	language: 'Language',
	languageHint: 'For people who have chosen none.',
	zone: 'Time zone',
	zoneHint: 'Of the sites. Training days are counted by it.',
	passRule: 'Pass rule of the final check',
	passRules: {
		staged: 'In stages: 12 to 30 questions',
		'fixed-24': 'One length: 24 questions',
		'staged-long': 'In longer stages: 18 to 36 questions'
	},
	yourselfHeading: 'Yourself',
	yourName: 'Your name',
	newPassword: 'Password',
	passwordHint: ({ count }: { count: number }) => `At least ${count} characters. A few words in a row work well.`,
	setUpButton: 'Set it up',

	/* Enrol. */
	enrolTitle: 'Choose your password',
	enrolLead: 'The code came from your employer. It works once.',
	enrolCode: 'Code',
	enrolButton: 'Save my password',

	/* The employer's pages. */
	records: 'Records',
	settings: 'Settings of the organisation',
	settingsLead: 'They hold for all crews from now on.',
	crews: 'Crews',
	save: 'Save',
	saved: 'Saved.',
	inviteHeading: 'Invite a trainer or an employer',
	inviteLead: 'You get a code for them. They choose a password with it.',
	inviteName: 'Name',
	role: 'Role',
	roles: { learner: 'Worker', trainer: 'Trainer', employer: 'Employer' },
	inviteButton: 'Make a code',
	codeHeading: ({ name }: { name: string }) => `Code for ${name}`,
	codeLead: 'It is shown once and works for seven days. Pass it on by hand or by voice.',
	codeWhere: ({ path }: { path: string }) => `They enter it on the page ${path} of this site.`,
	pinReset: ({ name }: { name: string }) => `${name} can now choose a new PIN. For that they join with the crew code once more.`,
	unlocked: ({ name }: { name: string }) => `${name} can try to sign in again.`,
	closed: ({ name }: { name: string }) => `${name} is closed and cannot sign in any more.`,
	columns: { name: 'Name', role: 'Role', signsInWith: 'Signs in with', state: 'State' },
	states: {
		active: 'can sign in',
		invited: 'has not chosen a secret yet',
		locked: 'locked after too many tries',
		closed: 'closed'
	},
	you: 'you',
	resetStaff: 'New code',
	resetLearner: 'New PIN',
	resetStaffOf: ({ name }: { name: string }) => `New code for ${name}`,
	resetLearnerOf: ({ name }: { name: string }) => `New PIN for ${name}`,
	unlock: 'Unlock',
	unlockOf: ({ name }: { name: string }) => `Unlock ${name}`,
	close: 'Close',
	closeOf: ({ name }: { name: string }) => `Close ${name}`,
	nobody: 'unknown',

	/* What is wrong with an entry: by the keys that the forms use. */
	problems: {
		missing: 'Fill this in.',
		'too-long': 'This is too long.',
		'not-a-name': 'Write a name with letters.',
		'not-a-number': 'Write letters and digits, without spaces between.',
		'not-an-email': 'Write an e-mail address, as in name@example.org.',
		'not-listed': 'Choose one of the list.',
		'password-short': 'This is too short.',
		'password-weak': 'This is too easy to guess. Mix different words.',
		code: 'This code is not known, was used before, or has run out.',
		'email-taken': 'Somebody here has this e-mail already.'
	},
	problemsTitle: 'Something is missing or does not fit. Look at the marked fields.'
};
