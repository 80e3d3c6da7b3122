/** How the parts of a scenario are called: numbers, rules, questions, and the fields that findings are about. */
import { isGivenId, isQuantityId, type GivenId } from '#lib/arrest/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import { sentenceOf, type Constraint, type SentenceId, type ToldBound } from '#lib/scenario/index.ts';
import { givenNames, theOf, type Messages, type StaffMessages } from '#lib/text/index.ts';
import { quantityText } from './amounts.ts';
import { boundRows } from './constraints.ts';
import { at, isObject, textAt, type Json, type Path } from './document.ts';
import { factKind } from './facts.ts';
import { amountText, placeOf, statedGivens } from './values.ts';

/** A document with the words to speak of it. */
export interface Naming {
	readonly document: Json;
	readonly m: Messages & StaffMessages;
	readonly language: Language;
}

/** @returns the own value of a key, or undefined. */
function own<T>(of: Readonly<Record<string, T>>, key: string): T | undefined {
	return Object.hasOwn(of, key) ? of[key] : undefined;
}

/** @returns what an obstacle is called in the language of the page; its short name where it has no other. */
export function obstacleName({ document, language }: Naming, id: string): string {
	const name = textAt(document, ['words', language, 'obstacles', id]);
	return name === '' ? id : theOf(name, language);
}

/** @returns a given's name in a list. An id that is none stands for itself. */
export function givenName(naming: Naming, id: string): string {
	if (!isGivenId(id)) return id;
	const thing = /^obstacle[A-Za-z]*_(.*)$/.exec(id)?.[1] ?? '';
	return givenNames(naming.m, id, obstacleName(naming, thing)).name;
}

/** @returns what a constraint binds: a given, or a quantity with its datum. */
export function boundName(naming: Naming, of: string): string {
	const { m } = naming;
	const [name = '', datum] = of.split('@');
	if (isGivenId(of)) return givenName(naming, of);
	if (!isQuantityId(name)) return of;
	const datums: Readonly<Record<string, string>> = m.authoring.page.datums;
	const from = datum === undefined ? undefined : own(datums, datum);
	return from === undefined ? m.quantities[name].name : m.common.pair({ first: m.quantities[name].name, second: from });
}

/** @returns a sentence about what draws must keep, without its amount. */
export function sentenceText(naming: Naming, told: ToldBound): string {
	const p = naming.m.authoring.page;
	if (!('of' in told)) return p.sentences[told.id];
	return told.id === 'at-least' ? p.atLeast({ the: boundName(naming, told.of) }) : p.atMost({ the: boundName(naming, told.of) });
}

/** @returns a rule as a sentence with its amounts; of one that is unfinished, what it binds. */
export function constraintText(naming: Naming, index: number): string {
	const entry = at(naming.document, ['constraints', index]);
	const of = isObject(entry) ? textAt(entry, ['of']) : '';
	if (!isObject(entry) || (!('atLeast' in entry) && !('atMost' in entry))) return boundName(naming, of);
	return sentenceOf(entry as unknown as Constraint)
		.map((told) => {
			const amount = told.amount;
			const known = amount !== undefined && typeof amount.value === 'number' && typeof amount.unit === 'string';
			return known ? `${sentenceText(naming, told)} ${quantityText(amountText(amount), naming.language)}` : sentenceText(naming, told);
		})
		.join('; ');
}

/** @returns a rule as the form writes it, without its amounts: one side of it, or all. Rules are not numbered there. */
function ruleName(naming: Naming, index: number, side: Path[number] | undefined): string {
	const rows = boundRows(naming.document).filter((row) => row.index === index);
	const one = rows.filter((row) => row.side === side);
	const texts = (one.length > 0 ? one : rows).map(({ told }) => sentenceText(naming, told));
	return texts.length > 0 ? texts.join('; ') : naming.m.authoring.page.fields.constraints;
}

/** @returns a slip's name in a list; `right` is the right answer. */
export function slipName({ m }: Naming, id: string): string {
	if (id === 'right') return m.authoring.page.rightAnswer;
	const labels: Readonly<Record<string, { readonly label: string }>> = m.slips;
	return own(labels, id)?.label ?? id;
}

/** @returns what a question asks for; its id where that is not known yet. */
export function askName({ document, m }: Naming, index: number): string {
	const ask = ['asks', index];
	if (textAt(document, [...ask, 'kind']) === 'decision') return m.authoring.page.decisionAsk;
	const quantity = textAt(document, [...ask, 'quantity']);
	return isQuantityId(quantity) ? m.quantities[quantity].name : textAt(document, [...ask, 'id']);
}

