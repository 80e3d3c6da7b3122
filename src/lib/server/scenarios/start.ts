/** What a new scenario begins with: a plain site that can be published as it is, so that its author changes instead of filling in. */
import { practiceTable, ruleTable, type PracticeTable } from '#lib/rules/index.ts';
import { fromSI, toSI } from '#lib/quantity/index.ts';
import type { JsonObject } from './document.ts';
import metric from './start-metric.json' with { type: 'json' };
import us from './start-us.json' with { type: 'json' };

/** What an organisation has chosen, as far as a scenario needs it. */
export interface Chosen {
	/** Id of a rule table. */
	readonly rules: string;
	readonly units: 'metric' | 'us';
}

/** The practice table that goes with rules of a place, by how the id of the rule table begins; the first that fits. */
const PRACTICES: readonly (readonly [begins: string, practice: string])[] = [
	['us-', 'us-two-foot'],
	['ca-', 'canada'],
	['au', 'australia'],
	['', 'europe']
];

function practiceFor(rules: string): PracticeTable {
	const [, id] = PRACTICES.find(([begins]) => rules.startsWith(begins)) ?? [];
	const table = id === undefined ? undefined : practiceTable(id);
	if (table === undefined) throw new Error(`There is no practice table for ${rules}`);
	return table;
}

/** The margin of a practice as a plan says it: in the unit that lengths are written in, to a tenth and never shorter. */
function marginOf({ margin }: PracticeTable, unit: 'm' | 'ft'): string {
	const tenths = Math.ceil(fromSI(toSI(margin.value, margin.unit), unit) * TENTHS - ROUNDING);
	return `${tenths / TENTHS} ${unit}`;
}

/** Steps of a length in a unit. */
const TENTHS = 10;
/** @reason what changing units leaves over is no reason to round a tenth up. */
const ROUNDING = 1e-6;

/** The story, which says what to write in its place. Kept in both languages, whichever its author reads: learners read either. */
const WORDS = {
	en: {
		title: 'New site: write its name',
		lead: '{name} works near an open edge. Write here what {name} does, and where.',
		body: [
			'The lanyard is hooked to an eye in the deck overhead. Hooks, eye and D-ring go together.',
			'Write here what else there is to know about your site.'
		],
		places: { surface: 'Walkway', lowerLevel: 'Ground', anchorage: 'deck eye' },
		obstacles: {},
		facts: {
			rescue: {
				arranged: 'A lift with an operator waits below for a rescue.',
				'not-arranged': 'Nobody is there who could bring {name} down.'
			}
		}
	},
	es: {
		title: 'Sitio nuevo: escriba su nombre',
		lead: '{name} trabaja junto a un borde abierto. Escriba aquí qué hace {name} y dónde.',
		body: [
			'La cuerda está enganchada a un ojal de la losa de arriba. Ganchos, ojal y argolla D son compatibles.',
			'Escriba aquí qué más hay que saber de su sitio.'
		],
		places: { surface: 'la pasarela', lowerLevel: 'el suelo', anchorage: 'el ojal de la losa' },
		obstacles: {},
		facts: {
			rescue: {
				arranged: 'Abajo espera una plataforma con operador para un rescate.',
				'not-arranged': 'No hay nadie que pueda bajar a {name}.'
			}
		}
	}
} as const;

/**
 * Where rules say of contact only from memory, no plan may fail by clearance alone. There the lower level is far down,
 * and whether anybody can rescue is what decides.
 */
function byRescue({ draws }: typeof metric | typeof us, units: 'metric' | 'us'): JsonObject {
	const depth = units === 'us' ? { from: 16, to: 21, step: 0.05, unit: 'ft' } : { from: 4.9, to: 6.4, step: 0.01, unit: 'm' };
	return {
		draws: [...draws.slice(0, -1), { sets: ['lowerLevelDepth'], ...depth }, { fact: 'rescue', among: ['arranged', 'not-arranged'] }],
		aims: [
			{ fails: 'nothing', weight: 1 },
			{ fails: 'rescue', weight: 1 }
		]
	};
}

function decidesContact(rules: string): boolean {
	const limits = ruleTable(rules)?.limits ?? [];
	return !limits.some((limit) => limit.role === 'check' && limit.subject === 'contact' && limit.mark === 'memory');
}

/** @returns a whole scenario document, without id and version, by the organisation's rules and in its units. */
export function startDocument({ rules, units }: Chosen): JsonObject {
	const site = units === 'us' ? us : metric;
	const { backdrop, units: written, people, base, ...rest } = site;
	const practice = practiceFor(rules);
	const margin = marginOf(practice, units === 'us' ? 'ft' : 'm');
	return {
		backdrop,
		units: written,
		people,
		words: WORDS,
		base: { ...base, rules, practice: practice.id, margin },
		...rest,
		...(decidesContact(rules) ? {} : byRescue(site, units))
	};
}
