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