/** @returns what a fact is called. */
export function factName(naming: Naming, fact: string): string {
	const names: Readonly<Record<string, string>> = naming.m.authoring.page.facts;
	const kind = factKind(fact);
	if (kind === 'obstacle') return obstacleName(naming, fact.slice('obstacle:'.length));
	return own(names, kind) ?? fact;
}

/** @returns what a state of a fact is called. */
export function stateName({ m }: Naming, state: string): string {
	const names: Readonly<Record<string, string>> = m.authoring.page.states;
	return own(names, state) ?? state;
}

/** @returns how a draw can come out. */
export function outcomeName({ m }: Naming, fails: string): string {
	const names: Readonly<Record<string, string>> = m.authoring.page.outcomes;
	return own(names, fails) ?? fails;
}

/** @returns a slot as the list of numbers to insert calls it. */
export function slotName(naming: Naming, slot: string): string {
	return slot === 'name' ? naming.m.authoring.page.insertName : givenName(naming, slot);
}

/** @returns the sentence that an id stands for, without an amount. */
export function pickText({ m }: Naming, id: SentenceId): string {
	return m.authoring.page.sentences[id];
}

/** How much of a name that a document made up is said back, characters. */
const LONGEST_NAME = 40;

/** @returns what the field of a path is called, in a few words. */
export function placeName(naming: Naming, path: Path): string {
	const { document, m } = naming;
	const p = m.authoring.page;
	const [first, second, third] = path;
	switch (first) {
		case 'words': {
			const name = wordsName(naming, path.slice(2));
			return second === 'en' || second === 'es' ? p.inTheLanguage({ name, language: p.languages[second] }) : name;
		}
		case 'draws': {
			if (typeof second !== 'number') return p.fields.draws;
			const fact = textAt(document, ['draws', second, 'fact']);
			if (fact !== '') return factName(naming, fact === 'obstacle' ? `obstacle:${textAt(document, ['draws', second, 'id'])}` : fact);
			return givenName(naming, textAt(document, ['draws', second, 'sets', 0])) || p.fields.draws;
		}
		case 'decoys':
			return typeof second === 'number' ? givenName(naming, textAt(document, ['decoys', second, 'given'])) || p.fields.decoys : p.fields.decoys;
		case 'constraints':
			return typeof second === 'number' ? ruleName(naming, second, third) : p.fields.constraints;
		case 'aims':
			return typeof second === 'number' ? outcomeName(naming, textAt(document, ['aims', second, 'fails'])) || p.fields.aims : p.fields.aims;
		case 'asks':
			return typeof second === 'number' ? p.questionNumber({ n: second + 1 }) : p.fields.asks;
		case 'base':
			if (second === 'rules') return p.fields.rules;
			if (second === 'practice') return p.fields.practice;
			return planName(naming, path) ?? (third === 'obstacles' ? p.fields.obstacle : p.fields.plan);
		default: {
			const fields: Readonly<Record<string, string>> = p.fields;
			return (typeof first === 'string' ? own(fields, first) : undefined) ?? (first === undefined ? p.fields.whole : String(first).slice(0, LONGEST_NAME));
		}
	}
}

function wordsName(naming: Naming, [part, key, state]: Path): string {
	const { fields, places } = naming.m.authoring.page;
	const named: Readonly<Record<string, string>> = places;
	if (part === 'places') return (typeof key === 'string' ? own(named, key) : undefined) ?? fields.places;
	if (part === 'obstacles') return fields.obstacleNames;
	if (part === 'facts') {
		if (typeof key !== 'string') return fields.factSentences;
		return state === undefined ? factName(naming, key) : naming.m.authoring.page.factSentence({ what: factName(naming, key), value: stateName(naming, String(state)) });
	}
	return part === 'title' ? fields.title : part === 'lead' ? fields.lead : fields.body;
}

/** The given that stands at a path of the base plan, or the fact. */
function planName(naming: Naming, path: Path): string | undefined {
	const key = path.join('.');
	const given = [...statedGivens(naming.document), ...(Object.keys(naming.m.givens) as GivenId[])].find((id) => placeOf(naming.document, id)?.join('.') === key);
	if (given !== undefined) return givenName(naming, given);
	const { facts } = naming.m.authoring.page;
	switch (path.slice(1).join('.')) {
		case 'rescue':
			return facts.rescue;
		case 'connectors.compatible':
			return facts.connectors;
		case 'absorber.condition':
			return facts.condition;
		case 'worker.posture':
			return facts.posture;
		case 'anchorage.persons':
			return facts.persons;
		case 'anchorage.engineered':
			return facts.engineered;
		default:
			return undefined;
	}
}
