import type * as en from '../../en/lessons/facts.ts';

export const facts: typeof en.facts = {
	'free-fall-limit': {
		name: 'Caída libre, máxima',
		states: ({ value }) => `Aquí la caída libre puede ser de ${value} como máximo.`,
		none: 'Para una cuerda con absorbedor, esta tabla no da un número para la caída libre. Lo da la etiqueta del equipo.'
	},
	'force-limit': {
		name: 'Fuerza de detención, máxima',
		states: ({ value }) => `Aquí la fuerza de detención puede ser de ${value} como máximo.`,
		none: 'Esta tabla no da un número para la fuerza de detención. Lo da la etiqueta del equipo.'
	},
	'deceleration-limit': {
		name: 'Distancia de desaceleración, máxima',
		states: ({ value }) => `Aquí la distancia de desaceleración puede ser de ${value} como máximo.`,
		none: 'Esta tabla no da un número para la distancia de desaceleración.'
	},
	'mass-limit': {
		name: 'Masa en el arnés',
		states: ({ value }) => `Aquí la masa con herramientas puede ser de ${value} como máximo.`,
		beyond: ({ value }) => `Aquí la masa con herramientas debe ser menor que ${value}.`,
		none: 'Esta tabla no da un número para la masa. Lo dan las etiquetas del equipo.'
	},
	'lanyard-limit': {
		name: 'Largo de la cuerda, máximo',
		states: ({ value }) => `Aquí una cuerda puede medir ${value} como máximo.`,
		none: 'Esta tabla no da un número para el largo de la cuerda.'
	},
	'anchorage-strength': {
		name: 'Resistencia del anclaje',
		states: ({ value }) => `Aquí un anclaje para una persona debe aguantar ${value} como mínimo.`,
		none: 'Esta tabla no da un número para la resistencia de un anclaje.'
	},
	'sideways-limit': {
		name: 'Distancia lateral, máxima',
		states: ({ value }) => `Aquí la distancia lateral puede ser de ${value} como máximo.`,
		none: 'Esta tabla no da un número para la distancia lateral. El péndulo cuenta igual.'
	},
	'duty-height': {
		name: 'Desde qué altura',
		states: ({ value }) => `Aquí hay que proteger contra caídas desde ${value}.`,
		beyond: ({ value }) => `Aquí hay que proteger contra caídas por encima de ${value}.`,
		none: 'Esta tabla no da una altura desde la que haya que proteger.'
	},
	margin: {
		name: 'Margen',
		states: ({ value }) => `La práctica de aquí deja un margen de ${value}.`,
		none: 'Esta práctica no da un margen.'
	},
	'slide-and-stretch': {
		name: 'Lo que se desliza y se estira',
		states: ({ value }) => `Si el arnés no dice nada, la práctica de aquí cuenta ${value} para lo que se desliza y se estira.`,
		none: 'Esta práctica no da un número para lo que se desliza y se estira. Tome el del arnés, o cuente toda la estatura.'
	},
	'd-ring-height': {
		name: 'Altura de la argolla D',
		states: ({ value }) => `Si nadie la midió, la práctica de aquí cuenta ${value} para la altura de la argolla D.`,
		none: 'Esta práctica no da una altura de la argolla D. Mídala.'
	},
	'body-height': {
		name: 'Estatura',
		states: ({ value }) => `La práctica de aquí cuenta ${value} para toda la estatura.`,
		none: 'Esta práctica no cuenta toda la estatura. Cuenta la altura de la argolla D.'
	}
};

export const demands: typeof en.demands = {
	'anchorage-height': {
		name: 'Altura del anclaje',
		asked: 'La regla de aquí pide un anclaje que esté a buena altura.',
		none: 'Esta tabla no pide una altura del anclaje. Uno alto es mejor igual.'
	},
	'one-person': {
		name: 'Una persona por anclaje',
		asked: 'La regla de aquí admite una persona por anclaje.',
		none: 'Esta tabla no limita las personas como tal. Lo hacen la resistencia del anclaje y su permiso.'
	},
	'no-contact': {
		name: 'No se toca nada',
		asked: 'La regla de aquí pide que el cuerpo no toque nada abajo.',
		none: 'Esta tabla no lo dice. El cuerpo no debe tocar nada abajo igual.'
	},
	'restraint-first': {
		name: 'Qué va primero',
		asked: 'La regla de aquí pone otras medidas antes que detener una caída.',
		none: 'Esta tabla no da un orden de medidas. No caer sigue siendo lo mejor.'
	},
	edges: {
		name: 'Bordes',
		asked: 'La regla de aquí no admite detener caídas donde un borde puede cortar la línea.',
		none: 'Esta tabla no dice nada de bordes. Lo dicen las instrucciones del fabricante.'
	},
	harness: {
		name: 'Arnés',
		asked: 'La regla de aquí pide un arnés de cuerpo completo.',
		none: 'Esta tabla no nombra el arnés. Para detener una caída hace falta igual un arnés de cuerpo completo.'
	},
	connectors: {
		name: 'Conectores',
		asked: 'La regla de aquí pide conectores que vayan bien con lo que sujetan.',
		none: 'Esta tabla no nombra los conectores. Deben ir bien igual.'
	},
	rescue: {
		name: 'Rescate',
		asked: 'La regla de aquí pide que haya un rescate previsto.',
		none: 'Esta tabla no nombra el rescate. No empiece sin uno.'
	},
	training: {
		name: 'Formación',
		asked: 'La regla de aquí pide formación.',
		none: 'Esta tabla no nombra la formación.'
	}
};
