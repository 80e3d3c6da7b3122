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
export { MOST_PROBLEMS as MOST_SET_PROBLEMS, MOST_SCENARIOS as MOST_SET_SCENARIOS, setContentSchema } from './sets/content.ts';
export type { SetFault, SetProblem, SetRefused } from './sets/problem.ts';
export { setScenarios } from './sets/scenarios.ts';
export { archiveSet, findSet, listSets, makeSet, type ListedSet, type NewSet, type PracticeSet } from './sets/make.ts';
export { assignSet, recallAssignment, whomToAssign, type Assignable, type Assigned, type Assigning } from './sets/assign.ts';
export { setDesk, setsOf, type OwnSet, type SetDesk } from './sets/learner.ts';
export { overviewOf as setsOverview, type OpenAssignmentBrief, type SetBrief } from './sets/overview.ts';
export { setStates, type AssignmentState, type PersonSetState, type SetStates } from './sets/states.ts';
export { newestScenario, scenariosFor, scenariosToChoose, scenarioVersion } from './scenarios/found.ts';
export { listedOwn, listedShipped, type ListedOwn, type ListedScenario } from './scenarios/listed.ts';
export { findOwn, listOwn, type Made, type OwnScenario } from './scenarios/own.ts';
export { copyScenario, importScenario, makeOwn, MOST_OWN } from './scenarios/make.ts';
export { LONGEST_DOCUMENT } from './scenarios/document.ts';
export { discardDraft, restore, retire, saveDraft, type Discarding, type Saving } from './scenarios/change.ts';
export { publish, type Publishing } from './scenarios/publish.ts';
export { exportScenario, type Exported } from './scenarios/export.ts';
export { mostCopies, printedCode } from './paper/code.ts';
export { copiesOf, paperPlaces, type PaperPlace } from './paper/places.ts';
export { findSheet, listSheets, printSheet, type ListedSheet, type Sheet, type SheetEntry } from './paper/sheets.ts';
export { findCopy, typeIn, type CopyPlace, type EntryFault, type FoundCopy, type PaperCopy, type PlaceEntry, type TypedIn } from './paper/typing.ts';
export { picturePage, type PicturePage } from './picture/page.ts';
export { readFilter } from './picture/filter.ts';
export { aimedSlips, makeAimedSet, PROBLEMS as AIMED_PROBLEMS } from './picture/aim.ts';
export { fillOutcomes } from './picture/fill.ts';
export { findTaughtCrew, LAST_ANSWERS, setsOfCrew } from './db/outcomes.ts';
