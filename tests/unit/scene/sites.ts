/** Random sites for layout tests, extremes among them. */
import fc from 'fast-check';
import type { BackdropId, ObstacleKind, SiteDimension, SiteModel } from '../../../src/lib/scene/model.ts';

export const BACKDROP_IDS: readonly BackdropId[] = [
	'bridge-bearing',
	'flat-roof-edge',
	'turbine-nacelle',
	'silo-top',
	'loading-dock',
	'stage-grid',
	'telecom-mast',
	'tank-roof',
	'lift-shaft',
	'formwork-deck'
];

const KINDS: readonly ObstacleKind[] = ['stack', 'vehicle', 'beam', 'railing', 'machine', 'tank', 'water', 'canopy'];

const metres = (min: number, max: number): fc.Arbitrary<number> =>
	fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);

const NAMES = ['forklift, at times', 'stacked panels', 'camión de reparto, a veces presente', 'rail', 'pompe', 'compressor with its hose reel'];

export const sites: fc.Arbitrary<SiteModel> = fc
	.record({
		backdrop: fc.constantFrom(...BACKDROP_IDS),
		units: fc.constantFrom('metric' as const, 'us-decimal' as const, 'us-inch' as const),
		stature: metres(1.55, 2.0),
		ringShare: metres(0.78, 0.83),
		kneeling: fc.boolean(),
		kneel: metres(0.55, 0.66),
		step: fc.constantFrom(0, 0, 0, 0.3, 0.6),
		offset: fc.constantFrom(0, 0, 0, 0.6, 1.2, -0.9),
		anchor: metres(-0.4, 1.6),
		connector: fc.constantFrom(0, 0, 0.6, 0.9),
		lies: fc.constantFrom('hanging' as const, 'slack' as const),
		lanyard: metres(1.2, 2.0),
		depth: fc.oneof(metres(2.5, 8), metres(8, 30)),
		obstacles: fc.array(
			fc.record({ kind: fc.constantFrom(...KINDS), top: metres(0.4, 2), from: metres(-0.9, 0.1), wide: metres(0.6, 2), there: fc.boolean(), name: fc.constantFrom(...NAMES) }),
			{ maxLength: 2 }
		),
		decoy: fc.boolean()
	})
	.map((r): SiteModel => {
		const dRingHeight = Math.round(r.stature * r.ringShare * 100) / 100;
		const dRingNow = r.kneeling ? Math.round(dRingHeight * r.kneel * 100) / 100 : dRingHeight;
		const height = Math.round((r.step + dRingNow + r.anchor) * 100) / 100;
		const number = (z: number): string => (r.units === 'us-inch' ? `${Math.floor(Math.abs(z) / 0.3048)}' ${Math.round((Math.abs(z) / 0.0254) % 12)}"` : Math.abs(z).toFixed(r.units === 'metric' ? 2 : 1));
		const ground = -r.depth;
		const dimensions: SiteDimension[] = [
			{ id: 'ring', axis: 'vertical', from: r.step > 0 ? 'standing' : 'surface', to: { z: r.step + dRingNow }, label: number(dRingNow), name: 'D-ring' },
			{ id: 'anchor', axis: 'vertical', from: 'surface', to: { z: height }, label: number(height), name: 'anchorage' },
			{ id: 'depth', axis: 'vertical', from: 'lower-level', to: { z: 0 }, label: number(r.depth), name: '' }
		];
		if (r.step > 0) dimensions.push({ id: 'step', axis: 'vertical', from: 'surface', to: { z: r.step }, label: number(r.step), name: 'step' });
		if (r.offset !== 0) dimensions.push({ id: 'offset', axis: 'horizontal', from: { x: r.offset }, to: { x: 0 }, at: r.step + dRingNow, label: number(r.offset), name: '' });
		if (r.decoy) dimensions.push({ id: 'decoy', axis: 'vertical', from: 'surface', to: { z: 1.1 }, label: number(1.1), name: 'top rail' });
		const obstacles = r.obstacles.map((o, i) => ({ id: `o${i}`, name: o.name, kind: o.kind, top: Math.min(o.top, r.depth * 0.5), from: o.from + i * 2.4, to: o.from + i * 2.4 + o.wide, sometimes: !o.there, there: o.there }));
		obstacles.forEach((o) => dimensions.push({ id: `top-${o.id}`, axis: 'vertical', from: 'lower-level', to: { z: ground + o.top }, label: number(o.top), name: '' }));
		return {
			units: r.units,
			language: 'en',
			backdrop: r.backdrop,
			worker: { dRingHeight, dRingNow, stature: r.stature, posture: r.kneeling ? 'kneeling' : 'standing', standingHeight: r.step, offset: r.offset },
			anchorage: { height, connectorLength: r.connector, connectorLies: r.lies },
			lanyard: { length: r.lanyard },
			lowerLevel: { depth: r.depth, name: 'ground' },
			obstacles,
			dimensions,
			levels: [
				{ z: 0, name: 'landing' },
				{ z: ground, name: 'ground' }
			]
		};
	});
