/** How connector and lanyard hang before the fall, from the structure to the D-ring. Metres. */
import type { SiteAnchorage } from '../model.ts';
import { distance, lengthOf, LINKS, openingLine, PACK, type Place, relaxChain } from './chain.ts';

export interface HungLine {
	/** Where the connector bears on the structure, or the hook when there is none. */
	readonly structure: Place;
	/** Lanyard hook at the anchorage. */
	readonly hook: Place;
	/** The anchorage connector; empty when there is none. */
	readonly connector: readonly Place[];
	/** The lanyard up to its pack. */
	readonly rope: readonly Place[];
	readonly pack: readonly [Place, Place];
	/** Every place from the hook to the D-ring: the whole lanyard. */
	readonly lanyard: readonly Place[];
	readonly all: readonly Place[];
}

/** Splits a chain at a way from its start. */
function split(points: readonly Place[], way: number): { head: Place[]; tail: Place[] } {
	const head: Place[] = [];
	const tail: Place[] = [];
	let left = way;
	let last: Place | undefined;
	for (const p of points) {
		if (last === undefined) {
			head.push(p);
		} else {
			const d = distance(last, p);
			if (left >= d) {
				head.push(p);
			} else {
				if (tail.length === 0) {
					const s = d === 0 ? 0 : left / d;
					const at = { x: last.x + (p.x - last.x) * s, z: last.z + (p.z - last.z) * s };
					head.push(at);
					tail.push(at);
				}
				tail.push(p);
			}
			left -= Math.min(left, d);
		}
		last = p;
	}
	return { head, tail };
}

/**
 * The line at rest. A hanging connector hangs straight; one that lies slack forms one slack line with the
 * lanyard. `openSide` is the side of the back: +1 when the figure faces left.
 */
export function hangLine(anchorage: SiteAnchorage, length: number, dRing: Place, openSide: 1 | -1 = 1): HungLine {
	const structure = { x: 0, z: anchorage.height };
	const c = Math.max(0, anchorage.connectorLength);
	const hangs = anchorage.connectorLies === 'hanging' && c > 0;
	const hook = { x: 0, z: anchorage.height - c };
	let connector: Place[] = [];
	let lanyard: Place[];
	if (c === 0 || (hangs && distance(hook, dRing) <= length)) {
		if (hangs) connector = [structure, hook];
		lanyard = relaxChain({ from: c === 0 ? structure : hook, to: dRing, length, stiffEnd: PACK, openSide });
	} else {
		const whole = relaxChain({
			from: structure,
			to: dRing,
			length: c + length,
			links: Math.min(140, Math.round((LINKS * (c + length)) / length)),
			stiffEnd: PACK,
			openSide
		});
		const parts = split(whole, (c * lengthOf(whole)) / (c + length));
		connector = parts.head;
		lanyard = parts.tail;
	}
	const { head, tail } = split(lanyard, lengthOf(lanyard) - PACK);
	const first = lanyard[0] ?? structure;
	return {
		structure,
		hook: first,
		connector,
		rope: head,
		pack: [tail[0] ?? dRing, dRing],
		lanyard,
		all: [...connector, ...lanyard]
	};
}

export { openingLine, PACK };
