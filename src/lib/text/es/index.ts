import type { Messages } from '../en/index.ts';
import { absences, ownChecks, refusals, ruleChecks, status, systems } from './checks.ts';
import { checkPage } from './check-page.ts';
import { turnedDown } from './common.ts';
import { crew, join } from './crew.ts';
import { certainty, diagnosis, entrySlips } from './diagnosis.ts';
import { first } from './first.ts';
import { findings } from './findings.ts';
import { help } from './help.ts';
import { learn } from './learn.ts';
import { lessonPage } from './lesson-page.ts';
import { lessons } from './lessons/index.ts';
import { marking } from './marking.ts';
import { mastery } from './mastery.ts';
import { method } from './method.ts';
import { ownSets } from './own-sets.ts';
import { passRules } from './pass-rules.ts';
import { people } from './people.ts';
import { labelFields, plan } from './plan.ts';
import { playback } from './playback.ts';
import { quantities } from './quantities.ts';
import { rules } from './rules.ts';
import { slips } from './slips.ts';
import { sources } from './sources.ts';
import { steps } from './steps.ts';
import { topics } from './topics.ts';

/**
 * The catalogue in Spanish: neutral Latin American, "usted". A draft until a bilingual competent person
 * has reviewed it.
 */
export const es: Messages = Object.freeze({
	...first,
	absences,
	certainty,
	checkPage,
	crew,
	diagnosis,
	entrySlips,
	findings,
	join,
	labelFields,
	help,
	learn,
	lessonPage,
	lessons,
	marking,
	mastery,
	method,
	ownChecks,
	ownSets,
	passRules,
	people,
	plan,
	playback,
	quantities,
	refusals,
	ruleChecks,
	rules,
	slips,
	sources,
	status,
	steps,
	systems,
	topics,
	turnedDown
});
