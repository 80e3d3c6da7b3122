/** How often a check decides rightly over a population whose reliability is spread as a Beta distribution. */

export interface Population {
	readonly a: number;
	readonly b: number;
	/** From which reliability on a worker is competent. */
	readonly cut: number;
}

export interface Quality {
	/** Share of workers decided rightly. */
	readonly accuracy: number;
	/** Share decided alike by two checks. */
	readonly consistency: number;
	/** Share of all workers who pass though they are not competent. */
	readonly falsePass: number;
	/** Share of all workers who fail though they are. */
	readonly falseFail: number;
}

/** Midpoints of the integral over reliability. @reason two more digits than are shown */
const STEPS = 2000;

/** @param pass probability to pass, by reliability. @returns accuracy and consistency, by the midpoint rule. */
export function qualityOf(pass: (right: number) => number, { a, b, cut }: Population): Quality {
	let all = 0;
	let able = 0;
	let passedAble = 0;
	let passedOther = 0;
	let alike = 0;
	for (let i = 0; i < STEPS; i += 1) {
		const p = (i + 0.5) / STEPS;
		const density = p ** (a - 1) * (1 - p) ** (b - 1);
		const t = pass(p);
		all += density;
		alike += density * (t * t + (1 - t) * (1 - t));
		if (p >= cut) {
			able += density;
			passedAble += density * t;
		} else passedOther += density * t;
	}
	return {
		accuracy: (passedAble + all - able - passedOther) / all,
		consistency: alike / all,
		falsePass: passedOther / all,
		falseFail: (able - passedAble) / all
	};
}
