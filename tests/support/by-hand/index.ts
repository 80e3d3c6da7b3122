export { byHand, onPaper, type Answered } from './sheet.ts';
export { mistakesIn, type HandMistake, type HandMistakes } from './applying.ts';
export {
	SLIPS_IN_ORDER,
	type HandDatum,
	type HandObstacle,
	type HandRounding,
	type HandStep,
	type HandTarget,
	type HandValues
} from './values.ts';
