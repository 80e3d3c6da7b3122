/** Facts of a plan that are no numbers: each is one state, or drawn among states with weights. */
import { at, append, isObject, listAt, put, textAt, type Json, type JsonObject, type Path } from './document.ts';

/** Facts that a draw can choose, with their states; `obstacle:` and an id for one of the things below. */
const STATES = {
	rescue: ['arranged', 'not-arranged', 'unknown'],
	connectors: ['yes', 'no', 'unknown'],
	condition: ['dry', 'wet-or-frozen'],
	posture: ['standing', 'kneeling'],
	persons: ['1', '2', '3', '4'],
	obstacle: ['there', 'can-come', 'none']
} as const;

/** Facts that stand in the plan and are not drawn, but can be told. */
const FIXED_STATES = {
	engineered: ['yes', 'no', 'unknown'],
	'longer-fall': ['yes', 'no', 'unknown']
} as const;

export type FactKind = keyof typeof STATES;
export type FixedFact = keyof typeof FIXED_STATES;

const PLACES: Readonly<Record<Exclude<FactKind, 'obstacle'> | FixedFact, Path>> = {
	rescue: ['base', 'rescue'],
	connectors: ['base', 'connectors', 'compatible'],
	condition: ['base', 'absorber', 'condition'],
	posture: ['base', 'worker', 'posture'],
	persons: ['base', 'anchorage', 'persons'],
	engineered: ['base', 'anchorage', 'engineered'],
	'longer-fall': ['base', 'absorber', 'testedForLongerFall']
};

/** What a plan is taken to say where it says nothing. */
const USUAL: Readonly<Record<string, string>> = { rescue: 'unknown', connectors: 'unknown', condition: 'dry', posture: 'standing', persons: '1', engineered: 'unknown', 'longer-fall': 'unknown' };

/** @returns the kind of a fact: of `obstacle:stack`, `obstacle`. */
export function factKind(fact: string): string {
	return fact.split(':')[0] ?? '';
}

function obstacleOf(fact: string): string {
	return fact.split(':')[1] ?? '';
}

/** @returns the states that a fact can be in; none for what is no fact. */
export function statesOf(fact: string): readonly string[] {
	const kind = factKind(fact);
	const all: Readonly<Record<string, readonly string[]>> = { ...STATES, ...FIXED_STATES };
	return Object.hasOwn(all, kind) ? (all[kind] ?? []) : [];
}

/** @returns the place in the list of the draw that chooses a fact; -1 where none does. */
export function factDrawOf(document: Json, fact: string): number {
	const id = obstacleOf(fact);
	return listAt(document, ['draws']).findIndex((draw) => isObject(draw) && textAt(draw, ['fact']) === factKind(fact) && (id === '' || textAt(draw, ['id']) === id));
}

/** @returns where the base plan holds a fact; undefined for that of an obstacle. */
export function factPlace(fact: string): Path | undefined {
	const places: Readonly<Record<string, Path>> = PLACES;
	return Object.hasOwn(places, fact) ? places[fact] : undefined;
}

/** @returns the state that a fact has in the base plan. */
export function baseState(document: Json, fact: string): string {
	const place = factPlace(fact);
	if (place !== undefined) return textAt(document, place) || (USUAL[fact] ?? '');
	const obstacle = listAt(document, ['base', 'below', 'obstacles']).find((one) => textAt(one, ['id']) === obstacleOf(fact));
	return obstacle !== undefined && at(obstacle, ['there']) === false ? 'can-come' : 'there';
}

/** @returns the document with another state of a fact in the base plan. */
export function withBaseState(document: Json, fact: string, state: string): Json {
	const place = factPlace(fact);
	if (place !== undefined) return put(document, place, fact === 'persons' ? Number(state) : state);
	const index = listAt(document, ['base', 'below', 'obstacles']).findIndex((one) => textAt(one, ['id']) === obstacleOf(fact));
	if (index < 0) return document;
	const path = ['base', 'below', 'obstacles', index];
	if (state === 'there') return put(document, [...path, 'there'], true);
	return put(put(document, [...path, 'present'], 'sometimes'), [...path, 'there'], false);
}

/** @returns how often each state is drawn, of all entries of the choice; every state once and in the usual order. */
export function weightsOf(document: Json, fact: string): ReadonlyMap<string, number> {
	const among = listAt(document, ['draws', factDrawOf(document, fact), 'among']).map(String);
	const states = [...statesOf(fact), ...among.filter((one) => !statesOf(fact).includes(one))];
	return new Map([...new Set(states)].map((state) => [state, among.filter((one) => one === state).length]));
}

/** @reason a choice has at most twenty entries. */
export const MOST_ENTRIES = 20;

/**
 * @returns the document with a state drawn more or less often. Entries of other states keep their places, as the order
 * of a choice is part of what seeds draw.
 */
export function withWeight(document: Json, fact: string, state: string, weight: number): Json {
	const path = ['draws', factDrawOf(document, fact), 'among'];
	const among = listAt(document, path);
	const have = among.filter((one) => String(one) === state).length;
	const want = Math.max(0, Math.min(MOST_ENTRIES, Math.round(weight)));
	if (want === have) return document;
	const entry: Json = fact === 'persons' ? Number(state) : state;
	if (want > have) return put(document, path, [...among, ...Array.from({ length: want - have }, () => entry)]);
	const drop = new Set(among.map((one, i) => ({ one, i })).filter(({ one }) => String(one) === state).slice(want).map(({ i }) => i));
	return put(document, path, among.filter((_, i) => !drop.has(i)));
}

/** @returns the document with a fact drawn: the state that it had is one of two that are drawn equally often. */
export function drawFact(document: Json, fact: string): Json {
	if (factDrawOf(document, fact) >= 0) return document;
	const base = baseState(document, fact);
	const other = statesOf(fact).find((state) => state !== base) ?? base;
	const among: Json[] = [base, other].map((state) => (fact === 'persons' ? Number(state) : state));
	const id = obstacleOf(fact);
	const draw: JsonObject = id === '' ? { fact, among } : { fact: 'obstacle', id, among };
	return append(document, ['draws'], draw);
}

/** @returns the document with a fact that is not drawn any more. */
export function fixFact(document: Json, fact: string): Json {
	const index = factDrawOf(document, fact);
	return index < 0 ? document : put(document, ['draws', index], undefined);
}

/** @returns the facts that some draw chooses, in the order of the draws. */
export function drawnFacts(document: Json): readonly string[] {
	return listAt(document, ['draws']).flatMap((draw) => {
		const fact = textAt(draw, ['fact']);
		return fact === '' ? [] : [fact === 'obstacle' ? `obstacle:${textAt(draw, ['id'])}` : fact];
	});
}

/** @returns the facts that a story tells or must tell: those drawn, and those that a language has sentences of. */
export function toldFacts(document: Json): readonly string[] {
	const told = (['en', 'es'] as const).flatMap((language) => Object.keys(at(document, ['words', language, 'facts']) ?? {}));
	return [...new Set([...drawnFacts(document), ...told])].filter((fact) => statesOf(fact).length > 0);
}

/** @returns the states of a fact for which the story needs a sentence, or has one. */
export function toldStates(document: Json, fact: string): readonly string[] {
	const drawn = factDrawOf(document, fact) >= 0 ? [...weightsOf(document, fact)].filter(([, weight]) => weight > 0).map(([state]) => state) : [baseState(document, fact)];
	const told = (['en', 'es'] as const).flatMap((language) => Object.keys(at(document, ['words', language, 'facts', fact]) ?? {}));
	return [...new Set([...drawn, ...told])];
}
