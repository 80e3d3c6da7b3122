/**
 * What the shipped pass rules do: how often workers of known reliability pass, by exact computation with all
 * clauses and with retakes; and what the forms of the final check are like, from 10,000 of them put together and
 * drawn by the server's own code.
 */
import {
	BAND,
	CLUSTER,
	FLOOR,
	PASS_RULES,
	UNSAFE_SHARES,
	WORKERS,
	cellsOf,
	countsAlone,
	longestForm,
	overTries,
	passRate,
	rateTable,
	withinFloor,
	type PassRule
} from '#lib/mastery/index.ts';
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { qualityOf } from './simulated/decisions.ts';
import { luckIn, measureForms, replacedPlaces, spreadOfWhole, widestPlace } from './simulated/forms.ts';

/** Two forms each: 10,000 (learning-and-records.md 6.4). */
const LEARNERS = 5_000;
const TRIES = [1, 2, 3, 4];

function shown(name: string, value: number, unit: string): Figure {
	return { name, value, unit, goal: '–', holds: true };
}

function atMost(name: string, value: number, goal: number, unit: string): Figure {
	return { name, value, unit, goal: goal === 0 ? '0' : `≤ ${goal} ${unit}`.trim(), holds: value <= goal };
}

/** A figure that is to come out as published, to as many decimals as were published. */
function published(name: string, value: number, goal: number, digits: number, unit: string): Figure {
	return { name, value, unit, goal: `= ${goal} ${unit}`, holds: value.toFixed(digits) === goal.toFixed(digits) };
}

/** The numbers for staged count and unsafe cap alone, errors independent, half of them unsafe. */
function reproduced(rule: PassRule): Figure[] {
	const alone = (right: number): number => 100 * countsAlone(rule, { right, unsafeShare: 0.5 }).pass;
	return [
		published('count and unsafe cap alone · 95 % worker passes', alone(0.95), 94.8, 1, '%'),
		published('count and unsafe cap alone · 90 % worker passes', alone(0.9), 75, 0, '%'),
		published('count and unsafe cap alone · 70 % worker passes', alone(0.7), 3.8, 1, '%'),
		published('count and unsafe cap alone · 50 % worker passes', alone(0.5), 0.03, 2, '%'),
		published('count and unsafe cap alone · items for a 95 % worker', countsAlone(rule, { right: 0.95, unsafeShare: 0.5 }).items, 16, 0, 'items')
	];
}

function rates(rule: PassRule): Figure[] {
	const most = 100 * FLOOR.mostPass;
	return WORKERS.flatMap((right) =>
		UNSAFE_SHARES.flatMap((unsafeShare) =>
			[0, CLUSTER].flatMap((cluster) => {
				const { pass, items } = passRate(rule, { right, unsafeShare, cluster });
				const who = `${100 * right} % worker, ${100 * unsafeShare} % of errors unsafe, ${cluster === 0 ? 'independent' : 'clustered'}`;
				const floored = right === FLOOR.right && cluster === 0;
				return [
					...TRIES.map((tries) => {
						const name = `${rule.id} · ${who} · passes one of ${tries}`;
						const value = 100 * overTries(pass, tries);
						return floored && tries === rule.tries.beforeUnlock ? atMost(name, value, most, '%') : shown(name, value, '%');
					}),
					shown(`${rule.id} · ${who} · items in a try`, items, 'items')
				];
			})
		)
	);
}

/** Workers who are right everywhere but in one cell: there always wrong, or guessing as well as one can without knowing. */
function gaps(rule: PassRule): Figure[] {
	const { beforeUnlock } = rule.tries;
	return cellsOf(rule).flatMap((cell) => {
		const luck = luckIn(rule, cell);
		const pass = (right: number): number => 100 * overTries(passRate(rule, { right: 1, unsafeShare: 0.5, except: { cell, right } }).pass, beforeUnlock);
		return [
			atMost(`${rule.id} · right everywhere, always wrong in ${cell} · passes one of ${beforeUnlock}`, pass(0), 5, '%'),
			atMost(`${rule.id} · right everywhere, guessing in ${cell} (${(100 * luck).toFixed(1)} % right) · passes one of ${beforeUnlock}`, pass(luck), 5, '%')
		];
	});
}

