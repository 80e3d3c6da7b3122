/** The verdict of a plan as it is shown: every check with its outcome, by how much, its clause and its mark. */
import { QUANTITIES, type Check, type CheckId } from '#lib/arrest/index.ts';
import { analysisOf } from '#lib/grading/index.ts';
import { FORCE, LENGTH, MASS, sameDimension, type Dimension } from '#lib/quantity/index.ts';
import type { CheckText } from '#lib/text/index.ts';
import type { Speech } from './names.ts';
import type { Writer } from './writing.ts';

export interface CheckRow {
	readonly id: string;
	readonly name: string;
	readonly status: 'held' | 'failed' | 'unknown';
	readonly statusText: string;
	readonly text: string;
	/** Clause and title; empty for what geometry and labels demand. */
	readonly citation: string;
	/** How the clause is known. */
	readonly mark: string;
	readonly where: string;
	readonly printed: string;
	readonly decides: boolean;
}

export interface ShownVerdict {
	readonly result: 'passes' | 'fails' | 'cannot-be-shown';
	readonly sentence: string;
	readonly nearest: string;
	readonly rows: readonly CheckRow[];
}

function textOf(speech: Speech, check: Check): CheckText {
	const { m } = speech;
	const own: Readonly<Record<string, CheckText>> = m.ownChecks;
	return own[check.id] ?? m.ruleChecks[check.topic];
}

function dimensionOf(check: Check): Dimension {
	if (check.target !== undefined) return QUANTITIES[check.target.quantity].dimension;
	switch (check.topic) {
		case 'force':
		case 'anchorage-strength':
			return FORCE;
		case 'capacity':
			return MASS;
		default:
			return LENGTH;
	}
}

function amountOf(writer: Writer, check: Check): string | undefined {
	if (check.slack === undefined) return undefined;
	const dimension = dimensionOf(check);
	const metric = sameDimension(dimension, LENGTH) || sameDimension(dimension, MASS) || sameDimension(dimension, FORCE);
	return metric ? writer.full(Math.abs(check.slack), dimension, check.slack < 0 ? 'up' : 'down') : undefined;
}

function saidOf(speech: Speech, writer: Writer, check: Check): string {
	const text = textOf(speech, check);
	const amount = amountOf(writer, check);
	if (check.status === 'unknown') return text.unknown;
	return check.status === 'held' ? text.held({ amount }) : text.failed({ amount });
}

export function verdictOf(speech: Speech, writer: Writer): ShownVerdict {
	const { m, problem } = speech;
	const { checks, verdict } = analysisOf(problem);
	const short = (ids: readonly string[]): string =>
		[...new Set(checks.filter((check) => ids.includes(check.id)).map((check) => textOf(speech, check).short))].join(', ');
	const nearest = checks.find((check) => check.id === (verdict.nearest as CheckId | undefined));
	const sentence =
		verdict.result === 'passes'
			? m.verdict.passes
			: verdict.result === 'fails'
				? m.verdict.fails({ checks: short(verdict.against) })
				: m.verdict.cannotBeShown({ checks: short(verdict.against) });
	return {
		result: verdict.result,
		sentence,
		nearest:
			verdict.result === 'passes' && nearest !== undefined
				? m.verdict.nearest({ check: textOf(speech, nearest).name, amount: amountOf(writer, nearest) ?? '' })
				: '',
		rows: checks.map((check): CheckRow => {
			const { citation } = check;
			return {
				id: check.id,
				name: textOf(speech, check).name,
				status: check.status,
				statusText: m.status[check.status],
				text: saidOf(speech, writer, check),
				citation: citation === undefined ? '' : m.rules.citation({ clause: citation.clause, title: citation.source.title }),
				mark: citation === undefined ? '' : m.rules.marks[citation.mark].name,
				where: citation?.source.where ?? '',
				printed: citation?.printedAs.join('; ') ?? '',
				decides: check.decides
			};
		})
	};
}
