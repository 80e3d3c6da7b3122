import { de } from '../nouns.ts';
import type { givens as enGivens, obstacleAside as enObstacleAside, obstacleTop as enObstacleTop } from '../en/givens.ts';

export const givens: typeof enGivens = {
	lanyardLength: {
		name: 'Largo de la cuerda, de gancho a gancho',
		short: 'cuerda',
		the: 'el largo de la cuerda',
		what: 'Toda la cuerda con sus ganchos y el absorbedor cerrado.'
	},
	connectorLength: {
		name: 'Conector de anclaje',
		short: 'conector',
		the: 'el largo del conector de anclaje',
		what: 'La correa entre la estructura y la cuerda, en lo que cuelga.'
	},
	dRingHeight: {
		name: 'Altura de la argolla D, de pie',
		short: 'argolla D',
		the: 'la altura de la argolla D',
		what: 'Desde las suelas hasta la argolla D de la espalda, de pie.'
	},
	dRingNow: {
		name: 'Altura de la argolla D, de rodillas',
		short: 'argolla D, de rodillas',
		the: 'la altura de la argolla D en esta postura',
		what: 'Desde el lugar de pie hasta la argolla D, en la postura del trabajo.'
	},
	standingHeight: {
		name: 'Lugar de pie sobre la superficie',
		short: 'lugar de pie',
		the: 'la altura del lugar de pie',
		what: 'Desde la superficie de trabajo hasta las suelas: un escalón, un peldaño, una caja.'
	},
	anchorageHeight: {
		name: 'Altura del anclaje',
		short: 'anclaje',
		the: 'la altura del anclaje',
		what: 'Desde la superficie de trabajo hasta el punto de la estructura.'
	},
	offset: {
		name: 'Distancia lateral a lo largo del borde',
		short: 'distancia lateral',
		the: 'la distancia lateral',
		what: 'Lo que la persona se aparta del anclaje hacia un lado.'
	},
	stature: { name: 'Estatura', short: 'estatura', the: 'la estatura', what: 'Desde las suelas hasta lo alto de la cabeza.' },
	elongation: {
		name: 'Alargamiento, máximo',
		short: 'alargamiento',
		the: 'el alargamiento',
		what: 'Lo más que se alarga el absorbedor al frenar una caída.'
	},
	dRingSlide: {
		name: 'Deslizamiento de la argolla D',
		short: 'deslizamiento',
		the: 'el deslizamiento de la argolla D',
		what: 'Lo que la argolla D se desliza hacia arriba por el arnés con el tirón.'
	},
	harnessStretch: {
		name: 'Estiramiento del arnés',
		short: 'estiramiento',
		the: 'el estiramiento del arnés',
		what: 'Lo que se estira la correa del arnés con el tirón.'
	},
	margin: {
		name: 'Margen',
		short: 'margen',
		the: 'el margen',
		what: 'Aire que debe quedar libre bajo las suelas. Es práctica, no ley.'
	},
	lowerLevelDepth: {
		name: 'Profundidad del nivel inferior',
		short: 'nivel inferior',
		the: 'la profundidad del nivel inferior',
		what: 'Desde la superficie de trabajo hasta el nivel donde se puede caer.'
	},
	bodyMass: { name: 'Cuerpo', short: 'cuerpo', the: 'la masa del cuerpo', what: 'La masa del cuerpo solo.' },
	clothingMass: { name: 'Ropa', short: 'ropa', the: 'la masa de la ropa', what: 'La ropa de trabajo y las botas.' },
	equipmentMass: {
		name: 'Arnés y equipo puesto',
		short: 'equipo',
		the: 'la masa del equipo',
		what: 'El arnés, la cuerda, el casco y lo demás que se lleva puesto.'
	},
	toolsMass: {
		name: 'Herramientas en la persona',
		short: 'herramientas',
		the: 'la masa de las herramientas',
		what: 'Las herramientas que cuelgan de la persona y caen con ella.'
	},
	tetheredMass: {
		name: 'Herramientas atadas a la estructura',
		short: 'herramientas atadas',
		the: 'la masa de las herramientas atadas',
		what: 'Herramientas atadas a la estructura. No caen con la persona.'
	},
	labelMassMin: {
		name: 'Usuario con herramientas, mínimo',
		short: 'masa, mínima',
		the: 'la masa mínima de la etiqueta',
		what: 'Por debajo de esta masa no valen las cifras de la etiqueta.'
	},
	labelMassMax: {
		name: 'Usuario con herramientas, máximo',
		short: 'masa, máxima',
		the: 'la masa máxima de la etiqueta',
		what: 'Por encima de esta masa no valen las cifras de la etiqueta.'
	},
	lanyardCapacity: {
		name: 'Capacidad de la cuerda',
		short: 'cuerda',
		the: 'la capacidad de la cuerda',
		what: 'La mayor masa para la que está hecha la cuerda.'
	},
	harnessCapacity: {
		name: 'Capacidad del arnés',
		short: 'arnés',
		the: 'la capacidad del arnés',
		what: 'La mayor masa para la que está hecho el arnés.'
	},
	connectorCapacity: {
		name: 'Capacidad de los conectores',
		short: 'conectores',
		the: 'la capacidad de los conectores',
		what: 'La mayor masa para la que están hechos los ganchos y eslabones.'
	},
	peakForce: {
		name: 'Fuerza de detención, máxima',
		short: 'fuerza, máxima',
		the: 'la fuerza máxima de detención',
		what: 'El mayor tirón sobre el cuerpo mientras el absorbedor frena una caída.'
	},
	conditionedForce: {
		name: 'Fuerza de detención mojado o congelado, máxima',
		short: 'fuerza, mojado o congelado',
		the: 'la fuerza máxima de detención mojado o congelado',
		what: 'El mayor tirón cuando el absorbedor está mojado o congelado.'
	},
	averageForce: {
		name: 'Fuerza promedio',
		short: 'fuerza, promedio',
		the: 'la fuerza promedio',
		what: 'El tirón mientras se abre el absorbedor, tomado como promedio. El pico es mayor.'
	},
	labelFreeFall: {
		name: 'Caída libre, máxima',
		short: 'caída libre, máxima',
		the: 'la mayor caída libre de la etiqueta',
		what: 'Con más caída libre que esta no valen las cifras de la etiqueta.'
	},
	statedDeceleration: {
		name: 'Distancia de desaceleración declarada',
		short: 'desaceleración',
		the: 'la distancia de desaceleración declarada',
		what: 'Lo que declara el fabricante para esta masa y esta caída libre.'
	},
	anchorageStrength: {
		name: 'Resistencia del anclaje',
		short: 'resistencia del anclaje',
		the: 'la resistencia del anclaje',
		what: 'El tirón que el anclaje puede sostener.'
	},
	otherMargin: {
		name: 'Margen de otra práctica',
		short: 'otro margen',
		the: 'el margen de otra práctica',
		what: 'Un margen que vale en otro lugar.'
	},
	otherElongation: {
		name: 'Alargamiento de otro absorbedor',
		short: 'otro alargamiento',
		the: 'el alargamiento de otro absorbedor',
		what: 'La etiqueta de un absorbedor que no se usa aquí.'
	},
	otherFloorDrop: {
		name: 'Otro piso, bajo la superficie',
		short: 'otro piso',
		the: 'la distancia al otro piso',
		what: 'Desde la superficie de trabajo hasta un piso donde no hay nadie.'
	},
	freeFallLimit: {
		name: 'Caída libre permitida, máxima',
		short: 'caída libre permitida',
		the: 'el límite de la caída libre',
		what: 'La mayor caída libre que permite la regla de aquí.'
	},
	slackShown: {
		name: 'Holgura de la cuerda',
		short: 'holgura',
		the: 'la holgura',
		what: 'La parte de la cuerda que cuelga suelta antes de la caída.'
	},
	railHeight: {
		name: 'Altura de la baranda',
		short: 'baranda',
		the: 'la altura de la baranda',
		what: 'Desde la superficie de trabajo hasta la baranda.'
	}
};

export const obstacleTop: typeof enObstacleTop = {
	name: ({ thing }) => `Parte alta ${de(thing)}`,
	the: ({ thing }) => `la altura ${de(thing)}`,
	what: ({ thing }) => `Desde el nivel inferior hasta lo alto ${de(thing)}.`
};

export const obstacleAside: typeof enObstacleAside = {
	name: ({ thing }) => `De lado hasta ${thing}`,
	the: ({ thing }) => `la distancia de lado hasta ${thing}`,
	what: ({ thing }) => `Desde debajo del anclaje, de lado, hasta lo más cercano ${de(thing)}.`
};
