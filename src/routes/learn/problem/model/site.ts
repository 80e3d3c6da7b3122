/** The drawing's model of a plan: its geometry, and the givens that the drawing shows. Never an answer. */
import type { GivenId } from '#lib/arrest/index.ts';
import { givenValue, isShown } from '#lib/scenario/index.ts';
import type { SiteDimension, SiteLevel, SiteModel, SiteObstacle, ObstacleKind } from '#lib/scene/index.ts';
import { givenShort, obstacleLabel, placeLabel, type FirstSpeech } from './names.ts';
import { slotsOf } from './slots.ts';
import type { Writer } from './writing.ts';

/** Where in the drawing a given is measured. */
function dimensionsOf(speech: FirstSpeech, writer: Writer): readonly SiteDimension[] {
	const { problem } = speech;
	const { plan } = problem.drawn;
	const { worker, anchorage, below, offset } = plan;
	const told = slotsOf(problem, speech.language);
	const dimensions: SiteDimension[] = [];
	const dRingNow = worker.posture === 'standing' ? worker.dRingHeight : (worker.dRingNow ?? worker.dRingHeight);

	const shown = (id: GivenId): number | undefined => (isShown(problem, id) ? givenValue(problem, id) : undefined);
	const vertical = (id: GivenId, from: 'surface' | 'standing' | 'lower-level' | { readonly z: number }, to: number): void => {
		const value = shown(id);
		if (value === undefined) return;
		dimensions.push({ axis: 'vertical', id, from, to: { z: to }, label: writer.bareLength(value), name: givenShort(speech, id) });
	};

	vertical(worker.posture === 'standing' ? 'dRingHeight' : 'dRingNow', 'standing', worker.standingHeight + dRingNow);
	vertical('anchorageHeight', 'surface', anchorage.height);
	if (worker.standingHeight !== 0) vertical('standingHeight', 'surface', worker.standingHeight);
	// A strap that lies slack has no height of its own: its length stands on its label.
	if (anchorage.connector?.lies === 'hanging') {
		vertical('connectorLength', { z: anchorage.height }, anchorage.height - anchorage.connector.length);
	}
	const stature = givenValue(problem, 'stature');
	if (stature !== undefined && worker.posture === 'standing' && !told.has('stature')) {
		vertical('stature', 'standing', worker.standingHeight + stature);
	}
	vertical('railHeight', 'surface', givenValue(problem, 'railHeight') ?? 0);
	vertical('lowerLevelDepth', 'surface', -below.depth);
	vertical('otherFloorDrop', 'surface', -(givenValue(problem, 'otherFloorDrop') ?? 0));
	for (const one of below.obstacles) {
		const value = givenValue(problem, `obstacleTop_${one.id}`);
		if (value === undefined) continue;
		dimensions.push({
			axis: 'vertical',
			id: `obstacleTop_${one.id}`,
			from: 'lower-level',
			to: { z: one.top - below.depth },
			label: writer.bareLength(value),
			// The thing stands there with its own name.
			name: '',
			at: Math.max(one.from, Math.min(one.to, (one.from + one.to) / 2))
		});
	}
	if (offset.distance > 0) {
		dimensions.push({
			axis: 'horizontal',
			id: 'offset',
			from: { x: 0 },
			to: { x: offset.distance },
			at: worker.standingHeight + dRingNow,
			label: writer.bareLength(offset.distance),
			name: givenShort(speech, 'offset')
		});
	}
	return dimensions;
}

function levelsOf(speech: FirstSpeech): readonly SiteLevel[] {
	const { problem } = speech;
	const { plan } = problem.drawn;
	const levels: SiteLevel[] = [
		{ z: 0, name: placeLabel(speech, 'surface') },
		{ z: -plan.below.depth, name: placeLabel(speech, 'lowerLevel') }
	];
	const otherFloor = givenValue(problem, 'otherFloorDrop');
	if (otherFloor !== undefined && isShown(problem, 'otherFloorDrop')) {
		levels.push({ z: -otherFloor, name: placeLabel(speech, 'otherFloor') });
	}
	return levels;
}

/** @reason teaching value for how tall a person is where nobody says so; drawn, never counted. */
const USUAL_STATURE = 1.75;

const KINDS: readonly ObstacleKind[] = ['stack', 'vehicle', 'beam', 'railing', 'machine', 'tank', 'water', 'canopy'];

/** What kind of thing an obstacle is drawn as: scenarios name it by its id; a stack where it is none of them. */
function kindOf(id: string): ObstacleKind {
	return KINDS.find((kind) => kind === id) ?? 'stack';
}

/** @returns what the drawing is told about a problem. */
export function siteModel(speech: FirstSpeech, writer: Writer): SiteModel {
	const { problem, language } = speech;
	const { scenario, drawn } = problem;
	const { plan } = drawn;
	const { worker, anchorage, below } = plan;
	return {
		units: scenario.units,
		language,
		backdrop: scenario.backdrop,
		worker: {
			dRingHeight: worker.dRingHeight,
			dRingNow: worker.posture === 'standing' ? worker.dRingHeight : (worker.dRingNow ?? worker.dRingHeight),
			stature: worker.stature ?? givenValue(problem, 'stature') ?? Math.max(USUAL_STATURE, worker.dRingHeight),
			posture: worker.posture === 'standing' ? 'standing' : 'kneeling',
			standingHeight: worker.standingHeight,
			offset: plan.offset.distance
		},
		anchorage: {
			height: anchorage.height,
			connectorLength: anchorage.connector?.length ?? 0,
			connectorLies: anchorage.connector?.lies ?? 'hanging'
		},
		lanyard: { length: plan.lanyard.length },
		lowerLevel: { depth: below.depth, name: placeLabel(speech, 'lowerLevel') },
		obstacles: below.obstacles.map(
			(one): SiteObstacle => ({
				id: one.id,
				name: obstacleLabel(speech, one.id),
				kind: kindOf(one.id),
				top: one.top,
				from: one.from,
				to: one.to,
				sometimes: one.present !== 'always',
				there: one.there
			})
		),
		dimensions: dimensionsOf(speech, writer),
		levels: levelsOf(speech)
	};
}
