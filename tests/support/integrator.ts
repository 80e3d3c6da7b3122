/**
 * Steps an equation of motion and finds the moment at which something changes. This file and the two that
 * build on it (`integrator-fall.ts`, `integrator-line.ts`) import nothing of src and know no closed form of
 * a fall: what they give is held against the engine's formulas and its simulation.
 *
 * Method: classical Runge-Kutta of fourth order; when a guard changes sign within a step, the length of that
 * step is halved down to the moment.
 */

export type State = readonly number[];
export type Motion = (state: State) => State;
export type Guard = (state: State) => number;

/** s */
const STEP = 2e-3;
/** To which a moment is found, s. */
const MOMENT = 1e-13;
/** After which nothing more is expected, s. */
const LONGEST = 60;

/** @returns the state after one step of length dt. */
export function step(motion: Motion, state: State, dt: number): State {
	const k1 = motion(state);
	const k2 = motion(moved(state, k1, dt / 2));
	const k3 = motion(moved(state, k2, dt / 2));
	const k4 = motion(moved(state, k3, dt));
	const next: number[] = [];
	for (let i = 0; i < state.length; i += 1) {
		const slope = (k1[i] ?? NaN) + 2 * (k2[i] ?? NaN) + 2 * (k3[i] ?? NaN) + (k4[i] ?? NaN);
		next.push((state[i] ?? NaN) + (dt / 6) * slope);
	}
	return next;
}

function moved(state: State, slope: State, dt: number): State {
	const next: number[] = [];
	for (let i = 0; i < state.length; i += 1) next.push((state[i] ?? NaN) + dt * (slope[i] ?? NaN));
	return next;
}

/** Where a stretch of motion ended, and which of its guards ended it. */
export interface Leg {
	/** s */
	readonly time: number;
	readonly state: State;
	readonly guard: number;
}

/**
 * Steps on until the first of the guards rises from below nought to nought or above. A guard that is at
 * nought or above to begin with has to fall below it first.
 * @throws if none does within a minute.
 */
export function until(motion: Motion, from: State, time: number, guards: readonly Guard[], dt = STEP): Leg {
	let state = from;
	let values = guards.map((guard) => guard(state));
	for (let steps = 0; steps * dt < LONGEST; steps += 1) {
		const begin = state;
		const next = step(motion, begin, dt);
		const reached = guards.map((guard) => guard(next));
		const crossed = guards.flatMap((guard, i) =>
			(values[i] ?? NaN) < 0 && (reached[i] ?? NaN) >= 0 ? [{ i, part: moment(motion, begin, dt, guard) }] : []
		);
		if (crossed.length > 0) {
			const first = crossed.reduce((a, b) => (b.part < a.part ? b : a));
			return { time: time + steps * dt + first.part, state: step(motion, begin, first.part), guard: first.i };
		}
		state = next;
		values = reached;
	}
	throw new Error(`no guard reached within ${LONGEST} s`);
}

function moment(motion: Motion, state: State, dt: number, guard: Guard): number {
	let low = 0;
	let high = dt;
	while (high - low > MOMENT) {
		const middle = (low + high) / 2;
		if (guard(step(motion, state, middle)) >= 0) high = middle;
		else low = middle;
	}
	return high;
}
