import type { marking as en } from '../en/marking.ts';

export const marking: typeof en = {
	marks: {
		right: 'Bien.',
		'right-by-rounding': 'Bien, por redondeo.',
		'follows-own': 'Bien con su propio número anterior.',
		wrong: 'Aún no.'
	},
	roundedUp: 'Bien. Usted redondeó hacia arriba: el lado prudente.',
	roundedDown: 'Bien. Usted redondeó hacia abajo: el lado prudente.',
	overCautious: 'Más de lo que hace falta. Usted rechazaría un amarre que cumple.',
	overCautiousLess: 'Menos de lo que hay. Usted rechazaría un amarre que cumple.',
	critical: 'Del lado peligroso',
	criticalWhat: ({ name }) => `Con este número ${name} se amarraría donde la caída no termina bien.`,
	criticalCount: 'se cuenta aparte del puntaje',
	shortBy: ({ amount }) => `Su plan parecía alcanzar. No alcanza: faltan ${amount}.`,
	stillFits: 'Este plan alcanza de todos modos. El próximo quizá no.',
	rightValue: ({ value }) => `Lo correcto es ${value}.`,
	yourValue: ({ value }) => `Usted escribió ${value}.`,
	oneRight: ({ short }) => `${short}: bien.`,
	oneWrong: ({ short }) => `${short}: aún no.`,
	allRight: 'Todo bien.',
	labelOverlooked: 'La etiqueta no vale para este caso, y no se puede dar un número. No se amarre.',
	labelMisjudged: 'La etiqueta sí vale para este caso. El número se puede calcular.',
	decisionRight: 'Su decisión es correcta.',
	decisionWrongTieOff: 'Usted aceptó un plan que no cumple.',
	decisionWrongRefused: 'Usted rechazó un amarre que cumple.',
	decisionNotCounted: 'Una decisión solo cuenta junto con sus números.'
};
