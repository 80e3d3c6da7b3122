/** The numbers of a problem that stand on labels, beside the drawing, or anywhere: every shown given has a place. */
import type { FixedGivenId, GivenId } from '#lib/arrest/index.ts';
import { GIVENS } from '#lib/arrest/index.ts';
import { givenValue, isShown } from '#lib/scenario/index.ts';
import { givenName, obstacleName, type FirstSpeech } from './names.ts';
import { slotsOf } from './slots.ts';
import type { Writer } from './writing.ts';

export interface PlateRow {
	readonly id: string;
	readonly name: string;
	readonly value: string;
}

export interface Plate {
	readonly id: string;
	readonly title: string;
	readonly rows: readonly PlateRow[];
}

const ABSORBER: readonly FixedGivenId[] = ['lanyardLength', 'elongation', 'peakForce', 'conditionedForce', 'averageForce', 'labelFreeFall', 'statedDeceleration', 'lanyardCapacity'];
const HARNESS: readonly FixedGivenId[] = ['dRingSlide', 'harnessStretch', 'harnessCapacity'];
const ANCHORAGE: readonly FixedGivenId[] = ['anchorageStrength', 'connectorLength', 'connectorCapacity'];
const PERSON: readonly FixedGivenId[] = ['stature', 'dRingHeight', 'bodyMass', 'clothingMass', 'equipmentMass', 'toolsMass', 'tetheredMass'];
const RULE: readonly FixedGivenId[] = ['margin', 'freeFallLimit'];
const ELSEWHERE: readonly FixedGivenId[] = ['otherMargin', 'otherElongation', 'slackShown'];

function shownValue(speech: FirstSpeech, id: GivenId): number | undefined {
	return isShown(speech.problem, id) ? givenValue(speech.problem, id) : undefined;
}

function rowsOf(speech: FirstSpeech, writer: Writer, ids: readonly GivenId[]): PlateRow[] {
	return ids.flatMap((id) => {
		const value = shownValue(speech, id);
		if (value === undefined || (value === 0 && id.endsWith('Mass'))) return [];
		return [{ id, name: givenName(speech, id), value: writer.given(id, value) }];
	});
}

/** The mass range of a label as one row: "60 to 140 kg". */
function massRange(speech: FirstSpeech, writer: Writer): PlateRow[] {
	const { m } = speech;
	const min = shownValue(speech, 'labelMassMin');
	const max = shownValue(speech, 'labelMassMax');
	if (min === undefined || max === undefined) return rowsOf(speech, writer, ['labelMassMin', 'labelMassMax']);
	const value = m.page.range({ from: writer.bare(min, GIVENS.labelMassMin.dimension), to: writer.given('labelMassMax', max) });
	return [{ id: 'labelMass', name: m.page.userWithTools, value }];
}

/** @returns the labels on the gear, each with the fields that it states. */
export function platesOf(speech: FirstSpeech, writer: Writer): readonly Plate[] {
	const { m, problem } = speech;
	const { absorber } = problem.drawn.plan;
	const type = problem.resolved.class;
	const classRow = type === undefined ? [] : [{ id: 'class', name: m.page.absorberClass, value: type.title }];
	const plates: Plate[] = [
		{
			id: 'lanyard',
			title: absorber === null ? m.page.plates.lanyard : m.page.plates.absorber,
			rows: [...classRow, ...rowsOf(speech, writer, ABSORBER), ...massRange(speech, writer)]
		},
		{ id: 'harness', title: m.page.plates.harness, rows: rowsOf(speech, writer, HARNESS) },
		{ id: 'anchorage', title: m.page.plates.anchorage, rows: rowsOf(speech, writer, ANCHORAGE) }
	];
	return plates.filter((plate) => plate.rows.length > 0);
}

/** @returns what holds here by rule and practice. */
export function ruleRows(speech: FirstSpeech, writer: Writer): readonly PlateRow[] {
	return rowsOf(speech, writer, RULE);
}

/** @returns numbers of the person and of things elsewhere that the story does not tell. */
export function besideRows(speech: FirstSpeech, writer: Writer): readonly PlateRow[] {
	const told = slotsOf(speech.problem, speech.language);
	const drawn: readonly FixedGivenId[] = speech.problem.drawn.plan.worker.posture === 'standing' ? ['dRingHeight', 'stature'] : [];
	return rowsOf(
		speech,
		writer,
		[...PERSON, ...ELSEWHERE].filter((id) => !told.has(id) && !drawn.includes(id))
	);
}

export interface ListedGiven extends PlateRow {
	/** What it is, in a sentence. */
	readonly what: string;
}

/** @returns every number that stands in the problem, decoys too: the problem can be solved from this list alone. */
export function allGivens(speech: FirstSpeech, writer: Writer): readonly ListedGiven[] {
	const { problem, m } = speech;
	const lowered = problem.drawn.plan.worker.posture !== 'standing';
	const skipped = (id: FixedGivenId, value: number): boolean =>
		(id === 'dRingNow' && !lowered) || (value === 0 && (id.endsWith('Mass') || id === 'offset' || id === 'standingHeight'));
	const fixed = (Object.keys(GIVENS) as FixedGivenId[]).flatMap((id) => {
		const value = shownValue(speech, id);
		if (value === undefined || skipped(id, value)) return [];
		return [{ id, name: givenName(speech, id), value: writer.given(id, value), what: m.givens[id].what }];
	});
	const tops = problem.drawn.plan.below.obstacles.map((one) => {
		const id = `obstacleTop_${one.id}` as const;
		const place = { thing: obstacleName(speech, one.id), from: writer.length(one.from), to: writer.length(one.to) };
		return { id, name: givenName(speech, id), value: writer.given(id, one.top), what: one.there ? m.page.obstacleStands(place) : m.page.obstacleCanCome(place) };
	});
	return [...fixed, ...tops];
}
