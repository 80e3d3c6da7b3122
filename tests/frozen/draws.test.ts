/** What seeds gave when a scenario version was shipped. Add files here, never edit one: old records point to them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shippedScenario, shippedScenarios } from '#lib/course/shipped.ts';
import { DRAW_VERSION, drawTry } from '#lib/scenario/index.ts';
import { drawnRecords, type FrozenDraws } from './drawn-record.ts';

const FOLDER = join(import.meta.dirname, 'draws');
const files = readdirSync(FOLDER).filter((file) => file.endsWith('.json'));
const frozen = files.map((file): FrozenDraws => JSON.parse(readFileSync(join(FOLDER, file), 'utf8')));

describe('frozen draws', () => {
	it('hold every shipped scenario version', () => {
		const held = frozen.map((one) => `${one.scenario}-v${one.version}`);
		expect(held).toEqual(expect.arrayContaining(shippedScenarios().map((one) => `${one.id}-v${one.version}`)));
		expect(files.toSorted()).toEqual(held.map((one) => `${one}.json`).toSorted());
	});

	it.each(frozen.map((one) => [`${one.scenario} version ${one.version}`, one] as const))('of %s are drawn the same today', (_, one) => {
		const scenario = shippedScenario(one.scenario);
		expect(scenario?.version).toBe(one.version);
		expect(one.drawVersion).toBe(DRAW_VERSION);
		if (scenario === undefined) return;
		const seeds = one.draws.map((record) => record.seed);
		const today = drawnRecords(scenario, Math.min(...seeds), Math.max(...seeds));
		// As text, so that not even the last bit of a number or the order of a key may differ.
		expect(JSON.stringify(today)).toBe(JSON.stringify(one));
	});

	it('are proved to be drawn, not made up, by redrawing the one accepted try', () => {
		let proved = 0;
		for (const one of frozen) {
			const scenario = shippedScenario(one.scenario);
			if (scenario?.version !== one.version) continue;
			for (const record of one.draws) {
				if (record.acceptedTry === undefined) continue;
				const again = drawTry(scenario, record.seed, record.acceptedTry);
				expect(typeof again === 'string' ? again : JSON.stringify(again.drawn)).toBe(JSON.stringify(record.drawn));
				proved += 1;
			}
		}
		expect(proved).toBeGreaterThan(frozen.length);
	});
});
