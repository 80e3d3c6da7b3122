/** How people round what they have worked out, and how they type it. */
import { UNITS, type UnitId } from '#lib/quantity/index.ts';
import type { NumberAsk, Scenario } from '#lib/scenario/index.ts';
import type { HandRounding } from '../../support/by-hand/index.ts';

/** The ways in which a person comes from a value to the number typed. */
export type Style = 'at the end' | 'at each step' | 'up' | 'down' | 'to the inch';

/** Noise of floating point, in steps of the answer grid. */
const NOISE = 1e-6;

/** SI value of one unit. */
function sizeOf(unit: UnitId): number {
	return UNITS[unit].times / UNITS[unit].over;
}

/** @returns the styles of an ask; one that is answered in feet and inches has the inch besides. */
export function stylesOf(ask: NumberAsk): readonly Style[] {
	const styles: Style[] = ['at the end', 'at each step', 'up', 'down'];
	return ask.precision.unit === 'in' ? [...styles, 'to the inch'] : styles;
}

/** SI value of one step of the answer grid. */
export function gridOf(ask: NumberAsk): number {
	return ask.precision.value * sizeOf(ask.precision.unit);
}

/** Half away from zero on a grid, as taught at school. */
function nearest(si: number, grid: number): number {
	const steps = Math.abs(si) / grid;
	return Math.sign(si) * Math.floor(steps + 0.5 + NOISE) * grid;
}

/**
 * Each quantity that is written down on the way, to the last place that the ask asks for; masses and
 * forces, which an ask for a length does not speak of, to a tenth of their unit.
 */
export function stepwise(scenario: Scenario, ask: NumberAsk): HandRounding {
	const { dimension } = UNITS[ask.precision.unit];
	const us = scenario.units !== 'metric';
	const places = (unit: UnitId): ((si: number) => number) => {
		const grid = UNITS[unit].dimension === dimension ? gridOf(ask) : sizeOf(unit) / 10;
		return (si) => nearest(si, grid);
	};
	return {
		length: UNITS.m.dimension === dimension ? (si) => nearest(si, gridOf(ask)) : (si) => si,
		mass: places(us ? 'lb' : 'kg'),
		force: (si) => si
	};
}

/** @returns which point of the answer grid is typed for a value. */
export function gridPoint(si: number, ask: NumberAsk, style: Style): number {
	const steps = si / gridOf(ask);
	switch (style) {
		case 'up':
			return Math.ceil(steps - NOISE);
		case 'down':
			return Math.floor(steps + NOISE);
		case 'to the inch':
			return Math.round((Math.floor(si / sizeOf('in') + 0.5 + NOISE) * sizeOf('in')) / gridOf(ask));
		case 'at the end':
		case 'at each step':
			return Math.floor(steps + 0.5 + NOISE);
	}
}

/** How many digits a grid of this step needs behind the mark. */
function decimalsFor(step: number): number {
	let decimals = 0;
	while (decimals < 6 && Math.abs(step * 10 ** decimals - Math.round(step * 10 ** decimals)) > NOISE) decimals += 1;
	return decimals;
}

/** Inches as people write them: 4, 4 1/2. */
function inches(value: number): string {
	const whole = Math.floor(value + NOISE);
	const sixteenths = Math.round((value - whole) * 16);
	if (sixteenths === 0) return String(whole);
	let [over, under] = [sixteenths, 16];
	while (over % 2 === 0) [over, under] = [over / 2, under / 2];
	return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

/** Words of a unit, as people type it. */
const TYPED: Readonly<Partial<Record<UnitId, string>>> = { '1': '' };

/**
 * @param point a point of the answer grid. @param manner which of the usual ways, any whole number.
 * @returns the text that a person types.
 */
export function typed(point: number, ask: NumberAsk, manner: number): string {
	const { value, unit } = ask.precision;
	if (unit === 'in') {
		const total = point * value;
		const feet = Math.floor(total / 12 + NOISE);
		const rest = inches(total - feet * 12);
		const ways = [`${feet}' ${rest}"`, `${feet} ft ${rest} in`, `${feet}'${rest}"`, `${inches(total)} in`];
		return ways[manner % ways.length] ?? '';
	}
	const number = (point * value).toFixed(decimalsFor(value));
	const word = TYPED[unit] ?? unit;
	const ways = [number, `${number} ${word}`.trim(), `${number}${word}`];
	return ways[manner % ways.length] ?? '';
}
