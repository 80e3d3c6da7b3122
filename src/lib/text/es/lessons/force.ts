import type { LessonText } from '../../lesson-text.ts';

export const force: LessonText = {
	title: 'Fuerza y límites',
	able: 'Usted puede comparar la fuerza de detención con el límite y ver si un absorbedor sirve para una persona.',
	ideas: [
		({ mass, force: most }) => `En el ejemplo caen ${mass}. La etiqueta da ${most} como máximo. Ese es el número para revisar.`,
		() => 'Con más caída libre el cuerpo va más rápido. Una caída del doble tiene el doble de energía. El absorbedor debe tomarla toda.',
		() => 'Por eso se limita la caída libre. Más allá el absorbedor puede llegar a su fin. Entonces ya nada limita la fuerza.',
		() => 'Un absorbedor trata distinto a dos personas. Una pesada lo abre más. A una liviana el frenado le pega más fuerte.',
		() => 'Por eso la etiqueta tiene un rango de masa. Elija el absorbedor para la persona con herramientas, no el que está a mano.',
		() => 'El mismo tirón llega al anclaje. Debe aguantar bastante más que eso, por cada persona.'
	],
	captions: {
		speed: ({ falls, speed }) => `Tras ${falls} de caída libre el cuerpo va a ${speed}. Ahora hay que frenar todo eso.`,
		heavy: ({ mass, force: most, weights }) => `De este arnés cuelgan ${mass}. La etiqueta da ${most} como máximo. Eso es ${weights} veces el peso.`,
		'heavy-opens': ({ opens, most }) =>
			`Con la fuerza promedio, el absorbedor se abriría ${opens}. Para el espacio libre se planifica igual con ${most}, lo más de la etiqueta.`,
		light: ({ mass, force: most, weights }) =>
			`Otra persona, con ${mass}. La fuerza es otra vez ${most}. Pero ahora es ${weights} veces el peso: un frenado más duro.`,
		'light-opens': ({ opens }) => `Aquí el absorbedor se abriría solo ${opens}. Con una persona muy liviana puede que no se abra.`,
		range: ({ least, most }) => `Por eso la etiqueta tiene dos puntas: ${least} y ${most}. Fuera de ellas, elija otro absorbedor.`,
		wet: ({ force: dry, wet }) =>
			`Este equipo está congelado. En seco, la etiqueta da ${dry}. Mojado o congelado, da ${wet}. Ese es el número para revisar.`
	},
	cautions: [
		'El promedio es para entender. Para revisar se toma el máximo.',
		'Ninguna etiqueta vale para dos absorbedores en fila. No los una nunca.',
		'Un absorbedor que se abrió aunque sea un poco queda fuera de uso.',
		'La distancia de desaceleración la da el fabricante. No es el alargamiento de la etiqueta.'
	]
};
