import { formula, type GivenId, type Shape, type Target } from '#lib/arrest/index.ts';
import type { Node } from '#lib/expression/index.ts';
import type { Altered } from './alter.ts';

/** What a slip may look at: the question, the plan's shape, and which numbers the problem shows. */
export interface SlipContext {
	readonly target: Target;
	readonly shape: Shape;
	/** Whether a number stands in the problem, on a label or in the drawing. */
	readonly shown: (id: GivenId) => boolean;
	/** Ids of obstacles on the path that are not there in the drawing but can be. */
	readonly absentObstacles: readonly string[];
	/** Ids of obstacles that stand in the drawing off the path. */
	readonly strayObstacles: readonly string[];
}

/** How common a slip is: the author's guess until data says more. */
export type Tier = 'common' | 'occasional' | 'rare';

/** Which way the answer goes wrong; `either` where it depends on the plan. */
export type Errs = 'unsafe' | 'cautious' | 'either';

/** A named way to go wrong: a rewrite of an expression, or a misreading of a given. */
export interface Slip {
	readonly id: string;
	readonly tier: Tier;
	readonly errs: Errs;
	/** @returns the altered tree and the step it is altered in, or undefined where the slip has no place. */
	readonly alter: (tree: Node, context: SlipContext) => Altered | undefined;
}

/** @returns the tree of another quantity for the same plan. */
export function other(target: Target, context: SlipContext): Node {
	return formula(target, context.shape);
}
