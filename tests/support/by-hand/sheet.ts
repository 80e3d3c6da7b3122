/**
 * One person's sheet of paper: every quantity worked out as that person does it, slips included. The
 * arithmetic stands here once more, by hand and from words, so that the engine has something to be
 * compared with: nothing of src/lib is imported.
 */
import type { HandDatum, HandRounding, HandStep, HandTarget, HandValues } from './values.ts';

/** Standard gravity, m/s² (3rd CGPM 1901; 9.80665 exactly). */
const GRAVITY = 9.80665;

/** Thrown where a number is needed that the problem does not show. */
class NotShown extends Error {}

function shown(value: number | undefined): number {
	if (value === undefined) throw new NotShown();
	return value;
}

/**
 * A sheet notes which slips found a place while the asked quantity was worked out: one that did not is
 * no slip of this ask. Where two meet in one place, the first of the order acts and the other finds
 * its place gone.
 */
class Sheet {
	readonly #v: HandValues;
	readonly #slips: readonly string[];
	readonly #rounding: HandRounding | undefined;
	/** The slips that found a place, each with the step of the working in which it did first. */
	readonly acted = new Map<string, HandStep>();
	/** The swing drop is all that is asked: the offset taken off the line would leave the offset, which is another slip. */
	#swingAlone = false;

	constructor(values: HandValues, slips: readonly string[], rounding: HandRounding | undefined) {
		this.#v = values;
		this.#slips = slips;
		this.#rounding = rounding;
	}

	/** Called in the very place of a slip: whether this person makes it here. */
	#makes(slip: string, step: HandStep): boolean {
		if (!this.#slips.includes(slip)) return false;
		if (!this.acted.has(slip)) this.acted.set(slip, step);
		return true;
	}

