/**
 * A slack line as a chain of links of its true length: gravity, a least bending radius, a stiff pack at the
 * D-ring, and a back it does not pass through. Relaxed in a fixed number of steps from a fixed start, so the
 * same plan always hangs the same way. Lengths m; x right, z up.
 */
export interface Place {
	readonly x: number;
	readonly z: number;
}

export interface ChainRequest {
	/** The hook at the anchorage. */
	readonly from: Place;
	/** The bearing top of the D-ring. */
	readonly to: Place;
	readonly length: number;
	readonly links?: number;
	/** Stiff length at the D-ring end: the absorber pack. */
	readonly stiffEnd?: number;
	/** +1: the body is left of the D-ring and the line stays right of it; −1 the other way; 0: free. */
	readonly openSide: 1 | -1 | 0;
	/** Relaxation steps; fewer for a ghost in the playback. */
	readonly steps?: number;
}

export const LINKS = 72;
export const PACK = 0.24;
const LEAST_RADIUS = 0.1;
const SWEEPS = 10;

/** Straight distance between two places, m. */
export function distance(a: Place, b: Place): number {
	return Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.z - b.z) * (a.z - b.z));
}

/** Length of a line through places, m. */
export function lengthOf(points: readonly Place[]): number {
	let sum = 0;
	let last: Place | undefined;
	for (const p of points) {
		if (last !== undefined) sum += distance(last, p);
		last = p;
	}
	return sum;
}

/** A place a given way along a broken line, m from its start. */
function along(path: readonly Place[], way: number): Place {
	let left = way;
	let last = path[0] ?? { x: 0, z: 0 };
	for (const p of path.slice(1)) {
		const d = distance(last, p);
		if (left <= d && d > 0) {
			const s = left / d;
			return { x: last.x + (p.x - last.x) * s, z: last.z + (p.z - last.z) * s };
		}
		left -= d;
		last = p;
	}
	return last;
}

/** Where the relaxation starts: down from one end, a short floor, up to the other. */
function firstGuess(request: ChainRequest): Place[] {
	const { from, to, length, openSide } = request;
	const side = openSide === 0 ? 1 : openSide;
	const wide = 0.16;
	const fall = Math.max(0, (length - wide - Math.abs(from.z - to.z)) / 2);
	const bottom = Math.min(from.z, to.z) - fall;
	const gapNow = (from.x - to.x) * side;
	const out = gapNow > wide ? from.x : to.x + side * (wide + 0.06);
	const inner = to.x + side * 0.06;
	return [from, { x: out, z: Math.max(bottom, Math.min(from.z, to.z) - fall) }, { x: inner, z: bottom }, to];
}

/**
 * The relaxed chain from the anchorage hook to the D-ring, `links + 1` places. When the ends are as far
 * apart as the line is long (or further: it then cannot hang slack) it is straight.
 */
export function relaxChain(request: ChainRequest): Place[] {
	const { from, to, length, openSide } = request;
	const n = request.links ?? LINKS;
	const steps = request.steps ?? 150;
	const span = distance(from, to);
	const straight = (i: number): Place => ({
		x: from.x + ((to.x - from.x) * i) / n,
		z: from.z + ((to.z - from.z) * i) / n
	});
	if (span >= length * 0.9995) return Array.from({ length: n + 1 }, (_, i) => (i === 0 ? from : i === n ? to : straight(i)));

	const link = length / n;
	const guess = firstGuess(request);
	const guessLength = lengthOf(guess);
	const x = new Float64Array(n + 1);
	const z = new Float64Array(n + 1);
	for (let i = 0; i <= n; i++) {
		const p = along(guess, (guessLength * i) / n);
		x[i] = p.x;
		z[i] = p.z;
	}
	x[0] = from.x;
	z[0] = from.z;
	x[n] = to.x;
	z[n] = to.z;
	const oldX = Float64Array.from(x);
	const oldZ = Float64Array.from(z);
	const stiff = Math.min(n - 2, Math.round((request.stiffEnd ?? 0) / link));
	// Least radius: places a quarter turn apart may not come nearer than the chord of that arc.
	const arc = Math.max(2, Math.round((1.6 * LEAST_RADIUS) / link));
	const chord = 2 * LEAST_RADIUS * Math.sin((arc * link) / (2 * LEAST_RADIUS));
	const at = (a: Float64Array, i: number): number => a[i] ?? 0;

	/** Draws places i and j to `d` apart; when `least`, only if they are nearer. */
	const hold = (i: number, j: number, d: number, least: boolean): void => {
		const dx = at(x, j) - at(x, i);
		const dz = at(z, j) - at(z, i);
		const now = Math.sqrt(dx * dx + dz * dz);
		if (now < 1e-9 || (least && now >= d)) return;
		const wi = i === 0 || i === n ? 0 : 1;
		const wj = j === 0 || j === n ? 0 : 1;
		if (wi + wj === 0) return;
		const f = (now - d) / now / (wi + wj);
		x[i] = at(x, i) + dx * f * wi;
		z[i] = at(z, i) + dz * f * wi;
		x[j] = at(x, j) - dx * f * wj;
		z[j] = at(z, j) - dz * f * wj;
	};
	const sweep = (bending: boolean): void => {
		for (let i = 0; i < n; i++) hold(i, i + 1, link, false);
		for (let i = n - 1; i >= 0; i--) hold(i, i + 1, link, false);
		if (bending) for (let i = 0; i + arc <= n; i++) hold(i, i + arc, chord, true);
		if (stiff > 1) {
			hold(n - stiff, n, stiff * link, false);
			const base = n - stiff;
			for (let i = base + 1; i < n; i++) {
				const s = (i - base) / stiff;
				x[i] = at(x, base) + (at(x, n) - at(x, base)) * s;
				z[i] = at(z, base) + (at(z, n) - at(z, base)) * s;
			}
		}
		if (openSide !== 0) {
			for (let i = 1; i < n; i++) {
				// The back bulges a little behind the D-ring below it.
				const below = to.z - at(z, i);
				const need = to.x + openSide * (below > 0.04 && below < 1 ? 0.06 : 0.004);
				if (below < 1.15 && below > -0.5 && (at(x, i) - need) * openSide < 0) x[i] = need;
			}
		}
	};

	const gravity = 0.0011;
	for (let step = 0; step < steps; step++) {
		const keep = step < steps * 0.7 ? 0.92 : 0.6;
		for (let i = 1; i < n; i++) {
			const vx = (at(x, i) - at(oldX, i)) * keep;
			const vz = (at(z, i) - at(oldZ, i)) * keep;
			oldX[i] = at(x, i);
			oldZ[i] = at(z, i);
			x[i] = at(x, i) + vx;
			z[i] = at(z, i) + vz - gravity;
		}
		for (let s = 0; s < SWEEPS; s++) sweep(true);
	}
	for (let s = 0; s < 40; s++) sweep(true);
	exactLinks(x, z, link);
	return Array.from({ length: n + 1 }, (_, i) => ({ x: at(x, i), z: at(z, i) }));
}

