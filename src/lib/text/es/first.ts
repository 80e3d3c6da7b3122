import type { FirstMessages } from '../en/first.ts';
import { account } from './account.ts';
import { asks, availableAsks, customs, datums, decision, requiredAsks } from './asks.ts';
import { common } from './common.ts';
import { givens, obstacleAside, obstacleTop } from './givens.ts';
import { jurisdictions } from './jurisdictions.ts';
import { page } from './page.ts';
import { questions, reading, unreadable } from './reading.ts';
import { screen } from './screen.ts';
import { tape } from './tape.ts';
import { terms } from './terms.ts';
import { verdict } from './verdict.ts';

/** What a problem needs before its first check, in Spanish; the rest of the catalogue comes after. */
export const first: FirstMessages = Object.freeze({
	account,
	asks,
	availableAsks,
	common,
	customs,
	datums,
	decision,
	givens,
	jurisdictions,
	obstacleAside,
	obstacleTop,
	page,
	questions,
	reading,
	requiredAsks,
	screen,
	tape,
	terms,
	unreadable,
	verdict
});
