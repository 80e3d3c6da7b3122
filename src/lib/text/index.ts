import type { Language } from '#lib/quantity/index.ts';
import type { FirstMessages } from './en/first.ts';
import type { EmployerMessages } from './en/employer.ts';
import type { Messages } from './en/index.ts';
import type { RecordMessages } from './en/record.ts';
import type { StaffMessages } from './en/staff.ts';

export { LANGUAGES, languageInfo, type LanguageInfo, type ReviewState } from './language.ts';
export {
	checkText,
	givenNames,
	jurisdictionName,
	labelFieldName,
	ruleMessage,
	termName,
	type GivenNames
} from './lookup.ts';
export { factWords, type DemandText, type FactText, type LessonText } from './lesson-text.ts';
export { labelOf, theOf } from './nouns.ts';
export { LONGER, lengthened, pseudo } from './pseudo.ts';
export type { EmployerMessages } from './en/employer.ts';
export type { FirstMessages } from './en/first.ts';
export type { Messages } from './en/index.ts';
export type { RecordMessages } from './en/record.ts';
export type { StaffMessages } from './en/staff.ts';
export type {
	AskParts,
	AskText,
	CheckParts,
	CheckText,
	EntryParts,
	EntryText,
	Explained,
	GivenText,
	QuantityText,
	SlipParts,
	SlipText
} from './parts.ts';

/** @returns the messages of a language. Each language is a module of its own: a page loads one. */
export async function messages(language: Language): Promise<Messages> {
	switch (language) {
		case 'en':
			return (await import('./en/index.ts')).en;
		case 'es':
			return (await import('./es/index.ts')).es;
	}
}

/** @returns those sections that a problem is read and answered with, a fraction of all: `messages` holds them too. */
export async function firstMessages(language: Language): Promise<FirstMessages> {
	switch (language) {
		case 'en':
			return (await import('./en/first.ts')).first;
		case 'es':
			return (await import('./es/first.ts')).first;
	}
}

/** @returns the sections that only pages of trainers need. */
export async function staffMessages(language: Language): Promise<StaffMessages> {
	switch (language) {
		case 'en':
			return (await import('./en/staff.ts')).staff;
		case 'es':
			return (await import('./es/staff.ts')).staff;
	}
}

/** @returns the sections that only pages of employers need. */
export async function employerMessages(language: Language): Promise<EmployerMessages> {
	switch (language) {
		case 'en':
			return (await import('./en/employer.ts')).employer;
		case 'es':
			return (await import('./es/employer.ts')).employer;
	}
}

/** @returns the sections of certificates and of the pages that show one record. */
export async function recordMessages(language: Language): Promise<RecordMessages> {
	switch (language) {
		case 'en':
			return (await import('./en/record.ts')).record;
		case 'es':
			return (await import('./es/record.ts')).record;
	}
}
