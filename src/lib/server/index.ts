export { closeDatabase, database } from './application.ts';
export { compressPage } from './compress.ts';
export { chooseLanguage } from './language.ts';
export { currentGuest, forgetGuest, giveGuestToken } from './guest.ts';
export { openDatabase, type Database } from './db/open.ts';
export { findAttempt, type Attempt } from './db/attempts.ts';
export { readyProblem, type Scenarios } from './attempts/mark.ts';
export { receiveAnswers, type Receipt, type Visitor } from './attempts/receive.ts';
export { readingProblem } from './attempts/reading.ts';
export { toldAttempt } from './attempts/tell.ts';
export { shippedVersions } from './attempts/shipped.ts';
export { readBody, readJson, type InputResult } from './input.ts';
export { problemsOf, type InputProblem, type ProblemOptions } from './problems.ts';
export { answer, refusal, wrongMethod } from './respond.ts';
export type { Person, Role, Who } from './people/who.ts';
export { CHANGED_FIELDS, choices, codeField, emailField, newPasswordField, passwordProblem, SETTINGS_FIELDS, type Choices } from './people/choices.ts';
export { listPeople, recentEvents, type ListedPerson, type ToldEvent } from './people/overview.ts';
export { findOrganisation, setLanguage as rememberLanguage } from './db/people.ts';
export { note, type AuditEvent, type AuditKind } from './people/audit.ts';
export { grouped, makeCode, randomCode, readCode } from './people/code.ts';
export {
	changeSettings,
	firstSetUpCode,
	furtherSetUpCode,
	settingsOf,
	setUpOrganisation,
	type Enrolled,
	type Settings,
	type SetUp
} from './people/organisation.ts';
export {
	closeAccount,
	emailKept,
	enrolStaff,
	inviteStaff,
	passwordCode,
	resetPerson,
	signInStaff,
	unlockPerson,
	type Invitation,
	type Reset,
	type SignedIn
} from './people/staff.ts';
export { forgetOld } from './people/tidy.ts';
export {
	choosePassRule,
	enterReview,
	finalRule,
	listPassRules,
	makePassRule,
	type ListedRule,
	type Making,
	type Review,
	type RuleCounts
} from './people/pass-rules.ts';
export { ownPath, startOf } from './people/way.ts';
export { serverKeys } from './people/key.ts';
export { accessTo, callerOf, ROUTES, type Access, type Caller } from './people/routes.ts';
export { hashSecret, isPin, passwordFault, PASSWORD_LENGTH, PIN_LENGTH, verifySecret, weakPin } from './people/secret.ts';
export { endAllSessions, endSession, startSession, whoIs } from './people/session.ts';
export { accountKey, addressKey, crewKey, mayTry, noteSuccess, unknownAccountKey, unlock } from './people/throttle.ts';
export { field, readForm, typedIn, type FieldProblems, type FormResult } from './people/fields.ts';
export { signInLearner, type LearnerEntry, type LearnerSignIn } from './people/learner.ts';
export { findOnList, joinCrew, pinProblem, type JoinClaim, type Joining, type OnList, type PinProblem } from './people/join.ts';
export { joinGuest, practisedBefore, type JoinedGuest } from './people/practised.ts';
export { hasJoined, type PractisedAnswer } from './db/practised.ts';
export { assignTrainer, makeCrew, nameCrew, releaseTrainer, setArchived, type Change } from './people/crews.ts';
export {
	addToCrew,
	crewPeople,
	moveToCrew,
	openCheck,
	resetPin,
	takeOffCrew,
	unlockCheck,
	type Adding,
	type CrewPerson
} from './people/crew-list.ts';
export { findCrew, listCrews, staffOf, trainersOf, type Crew, type ListedCrew, type Trainer } from './db/crews.ts';
export type { Opening } from './db/permits.ts';
export { receiveEvent, type EventReceipt } from './course/receive.ts';
export type { SentEvent } from './course/sent.ts';
export { courseOf, type PersonCourse } from './course/state.ts';
export { asksOf, courseBook, findTask, isLesson, scenarioOf } from './course/book.ts';
export { dayIn } from './course/day.ts';
export { frequentSlips } from './course/slips.ts';
export { factTables } from './course/tables.ts';
export {
	answerItem,
	beginCheck,
	checkDesk,
	handIn,
	type CheckDesk,
	type CheckResult,
	type CheckView,
	type Shut,
	type Supervision
} from './course/checks.ts';
export { drawItem, type CheckItem, type DrawnItem, type ItemAnswer, type ItemResult } from './course/items.ts';
export { checkStart, learnerOf, tellCheck, toldCheck, type ToldCheck } from './course/told.ts';
export { fillDemo, type Demo } from './people/demo.ts';
export { findPerson } from './db/people.ts';
export { progressOf, type Progress } from './people/progress.ts';
export { completionsOf } from './db/checks.ts';
export { signHandsOn, signedOff, toSign, type HandsOnEntry, type SignedOff } from './people/sign-off.ts';
export { qrCode, type QrCode } from './qr.ts';
export { decodeList, LONGEST_LIST } from './roster/decode.ts';
export { enterRoster, lookAtRoster, type Entering, type LookedAt, type Looking } from './roster/enter.ts';
