import type { LessonText } from '../../lesson-text.ts';

export const stages: LessonText = {
	title: 'Qué pasa en una caída',
	able: 'Usted puede nombrar las etapas de una caída y decir qué gasta cada una.',
	ideas: [
		({ time }) => `Toda la caída de este ejemplo dura ${time}. Nadie puede reaccionar en ese tiempo. Todo se hace antes.`,
		({ falls, total }) => `El cuerpo cae ${falls} sin nada que lo sujete. En total, la argolla D baja ${total}. El resto es el frenado.`,
		() => 'Primera etapa: la caída libre. Nada sujeta el cuerpo todavía. Va cada vez más rápido.',
		() => 'Segunda etapa: el frenado. La cuerda está tensa, el absorbedor se abre y el arnés cede. La línea tira hasta que el cuerpo queda quieto.',
		() => 'Tercera etapa: colgar. La caída terminó, pero el peligro no. Alguien debe venir y bajar a la persona.'
	],
	captions: {
		before: ({ name, surface }) => `${name} está de pie. La cuerda cuelga floja sobre ${surface}. Todavía no se mueve nada.`,
		'free-fall': ({ falls, time, speed }) =>
			`La caída libre: ${falls} en ${time}. Solo ahora la línea está tensa. El cuerpo va a ${speed}, y nada lo frenó hasta aquí.`,
		stopping: ({ opens, slides }) =>
			`El absorbedor se abre hasta ${opens}. La argolla D se desliza ${slides} por la espalda. El cuerpo baja las dos cosas.`,
		force: ({ force, weights }) =>
			`La etiqueta dice cuánto puede tirar la línea: ${force} como máximo. Eso es ${weights} veces el peso de todo lo que cuelga.`,
		hanging: ({ time, total }) => `Después de ${time} el cuerpo queda quieto. La argolla D bajó ${total} en total.`,
		room: ({ surface, required, margin, left }) =>
			`Bajo ${surface} esta caída pide ${required}. Un margen de ${margin} es parte de eso y debe quedar libre. Aquí sobran ${left}.`
	},
	cautions: [
		'El dibujo muestra el caso para planificar: lo más que dan las etiquetas. Una caída real puede ser más corta. Nadie puede contar con eso.',
		'Un cuerpo que toca algo en la bajada no queda detenido, por lento que vaya.',
		'Un arnés no evita que alguien caiga. Primero está no caer.'
	]
};
