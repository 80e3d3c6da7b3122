/** What is said over an answer: whether it is right, and the thought behind a wrong number. */
import { isGivenId, isQuantityId, type QuantityId } from '#lib/arrest/index.ts';
import { analysisOf, explain, type Candidate, type Diagnosis, type EntrySlip, type Grade } from '#lib/grading/index.ts';
import { echoQuantity, unitSymbol } from '#lib/quantity/index.ts';
import type { NumberAsk } from '#lib/scenario/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import type { EntryParts, SlipParts } from '#lib/text/index.ts';
import { datumOf } from './draft.ts';
import { namesOf, obstacleName, thePlace, type Speech } from './names.ts';
import { atSurface, firstThing } from './tapes.ts';
import type { Writer } from './writing.ts';

type NumberGrade = Extract<Grade, { kind: 'number' }>;

/** One explanation that the learner may say was theirs. */
export interface Option {
	/** Its place among the candidates; one past the last is "none of these". */
	readonly candidate: number;
	readonly label: string;
}

export interface Told {
	readonly heading: string;
	readonly lines: readonly string[];
	/** The slips that the tapes and steps are explained with; none for the engine's own working. */
	readonly slips: readonly SlipId[];
	/** A choice that tells explanations apart. */
	readonly question: { readonly text: string; readonly options: readonly Option[] } | undefined;
	readonly critical: boolean;
	/** No pattern fits: the steps are what helps. */
	readonly open?: boolean;
}

/** Explanations this near to the best fit as well as it does: a lead of less is no lead. */
const LEAD = 1;
/** Values that differ by less are one value, SI. */
const SAME = 1e-9;
/** @reason more choices than anyone reads. */
const MOST_OPTIONS = 4;

export function tellNumber(speech: Speech, writer: Writer, ask: NumberAsk, grade: NumberGrade, chosen: number | undefined): Told {
	const { m } = speech;
	const plain = { slips: [], question: undefined, critical: false } as const;
	switch (grade.mark.kind) {
		case 'right':
			return { ...plain, heading: m.page.right, lines: grade.label === undefined && grade.right === undefined ? [m.page.rightNotStated] : [] };
		case 'right-by-rounding':
			return { ...plain, heading: m.page.right, lines: [isCautious(ask, grade) ? m.page.roundedCautious : m.diagnosis.roundedEarly] };
		case 'follows-own':
			return { ...plain, heading: m.page.followsOwn, lines: [m.diagnosis.followsOwn], critical: grade.mark.critical };
		case 'wrong':
			return tellWrong(speech, writer, ask, grade, grade.mark.critical, chosen);
	}
}

/** Whether an answer lies on the cautious side of the right one. */
function isCautious(ask: NumberAsk, grade: NumberGrade): boolean {
	if (grade.answer === undefined || grade.right === undefined) return true;
	const more = grade.answer > grade.right;
	return ask.quantity === 'availableClearance' || ask.quantity === 'lowestCapacity' ? !more : more;
}

function tellWrong(speech: Speech, writer: Writer, ask: NumberAsk, grade: NumberGrade, critical: boolean, chosen: number | undefined): Told {
	const { m } = speech;
	const plain = { slips: [], question: undefined, critical };
	if (grade.label === 'overlooked') {
		const slip = m.slips['label-range-overlooked'];
		const parts = slipParts(speech, writer, ask, undefined);
		return { ...plain, heading: slip.title(parts), lines: [slip.why(parts), slip.rule] };
	}
	if (grade.label === 'misjudged') return { ...plain, heading: m.page.misjudged, lines: [m.page.misjudgedWhy] };
	const { diagnosis } = grade;
	if (diagnosis === undefined || diagnosis.candidates.length === 0) return none(speech, critical);
	if (chosen !== undefined) {
		const candidate = diagnosis.candidates[chosen];
		return candidate === undefined ? none(speech, critical) : told(speech, writer, ask, grade, candidate, 'confirmed', critical);
	}
	if (diagnosis.certainty === 'ambiguous') return ambiguous(speech, writer, ask, grade, diagnosis, critical);
	const best = diagnosis.candidates[0];
	if (best === undefined) return none(speech, critical);
	const certainty = diagnosis.certainty === 'asserted' ? 'asserted' : 'could-be';
	const said = told(speech, writer, ask, grade, best, certainty, critical);
	if (certainty === 'asserted') return said;
	const others = optionsOf(speech, writer, ask, diagnosis, diagnosis.candidates.slice(0, MOST_OPTIONS - 1));
	return { ...said, question: { text: m.page.wasIt, options: [...others, neither(speech, diagnosis)] } };
}

