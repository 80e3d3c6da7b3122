/** The list of scenarios as a page shows it. */
import { shippedScenarios } from '#lib/course/shipped.ts';
import type { Language } from '#lib/quantity/index.ts';
import type { BackdropId, Scenario } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import type { Database } from '../db/open.ts';
import type { Person } from '../people/who.ts';
import { storedDocument, type JsonObject } from './document.ts';
import { listOwn, type OwnScenario } from './own.ts';

/** What a list tells of a scenario, own or shipped. */
export interface ListedScenario {
	readonly id: string;
	/** In the language of the page where it has one, else in another; null for a draft that has none. */
	readonly title: string | null;
	/** Null where a draft does not say it yet, or says something else. */
	readonly backdrop: BackdropId | null;
	readonly units: Scenario['units'] | null;
}

/** A scenario of the organisation in the list. */
export interface ListedOwn extends ListedScenario, Pick<OwnScenario, 'maker' | 'changedAt' | 'published' | 'retiredAt' | 'mayChange'> {
	/** Whether there is a draft beside the newest version, or alone. */
	readonly hasDraft: boolean;
}

/** How much of a title a list shows, characters: a draft may hold any. */
const LONGEST_TITLE = 200;

/** @returns the scenarios of the organisation, the one changed last first. */
export async function listedOwn(db: Database, who: Person, language: Language): Promise<readonly ListedOwn[]> {
	return (await listOwn(db, who)).map((own) => {
		const { id, maker, changedAt, published, retiredAt, mayChange, draft, document } = own;
		return { id, ...told(storedDocument(document), language), maker, changedAt, published, retiredAt, mayChange, hasDraft: draft !== null };
	});
}

/** @returns the shipped scenarios, in the order in which they are offered. */
export function listedShipped(language: Language): readonly ListedScenario[] {
	return shippedScenarios().map(({ id, words, backdrop, units }) => ({ id, title: words[language].title, backdrop, units }));
}

/** What a document says of itself; it may be unfinished, and then anything. */
function told(document: JsonObject, language: Language): Omit<ListedScenario, 'id'> {
	const { words, backdrop, units } = document;
	const titles = [language, ...Object.keys(isObject(words) ? words : {})].map((one) => titleIn(words, one));
	return {
		title: titles.find((one) => one !== null) ?? null,
		backdrop: scenarioSchema.shape.backdrop.safeParse(backdrop).data ?? null,
		units: scenarioSchema.shape.units.safeParse(units).data ?? null
	};
}

function isObject(value: unknown): value is JsonObject {
	return typeof value === 'object' && value !== null;
}

function titleIn(words: unknown, language: string): string | null {
	const of = isObject(words) && Object.hasOwn(words, language) ? words[language] : undefined;
	const title = isObject(of) && Object.hasOwn(of, 'title') ? of['title'] : undefined;
	return typeof title === 'string' && title.trim() !== '' ? title.slice(0, LONGEST_TITLE) : null;
}
