/** Between which values each number of a scenario lies, by its ranges and its base plan; no chance is asked. */
import { resolve, type GivenId, type Range } from '#lib/arrest/index.ts';
import { toSI } from '#lib/quantity/index.ts';
import { fieldOfGiven } from './places.ts';
import type { FieldPath } from './finding.ts';
import type { Scenario } from './schema.ts';

/** A number of a scenario over all draws, SI, with the fields that hold its ends. */
export interface Span extends Range {
	readonly leastAt: FieldPath;
	readonly greatestAt: FieldPath;
	/** The given from which it counts. */
	readonly above?: GivenId | undefined;
}

type NumberDraw = Exclude<Scenario['draws'][number], { fact: string }>;

/** @returns the span of each number that a scenario has. @throws RangeError if the base plan names a table that does not exist. */
export function spansOf(scenario: Scenario): ReadonlyMap<GivenId, Span> {
	const spans = new Map<GivenId, Span>();
	for (const [id, { value, origin }] of resolve(scenario.base).givens) {
		// What tables say is no number of the author.
		if (origin.from !== 'plan') continue;
		const at = fieldOfGiven(scenario, id);
		spans.set(id, { least: value, greatest: value, leastAt: at, greatestAt: at });
	}
	scenario.draws.forEach((draw, i) => {
		if ('fact' in draw) return;
		const span = spanOfDraw(draw, ['draws', i], spans);
		for (const id of draw.sets) spans.set(id, span);
	});
	scenario.decoys.forEach((decoy, i) => {
		const at: FieldPath = ['decoys', i];
		if ('value' in decoy) {
			const value = toSI(decoy.value.value, decoy.value.unit);
			spans.set(decoy.given, { least: value, greatest: value, leastAt: [...at, 'value'], greatestAt: [...at, 'value'] });
		} else if ('from' in decoy) {
			spans.set(decoy.given, { least: toSI(decoy.from, decoy.unit), greatest: toSI(decoy.to, decoy.unit), leastAt: [...at, 'from'], greatestAt: [...at, 'to'] });
		}
	});
	return spans;
}

/** @param before spans of the givens that draws before it set. @returns the span of one draw. */
export function spanOfDraw(draw: NumberDraw, at: FieldPath, before: ReadonlyMap<GivenId, Range>): Span {
	if ('among' in draw) {
		const values = draw.among.map((one, k) => ({ value: toSI(one.value, one.unit), at: [...at, 'among', k] }));
		values.sort((a, b) => a.value - b.value);
		const [least] = values;
		const greatest = values.at(-1);
		return { least: least?.value ?? NaN, greatest: greatest?.value ?? NaN, leastAt: least?.at ?? at, greatestAt: greatest?.at ?? at };
	}
	const from = draw.above === undefined ? { least: 0, greatest: 0 } : (before.get(draw.above) ?? { least: 0, greatest: 0 });
	return {
		least: from.least + toSI(draw.from, draw.unit),
		greatest: from.greatest + toSI(draw.to, draw.unit),
		leastAt: [...at, 'from'],
		greatestAt: [...at, 'to'],
		...(draw.above === undefined ? {} : { above: draw.above })
	};
}