function none(speech: Speech, critical: boolean): Told {
	const { m } = speech;
	return { heading: m.diagnosis.none, lines: [m.diagnosis.noneHelp], slips: [], question: undefined, critical, open: true };
}

function neither(speech: Speech, diagnosis: Diagnosis): Option {
	return { candidate: diagnosis.candidates.length, label: speech.m.diagnosis.neither };
}

function ambiguous(speech: Speech, writer: Writer, ask: NumberAsk, grade: NumberGrade, diagnosis: Diagnosis, critical: boolean): Told {
	const { m } = speech;
	const best = diagnosis.candidates[0];
	const near = diagnosis.candidates.filter((one) => best !== undefined && best.weight - one.weight < LEAD).slice(0, MOST_OPTIONS);
	const typed = grade.read === undefined ? '' : echoQuantity(grade.read, speech.language);
	const two = near.length === 2 ? tellApart(speech, writer, ask, diagnosis, near) : undefined;
	const question = two ?? {
		text: near.length === 2 ? m.diagnosis.twoFit : m.diagnosis.severalFit,
		options: optionsOf(speech, writer, ask, diagnosis, near)
	};
	return {
		heading: m.page.notRight({ typed }),
		lines: [],
		slips: [],
		question: { ...question, options: [...question.options, neither(speech, diagnosis)] },
		critical
	};
}

/** A step in which two explanations hold different numbers: asking for it tells them apart. */
function tellApart(speech: Speech, writer: Writer, ask: NumberAsk, diagnosis: Diagnosis, near: readonly Candidate[]): Told['question'] {
	const [first, second] = near;
	if (first?.kind !== 'slips' || second?.kind !== 'slips') return undefined;
	const ones = stepValues(speech, ask, first.slips);
	const others = stepValues(speech, ask, second.slips);
	for (const [id, value] of ones) {
		const other = others.get(id);
		if (id === ask.quantity || other === undefined || Math.abs(other - value) <= SAME) continue;
		const labels = [writer.quantity(id, value), writer.quantity(id, other)] as const;
		if (labels[0] === labels[1]) continue;
		return {
			text: speech.m.diagnosis.whichUsed({ the: speech.m.quantities[id].the, first: labels[0], second: labels[1] }),
			options: [
				{ candidate: diagnosis.candidates.indexOf(first), label: labels[0] },
				{ candidate: diagnosis.candidates.indexOf(second), label: labels[1] }
			]
		};
	}
	return undefined;
}

function stepValues(speech: Speech, ask: NumberAsk, slips: readonly SlipId[]): ReadonlyMap<QuantityId, number> {
	return new Map(explain(speech.problem, ask, slips).steps.map((step) => [step.id, step.own ?? step.value]));
}

function optionsOf(speech: Speech, writer: Writer, ask: NumberAsk, diagnosis: Diagnosis, among: readonly Candidate[]): readonly Option[] {
	const { m } = speech;
	return among.map((one) => ({
		candidate: diagnosis.candidates.indexOf(one),
		label: one.kind === 'entry' ? m.entrySlips[one.slip.entry].label : one.slips.map((slip) => m.slips[slip].label).join(' + ')
	}));
}

function told(
	speech: Speech,
	writer: Writer,
	ask: NumberAsk,
	grade: NumberGrade,
	candidate: Candidate,
	how: 'asserted' | 'could-be' | 'confirmed',
	critical: boolean
): Told {
	const { m } = speech;
	const base = { question: undefined, critical } as const;
	if (candidate.kind === 'entry') {
		const text = m.entrySlips[candidate.slip.entry];
		return { ...base, heading: text.title(entryParts(speech, writer, ask, grade, candidate.slip)), lines: [text.hint], slips: [] };
	}
	const said = candidate.slips.map((slip) => ({ text: m.slips[slip], parts: slipParts(speech, writer, ask, slip) }));
	const [first, second] = said;
	if (first === undefined) return none(speech, critical);
	const clause = first.text.clause(first.parts);
	const heading =
		second === undefined
			? how === 'asserted'
				? m.diagnosis.asserted({ clause })
				: how === 'confirmed'
					? m.diagnosis.confirmed({ clause })
					: m.diagnosis.couldBe({ clause })
			: how === 'confirmed'
				? m.diagnosis.confirmed({ clause: m.common.list([clause, second.text.clause(second.parts)]) })
				: m.diagnosis.couldBePair({ first: clause, second: second.text.clause(second.parts) });
	const lines = said.flatMap(({ text, parts }) => [text.why(parts), text.rule]);
	return { ...base, heading, lines: [...lines, ...meaning(speech, ask, grade)], slips: candidate.slips };
}