/**
 * Gives every link its length with both ends kept: reaching forwards and backwards by turns, which changes
 * the shape least and leaves the whole error in the last link, where it dies out.
 */
function exactLinks(x: Float64Array, z: Float64Array, link: number): void {
	const n = x.length - 1;
	const at = (a: Float64Array, i: number): number => a[i] ?? 0;
	const ends = [at(x, 0), at(z, 0), at(x, n), at(z, n)] as const;
	const place = (i: number, from: number): void => {
		const dx = at(x, i) - at(x, from);
		const dz = at(z, i) - at(z, from);
		const d = Math.max(1e-9, Math.sqrt(dx * dx + dz * dz));
		x[i] = at(x, from) + (dx * link) / d;
		z[i] = at(z, from) + (dz * link) / d;
	};
	for (let pass = 0; pass < 400; pass++) {
		for (let i = n - 1; i >= 0; i--) place(i, i + 1);
		const gap = Math.sqrt((at(x, 0) - ends[0]) ** 2 + (at(z, 0) - ends[1]) ** 2);
		x[0] = ends[0];
		z[0] = ends[1];
		if (gap < link * 0.02) break;
		for (let i = 1; i <= n; i++) place(i, i - 1);
		x[n] = ends[2];
		z[n] = ends[3];
	}
}

/**
 * The line while the absorber opens: straight, with a zigzag over the length run out so far and the part of
 * the pack it comes from. The zigzag ends where what is left of the pack begins, at the D-ring.
 */
export interface OpeningLine {
	readonly straight: readonly Place[];
	readonly zigzag: readonly Place[];
	readonly pack: readonly [Place, Place];
}

/** @param deployed length torn out so far, m @param amplitude half width of the zigzag, m */
export function openingLine(from: Place, to: Place, deployed: number, amplitude: number): OpeningLine {
	const span = distance(from, to);
	const dx = span === 0 ? 0 : (to.x - from.x) / span;
	const dz = span === 0 ? 1 : (to.z - from.z) / span;
	const at = (way: number, side = 0): Place => ({
		x: from.x + dx * way - dz * side,
		z: from.z + dz * way + dx * side
	});
	const packLeft = deployed <= 0 ? PACK : 0.1;
	const torn = deployed <= 0 ? 0 : Math.min(span - packLeft, deployed + (PACK - packLeft));
	const packTop = span - packLeft;
	const tearTop = packTop - torn;
	const teeth = Math.max(2, Math.round(torn / 0.055));
	const zigzag: Place[] = torn <= 0 ? [] : [at(tearTop)];
	if (torn > 0) {
		for (let i = 0; i < teeth; i++) {
			zigzag.push(at(tearTop + ((i + 0.5) * torn) / teeth, i % 2 === 0 ? amplitude : -amplitude));
		}
		zigzag.push(at(packTop));
	}
	return { straight: [from, at(tearTop)], zigzag, pack: [at(packTop), to] };
}
