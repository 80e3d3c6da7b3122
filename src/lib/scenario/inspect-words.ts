/** Whether a scenario's words tell what is drawn, in both languages, and can be read. */
import { resolve, type GivenId } from '#lib/arrest/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import { chanceOf } from './chance.ts';
import type { FieldPath, Find } from './finding.ts';
import type { Case } from './inspect-draws.ts';
import { readingOf, textsOf, type PlacedText } from './reading.ts';
import { sample } from './sample.ts';
import type { Scenario } from './schema.ts';
import { slotsIn } from './story.ts';

/** @source plain-language guidance of the project's reference (learning-and-records.md 9.3): mean at most 15 words, longest 20. */
const SENTENCE = { mean: 15, longest: 20 };
/** @source same place: Flesch–Kincaid grade at most 8 in English, Fernández-Huerta at least 70 in Spanish; from memory. */
const EASY = { en: 8, es: 70 };
const LANGUAGES = ['en', 'es'] as const;
/** @reason shorter texts, such as a name of a place, can be alike in two languages. */
const WORDS_TRANSLATED = 4;

/** Judges a scenario's words. */
export function judgeWords({ scenario, measured, find }: Case): void {
	judgeFacts(scenario, find);
	judgeSlots(scenario, find);
	judgeLanguages(scenario, find);
	judgePeople(scenario, find);
	for (const language of LANGUAGES) judgeReading(scenario, language, measured.reading[language], find);
}

/** A drawn fact that no sentence tells cannot be known by the learner. */
function judgeFacts(scenario: Scenario, find: Find): void {
	for (const draw of scenario.draws) {
		if (!('fact' in draw)) continue;
		const fact = draw.fact === 'obstacle' ? `obstacle:${draw.id}` : draw.fact;
		for (const language of LANGUAGES) {
			const sentences = scenario.words[language].facts[fact];
			for (const state of new Set(draw.among.map(String))) {
				if (sentences?.[state] !== undefined) continue;
				find('fact-untold', 'fault', ['words', language, 'facts', fact, state], { which: state });
			}
		}
	}
}

/** The texts with slots: title and all that makes up sentences. */
function slotted(scenario: Scenario, language: Language): readonly PlacedText[] {
	return [{ path: ['words', language, 'title'], text: scenario.words[language].title }, ...textsOf(scenario, language)];
}

/** Slots that some drawn problem has nothing for. Which numbers a problem has hangs on the facts drawn, and on nothing else. */
function judgeSlots(scenario: Scenario, find: Find): void {
	const { plan, decoys } = sample(scenario, chanceOf([scenario.id, 'slots']));
	const known = new Set<string>(['name', ...resolve(plan).givens.keys(), ...Object.keys(decoys)]);
	for (const { id } of scenario.base.below.obstacles) {
		const leaves = scenario.draws.some((draw) => 'fact' in draw && draw.fact === 'obstacle' && draw.id === id && draw.among.includes('none'));
		for (const given of [`obstacleTop_${id}`, `obstacleAside_${id}`]) {
			if (leaves) known.delete(given);
			else known.add(given);
		}
	}
	const kneels = scenario.draws.some((draw) => 'fact' in draw && draw.fact === 'posture' && draw.among.includes('kneeling'));
	if (kneels && plan.worker.dRingNow === undefined) known.delete('dRingNow');
	for (const language of LANGUAGES) {
		for (const { path, text } of slotted(scenario, language)) {
			for (const slot of slotsIn(text)) {
				if (!known.has(slot) && !toldOnlyWhenThere(path, slot as GivenId)) find('slot-without-value', 'fault', path, { which: slot });
			}
		}
	}
}

/** Whether a text is told only in states of an obstacle in which it is there, or can come, and the slot is of that obstacle. */
function toldOnlyWhenThere(path: FieldPath, slot: GivenId): boolean {
	const [, , part, fact, state] = path;
	if (part !== 'facts' || typeof fact !== 'string' || state === 'none') return false;
	const [kind, id] = fact.split(':');
	return kind === 'obstacle' && (slot === `obstacleTop_${id}` || slot === `obstacleAside_${id}`);
}

/** What one language tells and the other does not. */
function judgeLanguages(scenario: Scenario, find: Find): void {
	const slots = { en: slotsOf(scenario, 'en'), es: slotsOf(scenario, 'es') };
	for (const [language, other] of [['en', 'es'], ['es', 'en']] as const) {
		if (!slots[language].has('name')) find('name-untold', 'warning', ['words', language, 'lead'], {});
		for (const [slot, at] of slots[other]) {
			if (slot === 'name' || slots[language].has(slot)) continue;
			const here: FieldPath = ['words', language, ...at.slice(2)];
			find('slot-in-one-language', 'warning', here, { which: slot }, { also: [at] });
		}
	}
	const english = new Map(slotted(scenario, 'en').map(({ path, text }) => [path.slice(2).join('.'), text]));
	for (const { path, text } of slotted(scenario, 'es')) {
		if (english.get(path.slice(2).join('.')) !== text || text.split(/\s+/).length < WORDS_TRANSLATED) continue;
		find('untranslated', 'warning', path, {});
	}
}

/** The slots of a language's texts, each with the first text that has it. */
function slotsOf(scenario: Scenario, language: Language): ReadonlyMap<string, FieldPath> {
	const found = new Map<string, FieldPath>();
	for (const { path, text } of slotted(scenario, language)) {
		for (const slot of slotsIn(text)) if (!found.has(slot)) found.set(slot, path);
	}
	return found;
}

function judgePeople(scenario: Scenario, find: Find): void {
	const seen = new Set<string>();
	scenario.people.forEach((name, i) => {
		const plain = name.trim().toLowerCase();
		if (seen.has(plain)) find('name-twice', 'warning', ['people', i], { name });
		seen.add(plain);
	});
}

function judgeReading(scenario: Scenario, language: Language, whole: Case['measured']['reading'][Language], find: Find): void {
	if (whole === undefined) return;
	const texts = textsOf(scenario, language).flatMap((one) => {
		const of = readingOf([one], language);
		return of === undefined ? [] : [{ path: one.path, of }];
	});
	for (const { path, of } of texts) {
		if (of.longest.words > SENTENCE.longest) find('long-sentence', 'warning', path, { words: of.longest.words });
	}
	if (whole.wordsPerSentence > SENTENCE.mean) {
		find('long-sentences', 'fault', whole.longest.path, { mean: whole.wordsPerSentence });
	}
	if (language === 'en' ? whole.measure > EASY.en : whole.measure < EASY.es) {
		const harder = (a: number, b: number): boolean => (language === 'en' ? a > b : a < b);
		const hardest = texts.reduce((most, one) => (harder(one.of.measure, most.of.measure) ? one : most));
		find('hard-words', 'warning', hardest.path, { measure: whole.measure });
	}
}
