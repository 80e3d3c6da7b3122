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
export { answer, noRoom, NO_ROOM, refusal, wrongMethod } from './respond.ts';
export { lacksRoom } from './db/no-room.ts';
export type { Person, Role, Who } from './people/who.ts';
export { CHANGED_FIELDS, choices, codeField, emailField, newPasswordField, passwordProblem, SETTINGS_FIELDS, type Choices } from './people/choices.ts';
export { findLearners, listStaff, type FoundLearners, type ListedPerson } from './people/overview.ts';
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
export { field, readForm, tidy, typedIn, type FieldProblems, type FormResult } from './people/fields.ts';
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
	type Shut
} from './course/checks.ts';
export { findCheck, type CheckView, type Supervision } from './course/check-replay.ts';
export { drawItem, type CheckItem, type DrawnItem, type ItemAnswer, type ItemResult } from './course/items.ts';
export { checkStart, learnerOf, tellCheck, toldCheck, type ToldCheck } from './course/told.ts';
export { fillDemo, type Demo } from './people/demo.ts';
export { findPerson } from './db/people.ts';
export { progressOf, type Progress } from './people/progress.ts';
export { completionsOf } from './db/checks.ts';
export { signHandsOn, signedOff, theoryOf, toSign, type HandsOnEntry, type SignedOff } from './people/sign-off.ts';
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
export { backUp, type BackedUp, type Step as KeepingStep } from './keeping/backup.ts';
export { KeepingFault } from './keeping/fault.ts';
export { backupFolder, databaseAddress, keptApart, type KeptApart } from './keeping/places.ts';
export { restoreBackup, type Restored } from './keeping/restore.ts';
export { ALL_JOBS } from './jobs/all.ts';
export { runJob, startJobs, JOBS, type Did, type Job, type JobName } from './jobs/job.ts';
export { appendEntries, placedRows, renewStates } from './records/append.ts';
export { enterEarlierRecords } from './records/earlier.ts';
export { folded } from './records/folded.ts';
export { publicKeys, renewSigningKey, signingKey, type PublicKey, type SigningKey } from './records/keys.ts';
export { KEY_USES, type KeyUse } from './records/key-file.ts';
export { makeCheckpoint, type Checkpoint, type CheckpointMaking } from './records/checkpoint.ts';
export { checkNow, checkpointNow, handOutCheckpoint, keepingPage, type ChainChecked, type CheckpointFile, type KeepingPage, type ToldReport } from './records/keeping.ts';
export type { Break, BreakKind, VerifyResult } from './records/verify/result.ts';
export { peekToken, verifyRecords, type VerifyOptions } from './records/verify/verify.ts';
export { readDatabase, readSnapshot } from './db/snapshot.ts';
export { findPersonRecord, recordOf, recordsOf, recordSettings, type FoundPerson, type RecordSettings } from './records/found.ts';
export { markLeft, markReturned, todayIn, type Leaving, type Returning } from './records/leaving.ts';
export { renamePerson, type Renaming } from './records/renaming.ts';
export { forgetName, FORGETTING_REASONS, isMeant, type Forgetting, type ForgettingReason } from './records/forgetting.ts';
export { mayForget, type MayForget } from './records/may-forget.ts';
export { validityFor, type CompletionValidity } from './records/validity.ts';
export { MOST_AHEAD, MOST_ORDERED, orderRetraining, peopleToOrder, withdrawRetraining, type Order, type Ordering, type Whom } from './records/retraining.ts';
export { reinstateRecord, revokeRecord, type Reinstating, type Revoking } from './records/revoking.ts';
export { runsOf, type Run } from './records/run.ts';
export { countOpen, countOrdered, listOrdered, type OrderFilter, type Ordered } from './db/retraining.ts';
export { LIST_FILTERS, LIST_SORTS, ON_PAGE, readAskedList, trainingList, type AskedList, type ListFilter, type ListRow, type ListSort, type TrainingList } from './records/list.ts';
export { askList, LONGEST_ASKED, MOST_LINES, type AskedLine, type LineAnswer, type ListAnswer } from './records/ask-list.ts';
export type { Remark } from './records/remark.ts';
export { personPage, type ListedTry, type PersonPage } from './records/person-page.ts';
export { BY_DAYS, EXPORT_FILES, exportRecords, type ExportFile, type ExportName } from './exports/files.ts';
export { exportPerson } from './exports/one-person.ts';
export { readRange, type DayRange, type ReadRange } from './exports/range.ts';
export { download } from './exports/response.ts';
export { completionsCsv } from './exports/tables.ts';
export { LOG_GROUPS, readLog, type DetailKind, type LogFilter, type LogGroup, type ToldDeed, type ToldDetail } from './people/log.ts';
export type { LogPlace } from './db/audit.ts';
export { publicAddress } from './address.ts';
export { handOutCertificate, type HandedOut, type HandingOut } from './records/certificate.ts';
export { certificateFacts, type CertificateFacts } from './records/certificate-facts.ts';
export { checkCredential, LONGEST_TOKEN, type CheckedCredential, type CredentialFault } from './records/check-credential.ts';
export { handOutCredential, type CredentialWords, type ToTell } from './records/credential.ts';
export { profileOf } from './records/issuer.ts';
export { checkName, publicRecord, readCertificateCode, type NameCheck, type PublicRecord } from './records/public-record.ts';
export { credentialKeySet } from './records/public-keys.ts';
export { statusListToken } from './records/status-list.ts';
export { isUnchanged, lookAtEveryone, MOST_LEAVING, type EveryoneLine, type EveryoneProblem, type LookingAtAll, type Missing } from './roster/everyone.ts';
export { enterEveryone, type EnteringAll } from './roster/enter-everyone.ts';
export { priorMonths, priorToSign, signPrior, type PriorBuilding, type PriorEntry, type PriorFault, type PriorSigning, type PriorToSign } from './records/prior-training.ts';
export { changeRecordSettings, SETTING_BOUNDS, type SettingsChange } from './records/changed-settings.ts';
export { acknowledgeForEmployer, acknowledgeTraining, type Acknowledging } from './records/acknowledging.ts';
export { trainingOf } from './db/training.ts';
export { openOrderOf, ownRecordOf, type OpenOrder, type OwnRecord, type OwnSignOff, type OwnTraining } from './records/own-record.ts';
export { courseBegun } from './db/course.ts';