	#length(metres: number): number {
		return this.#rounding?.length(metres) ?? metres;
	}

	/** D-ring above the soles, as this person takes it. */
	#dRing(step: HandStep): number {
		const { stature, custom, dRingHeight } = this.#v;
		const mistakable = stature !== undefined && custom === 'd-ring-and-stretch';
		return mistakable && this.#makes('stature-for-d-ring', step) ? stature : dRingHeight;
	}

	/** D-ring above the standing place in the posture of work, as this person takes it. */
	#dRingNow(step: HandStep): number {
		if (!this.#v.kneeling) return this.#dRing(step);
		return this.#makes('posture-ignored', step) ? this.#v.dRingHeight : this.#v.dRingNow;
	}

	/** The connector, each time it is counted in. */
	#connector(step: HandStep): number {
		const { connectorLength } = this.#v;
		if (connectorLength === 0) return 0;
		if (this.#makes('connector-left-out', step)) return 0;
		return this.#makes('connector-twice', step) ? connectorLength + connectorLength : connectorLength;
	}

	/** Anchorage above the D-ring. */
	#rise(): number {
		const { anchorageHeight, otherFloorDrop, standingHeight } = this.#v;
		let anchorage = anchorageHeight;
		if (otherFloorDrop !== undefined && this.#makes('wrong-floor', 'rise')) anchorage += otherFloorDrop;
		if (this.#makes('anchorage-height-added', 'rise')) anchorage = -anchorage;
		if (this.#makes('d-ring-left-out', 'rise')) return this.#length(anchorage);
		let rise = anchorage - this.#dRingNow('rise');
		if (standingHeight !== 0 && !this.#makes('standing-place-ignored', 'rise')) rise -= standingHeight;
		return this.#length(rise);
	}

	/** Lanyard and connector; straight below the anchorage they are two terms of the free fall, no step of their own. */
	#line(): number {
		const step = this.#v.offset > 0 ? 'lineLength' : 'freeFall';
		return this.#length(this.#v.lanyardLength + this.#connector(step));
	}

	/** How far below the anchorage the line comes taut. */
	#tautDepth(): number {
		const line = this.#line();
		const { offset } = this.#v;
		if (offset === 0 || this.#makes('offset-ignored', 'tautDepth')) return line;
		if (!this.#swingAlone && this.#makes('offset-subtracted', 'tautDepth')) return this.#length(line - offset);
		return this.#length(Math.sqrt(line * line - offset * offset));
	}

	#freeFall(): number {
		let fall = this.#fallAsRead();
		const { elongation, slackShown } = this.#v;
		if (elongation !== undefined && this.#makes('elongation-in-free-fall', 'freeFall')) fall += elongation;
		if (slackShown !== undefined && this.#makes('slack-added', 'freeFall')) fall += slackShown;
		return this.#length(fall);
	}

	#fallAsRead(): number {
		const { labelFreeFall, freeFallLimit, lanyardLength, connectorLength, offset } = this.#v;
		const limit = labelFreeFall ?? freeFallLimit;
		if (limit !== undefined && this.#makes('limit-for-value', 'freeFall')) return limit;
		if (this.#makes('lanyard-for-free-fall', 'freeFall')) return lanyardLength;
		const depth = this.#tautDepth();
		if ((connectorLength > 0 || offset > 0) && this.#makes('heights-left-out', 'freeFall')) return depth;
		const rise = this.#rise();
		return this.#makes('heights-wrong-way', 'freeFall') ? depth + rise : depth - rise;
	}

	#swingDrop(): number {
		if (this.#v.offset > 0 && this.#makes('offset-for-swing-drop', 'swingDrop')) return this.#v.offset;
		return this.#length(this.#line() - this.#tautDepth());
	}

	#mass(): number {
		const { bodyMass, clothingMass, equipmentMass, toolsMass, tetheredMass } = this.#v;
		let mass = shown(bodyMass);
		let beside = [clothingMass, equipmentMass, toolsMass].filter((part) => part > 0).length;
		if (beside === 0 || !this.#makes('body-mass-alone', 'massAttached')) {
			mass += clothingMass;
			if (toolsMass > 0 && beside > 1 && this.#makes('tools-left-out', 'massAttached')) beside -= 1;
			else mass += toolsMass;
			if (!(equipmentMass > 0 && beside > 1 && this.#makes('equipment-left-out', 'massAttached'))) mass += equipmentMass;
		}
		if (tetheredMass !== undefined && this.#makes('tethered-counted', 'massAttached')) mass += tetheredMass;
		return this.#rounding?.mass(mass) ?? mass;
	}

	#capacity(): number {
		const { capacities } = this.#v;
		if (capacities.length === 0) throw new NotShown();
		return this.#makes('strongest-capacity', 'lowestCapacity') ? Math.max(...capacities) : Math.min(...capacities);
	}

	#arrestForce(): number {
		const { averageForce, peakForce, conditionedForce, conditioned } = this.#v;
		if (averageForce !== undefined && this.#makes('average-for-peak', 'arrestForce')) return averageForce;
		if (!conditioned) return shown(peakForce);
		if (peakForce !== undefined && this.#makes('dry-for-conditioned', 'arrestForce')) return peakForce;
		return shown(conditionedForce);
	}

	/** From the average force; m g h over what is left of the force beyond the weight. */
	#expectedElongation(): number {
		const weight = this.#mass() * GRAVITY;
		const force = shown(this.#v.averageForce);
		const energy = weight * this.#freeFall();
		return this.#length(this.#makes('weight-ignored', 'expectedElongation') ? energy / force : energy / (force - weight));
	}

	/** The elongation in a clearance, which the label states. */
	#elongationTerm(): number {
		const { elongation, otherElongation, averageForce, bodyMass } = this.#v;
		if (elongation === undefined) return 0;
		const canExpect = averageForce !== undefined && bodyMass !== undefined;
		if (canExpect && this.#makes('expected-elongation', 'requiredClearance')) {
			return this.#makes('elongation-left-out', 'requiredClearance') ? 0 : this.#expectedElongation();
		}
		const label =
			otherElongation !== undefined && this.#makes('other-class-elongation', 'requiredClearance') ? otherElongation : elongation;
		return this.#makes('elongation-left-out', 'requiredClearance') ? 0 : label;
	}

	#marginTerm(): number {
		const { margin, otherMargin } = this.#v;
		const right = shown(margin);
		const taken = otherMargin !== undefined && this.#makes('other-margin', 'requiredClearance') ? otherMargin : right;
		return this.#makes('margin-left-out', 'requiredClearance') ? 0 : taken;
	}

	/** What slide and stretch add; with the head level with the D-ring, only what goes beyond the head. */
	#stretchTerm(): number {
		const { dRingSlide, harnessStretch, custom } = this.#v;
		if (dRingSlide + harnessStretch === 0) return 0;
		if (this.#makes('stretch-left-out', 'requiredClearance')) return 0;
		let out = this.#length(dRingSlide + harnessStretch);
		if (custom === 'full-height') out = this.#length(Math.max(0, out - this.#head()));
		return this.#makes('stretch-twice', 'requiredClearance') ? out + out : out;
	}

	/** The head above the D-ring. */
	#head(): number {
		return this.#length(shown(this.#v.stature) - this.#dRing('headAboveDRing'));
	}

	/** From the D-ring down to the soles when the body hangs. */
	#bodyTerm(): number {
		const { kneeling, dRingNow, custom, stature } = this.#v;
		const body = custom === 'full-height' ? shown(stature) : this.#dRing('requiredClearance');
		const taken = kneeling && this.#makes('kneeling-shortens-clearance', 'requiredClearance') ? dRingNow : body;
		return this.#makes('body-left-out', 'requiredClearance') ? 0 : taken;
	}

	#required(datum: HandDatum): number {
		const rest = this.#elongationTerm() + this.#stretchTerm() + this.#marginTerm();
		switch (datum) {
			case 'anchorage':
			case 'connector':
				return this.#lineTerm(datum) + rest + this.#bodyTerm();
			case 'd-ring':
				return this.#freeFall() + this.#swingTerm() + rest + this.#bodyTerm();
			case 'surface':
				return this.#freeFall() + this.#swingTerm() + rest + this.#standingUp() - this.#v.standingHeight;
		}
	}

	#lineTerm(datum: 'anchorage' | 'connector'): number {
		if (this.#makes('free-fall-for-line', 'requiredClearance')) return this.#freeFall();
		const connector = datum === 'anchorage' ? this.#connector('requiredClearance') : 0;
		return this.#v.lanyardLength + connector;
	}

	#swingTerm(): number {
		if (this.#v.offset === 0) return 0;
		const drop = this.#swingDrop();
		return this.#makes('swing-drop-left-out', 'requiredClearance') ? 0 : drop;
	}

	/** What a sum from the walking surface adds for the body: it straightens out, and the head counts by custom. */
	#standingUp(): number {
		const { kneeling, custom, stature, dRingHeight, dRingNow } = this.#v;
		let more = 0;
		if (custom === 'full-height') more += this.#head();
		if (kneeling && !this.#makes('straightening-left-out', 'requiredClearance')) more += this.#length(this.#dRing('straightening') - dRingNow);
		if (this.#makes('body-from-surface', 'requiredClearance')) more += custom === 'full-height' ? shown(stature) : dRingHeight;
		return more;
	}

	/** The highest top that this person reckons with; the ground is 0. */
	#highestBelow(): number {
		const { obstacles } = this.#v;
		const onPath = obstacles.filter((one) => one.onPath && (one.there || one.sometimes));
		const beside = obstacles.filter((one) => !one.onPath && one.there);
		const now = onPath.filter((one) => one.there);
		const later = onPath.filter((one) => !one.there);
		// The highest of several is a step of its own; a single one is a term of the clearance.
		const step = (left: number): HandStep => (onPath.length > 1 && left > 0 ? 'highestBelow' : 'availableClearance');
		let seen = onPath;
		if (now.length > 0 && this.#makes('obstacle-overlooked', step(later.length))) seen = later;
		if (later.length > 0 && this.#makes('sometimes-obstacle-ignored', step(now.length))) {
			seen = seen.filter((one) => one.there);
		}
		if (beside.length > 0 && this.#makes('off-path-counted', 'availableClearance')) {
			return Math.max(...beside.map((one) => one.top));
		}
		return this.#length(Math.max(0, ...seen.map((one) => one.top)));
	}

	#available(datum: HandDatum): number {
		const { lowerLevelDepth, anchorageHeight, connectorLength, standingHeight } = this.#v;
		const below = shown(lowerLevelDepth) - this.#highestBelow();
		switch (datum) {
			case 'surface':
				return below;
			case 'anchorage':
				return below + anchorageHeight;
			case 'connector': {
				const forgotten = connectorLength > 0 && this.#makes('connector-left-out', 'availableClearance');
				return below + anchorageHeight - (forgotten ? 0 : connectorLength);
			}
			case 'd-ring':
				return below + this.#dRingNow('availableClearance') + standingHeight;
		}
	}

	/** The datum that this person measures from, which may not be the one that was asked. */
	#datum(asked: HandDatum, quantity: HandStep, isAnotherSlip: (taken: HandDatum) => boolean): HandDatum {
		for (const datum of ['anchorage', 'd-ring', 'surface'] as const) {
			if (datum !== asked && !isAnotherSlip(datum) && this.#makes(`datum-${datum}`, quantity)) return datum;
		}
		return asked;
	}

	/**
	 * Some sums from the wrong datum are, term for term, sums with another slip, and go by that name:
	 * between surface and D-ring the body counted too often or not at all, from the anchorage down the
	 * free fall in the line's place. From the D-ring all of them do: the heights, or the D-ring, are left
	 * out of the free fall.
	 */
	#isAnotherSlip(asked: HandDatum, taken: HandDatum): boolean {
		const { kneeling, standingHeight, custom, offset } = this.#v;
		const ends = [asked, taken];
		if (asked === 'd-ring') return true;
		if (ends.includes('surface') && ends.includes('d-ring')) {
			return !kneeling && standingHeight === 0 && custom === 'd-ring-and-stretch';
		}
		return taken === 'd-ring' && offset === 0;
	}

	answer(target: HandTarget): number {
		switch (target.quantity) {
			case 'requiredClearance':
				return this.#required(
					this.#datum(target.datum, target.quantity, (taken) => this.#isAnotherSlip(target.datum, taken))
				);
			case 'availableClearance':
				// From the anchorage instead of its connector the connector is left out, and it goes by that name.
				return this.#available(
					this.#datum(target.datum, target.quantity, (taken) => target.datum === 'connector' && taken === 'anchorage')
				);
			case 'rise':
				return this.#rise();
			case 'lineLength':
				return this.#line();
			case 'tautDepth':
				return this.#tautDepth();
			case 'freeFall':
				return this.#freeFall();
			case 'swingDrop':
				this.#swingAlone = true;
				return this.#swingDrop();
			case 'stretchOut':
				return this.#length(this.#v.dRingSlide + this.#v.harnessStretch);
			case 'massAttached':
				return this.#mass();
			case 'lowestCapacity':
				return this.#capacity();
			case 'arrestForce':
				return this.#arrestForce();
			case 'expectedElongation':
				return this.#expectedElongation();
			case 'bodyWeights':
				return this.#arrestForce() / (this.#mass() * GRAVITY);
			case 'reachDistance': {
				const rise = this.#rise();
				return Math.sqrt(this.#v.offset * this.#v.offset + rise * rise);
			}
		}
	}
}

/** What a sheet comes to. */
export interface Answered {
	/** SI; may be negative or not finite. */
	readonly value: number;
	/** The step in which each slip acted first, in the order of the slips. */
	readonly steps: readonly HandStep[];
}

/**
 * @param slips ids of the slips made, in any order: SLIPS_IN_ORDER decides which acts first.
 * @param rounding what is written down on the way; full precision without it.
 * @returns the answer; undefined where one of the slips finds no place in this ask, or where a number is
 * needed that the problem does not show.
 */
export function onPaper(
	values: HandValues,
	target: HandTarget,
	slips: readonly string[],
	rounding?: HandRounding
): Answered | undefined {
	const sheet = new Sheet(values, slips, rounding);
	try {
		const value = sheet.answer(target);
		const steps = slips.flatMap((slip) => sheet.acted.get(slip) ?? []);
		return steps.length === slips.length ? { value, steps } : undefined;
	} catch (error) {
		if (error instanceof NotShown) return undefined;
		throw error;
	}
}

/** @returns the value alone, SI; undefined as `onPaper` is. */
export function byHand(
	values: HandValues,
	target: HandTarget,
	slips: readonly string[],
	rounding?: HandRounding
): number | undefined {
	return onPaper(values, target, slips, rounding)?.value;
}
