/** Names of what a problem shows: givens, places, obstacles. */
import type { GivenId } from '#lib/arrest/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import type { NumberAsk, Problem } from '#lib/scenario/index.ts';
import { givenNames, labelOf, theOf, type AskParts, type AskText, type FirstMessages, type GivenNames, type Messages } from '#lib/text/index.ts';

/** What is needed to speak of one problem in one language. */
export interface FirstSpeech {
	readonly problem: Problem;
	readonly language: Language;
	readonly m: FirstMessages;
}

/** With all words, as everything after the check needs them. */
export interface Speech extends FirstSpeech {
	readonly m: Messages;
}

function wordsOf({ problem, language }: FirstSpeech) {
	return problem.scenario.words[language];
}

/** An obstacle's name as the scenario writes it, with its article. */
export function obstacleName(speech: FirstSpeech, id: string): string {
	return theOf(wordsOf(speech).obstacles[id] ?? id, speech.language);
}

/** An obstacle's name as the drawing shows it. */
export function obstacleLabel(speech: FirstSpeech, id: string): string {
	return labelOf(wordsOf(speech).obstacles[id] ?? id, speech.language);
}

type PlaceId = 'surface' | 'lowerLevel' | 'anchorage' | 'standing' | 'otherFloor';

/** A place inside a sentence: "the shelf"; empty for one that the scenario does not have. */
export function thePlace(speech: FirstSpeech, place: PlaceId): string {
	const name = wordsOf(speech).places[place];
	return name === undefined ? '' : theOf(name, speech.language);
}

/** A place as the drawing shows it: "Shelf". */
export function placeLabel(speech: FirstSpeech, place: PlaceId): string {
	const name = wordsOf(speech).places[place];
	return name === undefined ? '' : labelOf(name, speech.language);
}

/** The obstacle that a given is about, by its id; empty for a given of the plan itself. */
function obstacleOf(id: GivenId): string {
	return /^obstacle[A-Za-z]*_(.*)$/.exec(id)?.[1] ?? '';
}

/** A given's names in a sentence and in a list; an obstacle's are made of the obstacle's own name. */
export function namesOf(speech: FirstSpeech, id: GivenId): GivenNames {
	return givenNames(speech.m, id, obstacleName(speech, obstacleOf(id)));
}

export function givenName(speech: FirstSpeech, id: GivenId): string {
	return namesOf(speech, id).name;
}

/** A given as the drawing names it: a word or two. */
export function givenShort(speech: FirstSpeech, id: GivenId): string {
	const { givens } = speech.m;
	return id in givens ? givens[id as keyof typeof givens].short : obstacleLabel(speech, obstacleOf(id));
}

export function askParts(speech: FirstSpeech): AskParts {
	return {
		name: speech.problem.drawn.person,
		surface: thePlace(speech, 'surface'),
		anchorage: thePlace(speech, 'anchorage')
	};
}

/** The question of a number ask, and the line below it. */
export function askText(speech: FirstSpeech, ask: NumberAsk): AskText {
	const { m } = speech;
	if (ask.quantity === 'requiredClearance') return m.requiredAsks[ask.datum];
	if (ask.quantity === 'availableClearance') return m.availableAsks[ask.datum];
	return m.asks[ask.quantity];
}