/** @source learning-and-records.md 6.1: spread of reliability in two populations, true cut .85 */
const POPULATIONS = [
	{ a: 8, b: 2, cut: 0.85 },
	{ a: 4, b: 2, cut: 0.85 }
];

function decided(rule: PassRule): Figure[] {
	return POPULATIONS.flatMap((population) => {
		const quality = qualityOf((right) => passRate(rule, { right, unsafeShare: 0.5 }).pass, population);
		const who = `${rule.id} · reliability spread as Beta(${population.a}, ${population.b}), competent from ${100 * population.cut} %`;
		return [
			shown(`${who} · decided rightly`, 100 * quality.accuracy, '%'),
			shown(`${who} · decided alike twice`, 100 * quality.consistency, '%'),
			shown(`${who} · passes though not competent`, 100 * quality.falsePass, '%'),
			shown(`${who} · fails though competent`, 100 * quality.falseFail, '%')
		];
	});
}

/** Time to compute what the employer is shown, nothing computed before. */
function speed(rule: PassRule): Figure {
	const fresh = structuredClone(rule);
	const start = performance.now();
	withinFloor(fresh);
	rateTable(fresh);
	return atMost(`${rule.id} · rates and floor computed`, performance.now() - start, 1000, 'ms');
}

function forms(rule: PassRule): Figure[] {
	const measured = measureForms(rule, LEARNERS);
	const places = replacedPlaces(rule);
	return [
		shown('forms measured', measured.forms, 'forms'),
		shown('expected raw score of an 85 % learner, mean', measured.meanScore, 'items'),
		atMost('expected raw score of an 85 % learner, standard deviation across forms', measured.spreadOfScore, 0.25, 'items'),
		atMost('the same over whole blueprints, tasks chosen and not drawn', spreadOfWhole(rule, 2 * LEARNERS), 0.25, 'items'),
		atMost('hardness inside one place, greatest difference', widestPlace(rule), BAND, 'logit'),
		atMost('items that repeat another of their form', measured.repeated, 0, 'items'),
		{ name: 'items of a second try that repeat one of the first', value: 100 * measured.repeatedBetween, unit: '%', goal: '< 1 %', holds: measured.repeatedBetween < 0.01 },
		{ name: 'neighbours with the same answer', value: 100 * measured.collisions, unit: '%', goal: '< 5 %', holds: measured.collisions < 0.05 },
		shown('neighbours that share a number or a choice', 100 * measured.partCollisions, '%'),
		shown("number answers in the outer twentieths of their task's range", 100 * measured.atEnds, '%'),
		shown(`places filled from another difficulty: ${places.join(', ') || 'none'}`, places.length, 'kinds')
	];
}

function others(rule: PassRule): Figure[] {
	const floor = withinFloor(rule);
	return [
		atMost(`${rule.id} · ${100 * FLOOR.right} % worker passes one of ${rule.tries.beforeUnlock}, ${100 * floor.unsafeShare} % of errors unsafe`, 100 * floor.rate, 100 * FLOOR.mostPass, '%'),
		...rateTable(rule).flatMap((row) => [
			shown(`${rule.id} · ${100 * row.right} % worker passes the first try`, 100 * row.first, '%'),
			shown(`${rule.id} · ${100 * row.right} % worker, items in a try`, row.items, 'items')
		]),
		shown(`${rule.id} · longest form`, longestForm(rule), 'items'),
		speed(rule)
	];
}

const bench: Bench = {
	name: 'pass-rule',
	run() {
		const [shipped, ...choices] = PASS_RULES;
		if (shipped === undefined) throw new Error('no pass rule is shipped');
		return Promise.resolve([
			...reproduced(shipped),
			...rates(shipped),
			...gaps(shipped),
			...decided(shipped),
			shown(`${shipped.id} · longest form`, longestForm(shipped), 'items'),
			speed(shipped),
			...choices.flatMap((rule) => [...others(rule), ...gaps(rule)]),
			...forms(shipped)
		]);
	}
};

export default bench;
