/** Whatever an organisation has chosen, a new scenario can be published as it is. */
import { expect, it } from 'vitest';
import { inspect } from '#lib/scenario/index.ts';
import { parseDocument } from '#lib/server/scenarios/parse.ts';
import { startDocument } from '#lib/server/scenarios/start.ts';
import { choices } from '#lib/server/index.ts';

const cases = choices().rules.flatMap(({ id }) => (['metric', 'us'] as const).map((units) => [id, units] as const));

it.each(cases)('begins well by %s in %s units', (rules, units) => {
	const parsed = parseDocument(startDocument({ rules, units }), 'own-aaaaaaaaaa', 1);
	if (parsed.kind === 'refused') throw new Error(JSON.stringify(parsed.problems));
	const { scenario } = parsed;
	expect([scenario.base.rules, scenario.units]).toEqual([rules, units === 'us' ? 'us-decimal' : 'metric']);
	const { findings, results, drawn } = inspect(scenario, { draws: 120 });
	expect(findings).toEqual([]);
	expect(drawn).toBe(120);
	expect([results.passes > 0, results.fails > 0]).toEqual([true, true]);
});
