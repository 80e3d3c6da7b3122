import { isGivenId, type GivenId } from '#lib/arrest/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import { factStatesOf, type Problem } from '#lib/scenario/index.ts';

/** @returns the givens whose numbers the story tells, as drawn, in a language. */
export function slotsOf(problem: Problem, language: Language): ReadonlySet<GivenId> {
	const { scenario, drawn } = problem;
	const { lead, body, facts } = scenario.words[language];
	const states = factStatesOf(drawn.plan, scenario.base.below.obstacles.map((one) => one.id));
	const told = Object.entries(facts).map(([fact, sentences]) => sentences[states.get(fact) ?? ''] ?? '');
	const slots = new Set<GivenId>();
	for (const text of [lead, ...body, ...told]) {
		for (const [, slot = ''] of text.matchAll(/\{([^{}]*)\}/g)) if (isGivenId(slot)) slots.add(slot);
	}
	return slots;
}
