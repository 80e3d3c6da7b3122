/** A limit of a rule table in words: its bounds and facts, joined as the law joins them. */
import { printedBound, type Bound, type Condition, type Limit, type Requirement } from '#lib/rules/index.ts';
import type { Messages } from '#lib/text/index.ts';

function isBound(of: Requirement): of is Bound {
	return 'quantity' in of;
}

/** A limit of nought on the spare clearance is the rule of no contact. */
function isNoContact(bound: Bound): boolean {
	return bound.quantity === 'spare' && 'min' in bound && 'value' in bound.min && bound.min.value === 0;
}

/** @returns one bound in words: "free fall at most 6 ft (1.8 m)". */
export function boundText(m: Messages, bound: Bound): string {
	if (isNoContact(bound)) return m.rules.noContact;
	const quantity = m.rules.quantities[bound.quantity];
	const by = 'max' in bound ? bound.max : bound.min;
	const amount =
		'of' in by
			? m.rules.times({ times: String(by.times), quantity: m.rules.quantities[by.of] })
			: (printedBound(bound)[0] ?? `${by.value} ${by.unit}`);
	if ('max' in bound) return bound.exclusive ? m.rules.below({ quantity, amount }) : m.rules.atMost({ quantity, amount });
	return bound.exclusive ? m.rules.above({ quantity, amount }) : m.rules.atLeast({ quantity, amount });
}

function joined(parts: readonly string[], by: string): string {
	return parts.length === 1 ? (parts[0] ?? '') : parts.map((part) => (part.includes(` ${by} `) ? `(${part})` : part)).join(` ${by} `);
}

/** @returns what a limit asks, in words. */
export function requirementText(m: Messages, of: Requirement): string {
	if (isBound(of)) return boundText(m, of);
	if ('fact' in of) return m.rules.facts[of.fact]({ asked: of.is });
	const parts = ('all' in of ? of.all : of.any).map((one) => bracketed(m, one));
	return joined(parts, 'all' in of ? m.rules.and : m.rules.or);
}

/** An "or" inside an "and", or the other way round, stands in brackets. */
function bracketed(m: Messages, of: Requirement): string {
	const text = requirementText(m, of);
	const compound = ('all' in of && of.all.length > 1) || ('any' in of && of.any.length > 1);
	return compound ? `(${text})` : text;
}

/** @returns when a limit applies, in words. */
export function conditionText(m: Messages, of: Condition): string {
	if ('fact' in of) return m.rules.facts[of.fact]({ asked: of.is });
	if ('not' in of) return m.rules.not({ what: conditionText(m, of.not) });
	const parts = ('all' in of ? of.all : of.any).map((one) => conditionText(m, one));
	return joined(parts, 'all' in of ? m.rules.and : m.rules.or);
}

/** @returns all that a limit says: its bounds, its condition, from what height the duty arises. Empty for a statement. */
export function limitText(m: Messages, limit: Limit): string {
	const condition = limit.when === undefined ? '' : ` ${m.rules.onlyIf({ condition: conditionText(m, limit.when) })}`;
	switch (limit.role) {
		case 'check': {
			const text = requirementText(m, limit.require);
			return `${text.charAt(0).toLocaleUpperCase()}${text.slice(1)}.${condition}`;
		}
		case 'trigger': {
			const amount = printedBound(limit.from)[0] ?? '';
			return `${limit.from.exclusive ? m.rules.fromAbove({ amount }) : m.rules.from({ amount })}${condition}`;
		}
		case 'statement':
			return condition.trim();
	}
}
