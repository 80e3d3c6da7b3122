import { describe, expect, test } from 'vitest';
import { LANGUAGES, messages } from '#lib/text/index.ts';
import { allMessages, everything } from './walk.ts';

/** One trade word, one word in each language: where the English message has the one, the Spanish has the other. */
const GLOSSARY: readonly (readonly [english: RegExp, spanish: RegExp])[] = [
	[/free fall|fall freely|falls? \w+ freely/i, /caída libre/i],
	[/\bclearances?\b/i, /espacios? libres?/i],
	[/anchorage connector/i, /conector de anclaje/i],
	[/connectors?\b/i, /conector/i],
	[/anchorage/i, /anclaje/i],
	[/D-ring/, /argolla D/i],
	[/lanyard/i, /cuerda/i],
	[/absorber/i, /absorbedor/i],
	[/elongation/i, /alarga/i],
	[/harness/i, /arnés/i],
	[/webbing/i, /correa/i],
	[/\bmargins?\b/i, /margen/i],
	[/\bsoles\b/i, /suelas/i],
	[/\boffset\b/i, /distancia lateral/i],
	[/swing drop/i, /bajada del péndulo/i],
	[/\bswings?\b/i, /péndulo|balancea/i],
	[/\b(?:slide|slides)\b/i, /desliza/i],
	[/\bstretch(?:es)?\b/i, /estira/i],
	[/\blabel(?:s|’s)?\b/i, /etiqueta/i],
	[/\bcapacity\b/i, /capacidad/i],
	[/arrest force/i, /fuerza (?:máxima )?de detención/i],
	[/average force/i, /fuerza promedio/i],
	[/body height/i, /estatura/i],
	[/deceleration distance/i, /distancia de desaceleración/i],
	[/\brescue\b/i, /rescat/i],
	[/lower level/i, /nivel inferior/i],
	[/walking surface/i, /superficie de trabajo/i],
	[/competent/i, /competente/i],
	[/qualified/i, /calificada/i],
	[/\btapes?\b/i, /cinta/i],
	[/kneel/i, /de rodillas/i],
	[/\btie off|tie-off/i, /amarr/i],
	[/tools/i, /herramientas/i],
	[/\bthe rise\b|\brise of\b/i, /desnivel/i],
	[/\bslack\b/i, /holgura|suelt/i],
	[/lifeline/i, /línea de vida/i],
	[/maker/i, /fabricante/i]
];

/** Words of the trade that mean the same as one of ours, words that must never stand, and manners that are not ours. */
const NEVER = {
	en: [
		/\bsafe(?:ly|r|st|ty)?\b/i,
		/\bropes?\b/i,
		/\banchors?\b(?! point)/i,
		/anchor point/i,
		/shock absorber/i,
		/\bdeploy/i,
		/\blearners?\b/i,
		/!/,
		/·/
	],
	es: [
		/segur[oaí]/i,
		/eslinga|\bcabo\b|\bsoga/i,
		/punto de anclaje/i,
		/amortiguador/i,
		/elongación/i,
		/despeje|distancia libre/i,
		/\b(?:tú|tu|tus|vos|vosotros|vuestr[oa]s?|te)\b/i,
		/ordenador|\bmóvil\b|\bcoger/i,
		/[!¡]/,
		/·/
	]
} as const;

/** Messages in which such a word is meant: the name of another method of work. */
const SPARED: readonly string[] = ['systems.rope-access'];

describe('the glossary', () => {
	test('says the same thing by the same word in both languages', async () => {
		const english = everything(await allMessages('en'), 'en');
		const spanish = new Map(everything(await allMessages('es'), 'es').map(({ path, text }) => [path, text]));
		const strays = english.flatMap(({ path, text }) =>
			GLOSSARY.filter(([en, es]) => en.test(text) && !es.test(spanish.get(path) ?? '')).map(
				([en]) => `${path}: ${String(en)} in “${text}”, but “${spanish.get(path) ?? ''}”`
			)
		);
		expect(strays).toEqual([]);
	});

	test('each of its words is used', async () => {
		const english = everything(await allMessages('en'), 'en');
		expect(GLOSSARY.filter(([en]) => !english.some(({ text }) => en.test(text))).map(String)).toEqual([]);
	});

	test.each(LANGUAGES)('keeps out of %s what must not stand', async (language) => {
		const found = everything(await allMessages(language), language).flatMap(({ path, text }) =>
			SPARED.includes(path) ? [] : NEVER[language].filter((word) => word.test(text)).map((word) => `${path}: ${String(word)} in “${text}”`)
		);
		expect(found).toEqual([]);
	});

	test('says to the worker what the design says, word for word', async () => {
		const { decision, verdict } = await messages('en');
		expect([decision.tieOff, decision.doNotTieOff]).toEqual(['Tie off', 'Do not tie off']);
		expect(verdict.passes).toBe('Passes the listed checks.');
		expect(verdict.fails({ checks: 'clearance' })).toBe('Fails: clearance.');
		expect(verdict.cannotBeShown({ checks: 'rescue' })).toBe('Cannot be shown adequate: rescue. Do not tie off.');
	});

	test('the caution names all three who decide, and what this is not', async () => {
		for (const language of LANGUAGES) {
			const { caution } = (await messages(language)).verdict;
			expect(caution).toMatch(language === 'en' ? /not a design tool/ : /no una herramienta de diseño/);
			expect(caution).toMatch(language === 'en' ? /maker’s instructions/ : /instrucciones del fabricante/);
			expect(caution).toMatch(language === 'en' ? /local law/ : /ley local/);
			expect(caution).toMatch(language === 'en' ? /competent or qualified person/ : /competente o calificada/);
		}
	});
});