/** What a wrong clearance would have led to: a tie-off that does not fit, or one turned down that does. */
function meaning(speech: Speech, ask: NumberAsk, grade: NumberGrade): readonly string[] {
	const { problem, m } = speech;
	if (ask.quantity !== 'requiredClearance' || grade.answer === undefined || grade.right === undefined) return [];
	const required = atSurface(problem, 'requiredClearance');
	const available = atSurface(problem, 'availableClearance');
	const own = required + (grade.answer - grade.right);
	if (required > available + SAME && own <= available + SAME) return [m.page.looksAsIfItFits];
	return required <= available + SAME && own > available + SAME && analysisOf(problem).verdict.result === 'passes' ? [m.playback.overCautious] : [];
}

function entryParts(speech: Speech, writer: Writer, ask: NumberAsk, grade: NumberGrade, slip: EntrySlip): EntryParts {
	const { m, language } = speech;
	const the =
		slip.entry === 'given-handed-in' && isGivenId(slip.given)
			? namesOf(speech, slip.given).the
			: slip.entry === 'step-handed-in' && isQuantityId(slip.step)
				? m.quantities[slip.step].the
				: '';
	return {
		typed: grade.read === undefined ? '' : echoQuantity(grade.read, language),
		right: grade.right === undefined ? '' : writer.quantity(ask.quantity, grade.right),
		unit: slip.entry === 'other-unit' ? unitSymbol(slip.meant, language) : '',
		the
	};
}

/** The thing below that a slip is about. */
function thingOf(speech: Speech, slip: SlipId | undefined): string {
	const { problem } = speech;
	const { shape } = problem.resolved;
	const { obstacles } = problem.drawn.plan.below;
	const onPath = obstacles.filter((one) => shape.obstacles.includes(one.id));
	const meant =
		slip === 'sometimes-obstacle-ignored'
			? onPath.find((one) => !one.there)
			: slip === 'off-path-counted'
				? obstacles.find((one) => one.there && !shape.obstacles.includes(one.id))
				: undefined;
	const id = meant?.id ?? firstThing(problem).obstacle;
	return id === undefined ? thePlace(speech, 'lowerLevel') : obstacleName(speech, id);
}

function slipParts(speech: Speech, writer: Writer, ask: NumberAsk, slip: SlipId | undefined): SlipParts {
	const { problem, m } = speech;
	const steps = slip === undefined ? [] : explain(problem, ask, [slip]).steps;
	const acting = steps.find((step) => step.slip);
	const right = acting?.value ?? 0;
	const value = acting?.own ?? right;
	const id = acting?.id ?? ask.quantity;
	const datum = datumOf(problem, ask);
	const from =
		datum === 'surface'
			? thePlace(speech, 'surface')
			: datum === 'anchorage'
				? thePlace(speech, 'anchorage')
				: datum === 'connector'
					? m.page.theConnector
					: m.page.theDRing;
	return {
		name: problem.drawn.person,
		value: writer.quantity(id, value),
		right: writer.quantity(id, right),
		term: writer.quantity(id, Math.abs(value - right)),
		thing: thingOf(speech, slip),
		from
	};
}

/** What is said where the numbers are right and the decision is not. */
export function tellDecision(speech: Speech, grade: Extract<Grade, { kind: 'decision' }>): string {
	const { m } = speech;
	if (grade.mark.kind === 'right') return m.marking.decisionRight;
	return grade.decision === 'tie-off' ? m.marking.decisionWrongTieOff : m.marking.decisionWrongRefused;
}

/** The first line over the explanation: which numbers are right, and which are not yet. */
export function summaryOf(speech: Speech, asks: readonly NumberAsk[], grades: Readonly<Record<string, Grade>>): string {
	const { m } = speech;
	return asks
		.flatMap((ask) => {
			const grade = grades[ask.id];
			if (grade?.kind !== 'number') return [];
			const name = m.quantities[ask.quantity].name;
			const right = grade.mark.kind === 'right' || grade.mark.kind === 'right-by-rounding';
			return [right ? m.page.nameRight({ name }) : grade.mark.kind === 'follows-own' ? m.page.nameFollows({ name }) : m.page.nameNotYet({ name })];
		})
		.join(' ');
}
