import type { LessonText } from '../../lesson-text.ts';

export const requiredClearance: LessonText = {
	title: 'Espacio libre requerido',
	able: 'Usted puede sumar el espacio libre que pide una caída, desde cualquier lugar de donde se mida.',
	ideas: [
		({ falls, required }) => `En el ejemplo la caída libre es ${falls}. Pero abajo deben quedar libres ${required}. El frenado también ocupa lugar.`,
		() =>
			'Las partes van una tras otra: caída libre, alargamiento, lo que se desliza y se estira, margen. Póngalas en fila, como en una cinta.',
		() => 'Planifique con lo más que la etiqueta da para el alargamiento. Lo que uno espera es menos. No sirve para planificar.',
		() => 'El margen queda libre bajo las suelas. Es para lo que nadie podía saber. No está para gastarlo.',
		() =>
			'El número depende de dónde se empieza. Desde la superficie de trabajo se cuenta la caída libre. Desde el anclaje se cuenta toda la línea y el cuerpo.',
		() => '¿Por qué el cuerpo? Cuelga bajo la argolla D. Desde la superficie de trabajo no se suma, porque los pies empezaron allí.'
	],
	captions: {
		fall: ({ surface, falls }) => `Medimos desde ${surface} hacia abajo. Primero va la caída libre: ${falls}.`,
		opens: ({ opens }) => `Luego se abre el absorbedor. La etiqueta da ${opens} como máximo, y con eso se planifica.`,
		slides: ({ slides }) => `La argolla D se desliza ${slides} por la espalda. Las suelas bajan lo mismo.`,
		margin: ({ margin }) => `Al final va el margen de ${margin}. Queda libre bajo las suelas.`,
		whole: ({ required, surface }) => `Todo en fila da ${required}. Eso debe estar libre bajo ${surface}.`,
		'other-datum': ({ anchorage, length, body, required }) =>
			`El mismo plan desde ${anchorage} hacia abajo. La cuerda de ${length} va en lugar de la caída libre, y se suma el cuerpo de ${body}. Da ${required}.`,
		'same-plan': ({ required, surface, total, anchorage, anchorageAt }) =>
			`Un plan y dos números buenos: ${required} desde ${surface} y ${total} desde ${anchorage}. La diferencia es ${anchorageAt}, la altura del anclaje.`
	},
	cautions: [
		'Diga siempre desde dónde mide. Un espacio libre sin eso es medio número.',
		'Las tablas cuentan el cuerpo de varias formas. Lea cómo lo cuenta la suya.',
		'De rodillas la caída libre es más corta. Pero bajo el anclaje no hace falta menos: el cuerpo cuelga a todo su largo.',
		'Si la cuenta solo sale sin el margen, no se amarre.'
	]
};
