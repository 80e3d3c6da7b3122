/** What of a drawing does not depend on its scale: the figure, its line, and how far the sheet must reach. Metres. */
import { isOverhead, REACHES, sightOf } from '../backdrop/backdrop.ts';
import { figureShape, type FigureShape } from '../figure/outline.ts';
import { KNEELING, REACHING, solvePose, WORKING } from '../figure/pose.ts';
import type { Place } from '../lanyard/chain.ts';
import { hangLine, type HungLine } from '../lanyard/hang.ts';
import type { SiteModel } from '../model.ts';

/** Things that begin further aside than this are not drawn to their place, m. */
const FAR = 3.2;

/** A site looked at from the other side, so that the worker is never right of the anchorage. */
export function facing(site: SiteModel): SiteModel {
	if (site.worker.offset <= 0) return site;
	return {
		...site,
		worker: { ...site.worker, offset: -site.worker.offset },
		obstacles: site.obstacles.map((o) => ({ ...o, from: -o.to, to: -o.from })),
		dimensions: site.dimensions.map((d) =>
			d.axis === 'horizontal'
				? { ...d, from: { x: -d.to.x }, to: { x: -d.from.x } }
				: d.at === undefined
					? d
					: { ...d, at: -d.at }
		)
	};
}

export interface Metres {
	readonly site: SiteModel;
	readonly sight: 'profile' | 'front';
	readonly dRing: Place;
	readonly shape: FigureShape;
	readonly line: HungLine;
	readonly top: number;
	readonly ground: number;
	readonly edge: number;
	readonly least: number;
	readonly likes: number;
	readonly right: number;
	readonly front: { readonly from: number; readonly to: number };
}

/**
 * @param widest how far right a wide thing is drawn, m
 * @param all whether of every thing at least half a metre is seen, however far aside it begins
 */
export function inMetres(site: SiteModel, widest: number, all: boolean): Metres {
	const { worker, anchorage, lanyard, obstacles } = site;
	const kneeling = worker.posture === 'kneeling';
	const sight = kneeling ? 'front' : sightOf(site);
	const dRing = { x: worker.offset, z: worker.standingHeight + worker.dRingNow };
	const pose = solvePose({
		stature: worker.stature,
		dRingHeight: worker.dRingHeight,
		soleDrop: worker.dRingNow,
		slid: 0,
		stance: kneeling ? KNEELING : sight === 'profile' && REACHES[site.backdrop] ? REACHING : WORKING,
		kneeling
	});
	const shape = figureShape(pose);
	const line = hangLine(anchorage, lanyard.length, dRing);
	const head = Math.max(...shape.extent.map((s) => s.v)) + dRing.z;
	const overhead = isOverhead(site);
	const top = Math.max(anchorage.height + (overhead ? 0.46 : 0.25), head + 0.15);
	const swing = Math.abs(worker.offset);
	const reach = Math.max(...line.all.map((p) => p.x), 0.12);
	// A wide thing is cut off, but of each at least half a metre is seen.
	const obstacleRight = Math.max(-Infinity, ...obstacles.filter((o) => all || o.from < widest - 0.05).map((o) => Math.min(o.to, all ? Math.max(widest, Math.min(o.from, FAR) + 0.5) : widest)));
	const obstacleLeft = Math.min(Infinity, ...obstacles.map((o) => o.from));
	const front = {
		from: Math.min(-1.05, worker.offset - 0.95),
		to: Math.max(0.55, reach + 0.2)
	};
	return {
		site,
		sight,
		dRing,
		shape,
		line,
		top,
		ground: -site.lowerLevel.depth,
		edge: -0.045,
		least: sight === 'profile' ? Math.max(1.0, Math.min(-obstacleLeft + 0.05, 1.3)) : Math.max(1.0, swing + 1.0, Math.min(-obstacleLeft + 0.1, swing + 1.6)),
		likes: sight === 'profile' ? 1.85 : Math.max(1.5, swing + 1.5, Math.min(-obstacleLeft + 0.3, swing + 2.2)),
		right: Math.max(sight === 'front' ? front.to : 0.2, obstacleRight),
		front
	};
}
