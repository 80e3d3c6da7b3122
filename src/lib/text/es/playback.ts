import type * as en from '../en/playback.ts';

export const playback: typeof en.playback = {
	heading: 'Qué pasaría',
	events: {
		start: () => 'inicio',
		'lanyard-tight': () => 'cuerda tensa',
		'passes-learner-level': () => 'su nivel',
		'absorber-done': () => 'absorbedor abierto',
		lowest: () => 'punto más bajo',
		rest: () => 'en reposo',
		contact: ({ thing }) => `pies en ${thing}`
	},
	phases: {
		'free-fall': 'en caída libre',
		stopping: 'el absorbedor se abre',
		swinging: 'en el péndulo',
		'at-rest': 'en reposo'
	},
	thisSite: 'Este sitio',
	groundAt: ({ value }) => `Suelo a sus ${value}`,
	groundAtWhat: 'La misma caída, con el suelo justo donde su número dice que alcanza.',
	notArrested: ({ name, thing, t, v }) => `Caída no detenida: los pies de ${name} tocan ${thing} a los ${t}, a ${v}.`,
	stillOpening: 'El absorbedor aún se está abriendo.',
	arrested: ({ name, left }) => `Caída detenida: ${name} cuelga y sobran ${left} además del margen.`,
	arrestedJust: ({ name }) => `Caída detenida: ${name} cuelga con el margen libre y nada más.`,
	marginUsed: ({ name, used, margin }) => `La caída de ${name} se detiene, pero se gastan ${used} del margen de ${margin}.`,
	marginGone: ({ name }) => `La caída de ${name} se detiene con las suelas justo en el nivel. Se gasta todo el margen.`,
	still: ({ value, v }) => `sus ${value}: aún ${v}`,
	atYour: ({ name, value, v }) => `A sus ${value}, ${name} aún iría a ${v}.`,
	overCautious: 'Más de lo que hace falta. Usted rechazaría un amarre que cumple.',
	planningCase: 'Caso para planificar: lo más que dan las etiquetas.',
	averageForce: 'promedio, para entender',
	time: ({ unit }) => `tiempo, ${unit}`,
	speed: ({ unit }) => `velocidad, ${unit}`,
	play: 'Reproducir',
	pause: 'Pausa',
	again: 'Ver otra vez',
	nextMark: 'Marca siguiente',
	previousMark: 'Marca anterior',
	quarterSpeed: 'Un cuarto de velocidad',
	trueSpeed: 'Velocidad real',
	scrubber: 'Tiempo de la caída',
	spoken: ({ t, v, event }) => (event === '' ? `${t}, ${v}` : `${t}, ${v}, ${event}`),
	spokenSeconds: ({ value }) => `${value} segundos`,
	spokenSpeed: ({ value, us }) => `${value} ${us ? 'pies' : 'metros'} por segundo`,
	drawing: ({ name }) => `La caída de ${name}, en marcas de tiempo`
};
