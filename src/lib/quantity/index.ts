export {
	ACCELERATION,
	AREA,
	ENERGY,
	FORCE,
	LENGTH,
	MASS,
	RATIO,
	SPEED,
	STIFFNESS,
	TIME,
	nameOfDimension,
	overDimension,
	rootDimension,
	sameDimension,
	timesDimension
} from './dimension.ts';
export type { Dimension } from './dimension.ts';
export { STANDARD_GRAVITY, UNITS, UNIT_IDS, dimensionOf, fromSI, isUnitId, toSI, unitsOf } from './unit.ts';
export type { Unit, UnitId } from './unit.ts';
export type { Language } from './language.ts';
export { LONGEST_ENTRY, decimalsAsInches, readQuantity } from './read.ts';
export type {
	Question,
	QuestionReason,
	ReadOptions,
	ReadQuantity,
	Reading,
	Unreadable,
	UnreadableReason,
	Written
} from './read.ts';
export type { DecimalNumeral, Numeral } from './numeral.ts';
export { decimalText } from './decimal.ts';
export type { Rounding } from './decimal.ts';
export { NO_BREAK_SPACE, echoQuantity, lastPlace, usualDecimals, writeQuantity } from './write.ts';
export type { InchDenominator, WriteOptions, WrittenUnit } from './write.ts';
export { unitOfWord, unitSymbol } from './unit-words.ts';
