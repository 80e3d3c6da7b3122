/** Parts of a plan that come and go: taking one out takes along the draws that set it. */
import { isGivenId } from '#lib/arrest/index.ts';
import { append, at, isBelow, isObject, listAt, put, textAt, type Json, type Path } from './document.ts';
import { obstaclesOf, placeOf } from './values.ts';

/** @returns the document without the draws that set a given of a part of the plan, or a fact of it. */
function withoutDrawsBelow(document: Json, part: Path): Json {
	const inPart = (id: Json): boolean => {
		if (typeof id !== 'string' || !isGivenId(id)) return false;
		const place = placeOf(document, id);
		return place !== undefined && isBelow(place, part);
	};
	const draws = listAt(document, ['draws']).flatMap((draw): Json[] => {
		if (part.at(-1) === 'absorber' && textAt(draw, ['fact']) === 'condition') return [];
		const sets = listAt(draw, ['sets']);
		const kept = sets.filter((id) => !inPart(id));
		if (kept.length === sets.length) return [draw];
		return kept.length === 0 ? [] : [put(draw, ['sets'], kept)];
	});
	return draws.length === listAt(document, ['draws']).length && draws.every((draw, i) => draw === at(document, ['draws', i])) ? document : put(document, ['draws'], draws);
}

/**
 * @param part of the base plan: `['base', 'absorber']`.
 * @param none what stands for a plan without it; undefined leaves the field out.
 * @returns the document without that part, and without the draws that would set it.
 */
export function withoutPart(document: Json, part: Path, none: Json | undefined): Json {
	return put(withoutDrawsBelow(document, part), part, none);
}

/** @reason the schema's greatest number of things below. */
export const MOST_OBSTACLES = 8;

/** What a new thing below is called first: kinds that the drawing knows. */
const KINDS = ['stack', 'vehicle', 'beam', 'railing', 'machine', 'tank', 'water', 'canopy'];

/** @returns the document with one more thing below, in the middle, named in both languages by its kind. */
export function withObstacle(document: Json): Json {
	const used = obstaclesOf(document).map(({ id }) => id);
	const id = KINDS.find((one) => !used.includes(one)) ?? `thing${String(used.length + 1)}`;
	const metric = textAt(document, ['units']) === 'metric';
	const amount = (metres: string, feet: string): string => (metric ? `${metres} m` : `${feet} ft`);
	const added = append(document, ['base', 'below', 'obstacles'], {
		id,
		top: amount('1', '3'),
		from: amount('-0.5', '-1.5'),
		to: amount('1', '3'),
		present: 'always'
	});
	return (['en', 'es'] as const).reduce((so, language) => (at(so, ['words', language, 'obstacles', id]) === undefined ? put(so, ['words', language, 'obstacles', id], '') : so), added);
}

/** @returns the document without a thing below, its draws, its names and its sentences. */
export function withoutObstacle(document: Json, index: number): Json {
	const path = ['base', 'below', 'obstacles', index];
	const id = textAt(document, [...path, 'id']);
	const drawless = withoutDrawsBelow(document, path);
	const draws = listAt(drawless, ['draws']).filter((draw) => !(textAt(draw, ['fact']) === 'obstacle' && textAt(draw, ['id']) === id));
	const kept = draws.length === listAt(drawless, ['draws']).length ? drawless : put(drawless, ['draws'], draws);
	const unnamed = (['en', 'es'] as const).reduce(
		(so, language) => put(put(so, ['words', language, 'obstacles', id], undefined), ['words', language, 'facts', `obstacle:${id}`], undefined),
		kept
	);
	return put(unnamed, path, undefined);
}

/** @returns the document with a thing below under another short name, wherever it is named. */
export function renameObstacle(document: Json, index: number, name: string): Json {
	const path = ['base', 'below', 'obstacles', index, 'id'];
	const before = textAt(document, path);
	if (before === name) return document;
	const renamed = put(document, path, name);
	const others = obstaclesOf(document).some((one) => one.index !== index && one.id === before);
	if (before === '' || others) return renamed;
	const draws = listAt(renamed, ['draws']).map((draw): Json => {
		if (textAt(draw, ['fact']) === 'obstacle') return textAt(draw, ['id']) === before ? put(draw, ['id'], name) : draw;
		const sets = listAt(draw, ['sets']);
		const next = sets.map((id) => (id === `obstacleTop_${before}` ? `obstacleTop_${name}` : id));
		return next.some((id, i) => id !== sets[i]) ? put(draw, ['sets'], next) : draw;
	});
	return (['en', 'es'] as const).reduce((so, language) => {
		const words = ['words', language];
		return renameKey(renameKey(so, [...words, 'obstacles'], before, name), [...words, 'facts'], `obstacle:${before}`, `obstacle:${name}`);
	}, put(renamed, ['draws'], draws));
}

/** Gives a field another name and leaves it where it stands. */
function renameKey(document: Json, path: Path, from: string, to: string): Json {
	const fields = at(document, path);
	if (!isObject(fields) || !Object.hasOwn(fields, from) || Object.hasOwn(fields, to)) return document;
	return put(document, path, Object.fromEntries(Object.entries(fields).map(([key, value]) => [key === from ? to : key, value])));
}
