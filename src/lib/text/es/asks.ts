import { de } from '../nouns.ts';
import type * as en from '../en/asks.ts';

export const datums: typeof en.datums = {
	anchorage: { name: 'Desde el anclaje', what: 'Desde el punto de la estructura hacia abajo.' },
	connector: { name: 'Desde el conector', what: 'Desde el extremo de abajo del conector de anclaje.' },
	surface: { name: 'Desde la superficie de trabajo', what: 'Desde la superficie por la que se camina hacia abajo.' },
	'd-ring': { name: 'Desde la argolla D', what: 'Desde la argolla D hacia abajo, donde está antes de la caída.' }
};

export const customs: typeof en.customs = {
	'd-ring-and-stretch': {
		name: 'Altura de la argolla D; deslizamiento y estiramiento aparte',
		what: 'El cuerpo cuenta desde la argolla D hacia abajo. El deslizamiento y el estiramiento se suman.'
	},
	'full-height': {
		name: 'Estatura completa',
		what: 'El cuerpo cuenta con toda su estatura. Solo se suma el estiramiento que sube la argolla D sobre la cabeza.'
	}
};

export const asks: typeof en.asks = {
	freeFall: {
		question: ({ name }) => `¿Cuánto cae ${name} en caída libre?`,
		help: () => 'Hasta que la cuerda queda tensa.'
	},
	swingDrop: {
		question: ({ name }) => `¿Cuánto más baja ${name} con el péndulo?`,
		help: () => 'Desde donde la línea queda tensa hasta lo más bajo del péndulo.'
	},
	massAttached: {
		question: ({ name }) => `¿Cuánta masa cuelga del arnés de ${name}?`,
		help: () => 'Todo lo que cae con la persona.'
	},
	lowestCapacity: {
		question: () => '¿Cuánta masa soporta este equipo?',
		help: () => 'Todas sus piezas juntas.'
	},
	arrestForce: {
		question: ({ name }) => `¿Con cuánta fuerza puede tirar el frenado de ${name}, como máximo?`,
		help: () => 'Como lo da la etiqueta para este caso.'
	},
	expectedElongation: {
		question: () => '¿Cuánto es probable que se alargue el absorbedor?',
		help: () => 'Con la fuerza promedio. Nunca acorta un espacio libre.'
	},
	bodyWeights: {
		question: ({ name }) => `¿Cuántas veces el peso de ${name} es el tirón?`,
		help: () => 'La fuerza de detención entre el peso de todo lo que cuelga del arnés.'
	},
	reachDistance: {
		question: ({ anchorage }) => `¿Cuánto hay de la argolla D hasta ${anchorage}?`,
		help: () => 'En línea recta.'
	}
};

export const requiredAsks: typeof en.requiredAsks = {
	anchorage: {
		question: ({ anchorage }) => `¿Cuánto espacio libre debe haber por debajo ${de(anchorage)}?`,
		help: ({ name }) => `Desde allí hasta lo primero que ${name} puede tocar.`
	},
	connector: {
		question: () => '¿Cuánto espacio libre debe haber por debajo del conector de anclaje?',
		help: ({ name }) => `Desde su extremo de abajo hasta lo primero que ${name} puede tocar.`
	},
	surface: {
		question: ({ surface }) => `¿Cuánto espacio libre debe haber por debajo ${de(surface)}?`,
		help: ({ name, surface }) => `Desde ${surface} hasta lo primero que ${name} puede tocar.`
	},
	'd-ring': {
		question: ({ name }) => `¿Cuánto espacio libre debe haber por debajo de la argolla D de ${name}?`,
		help: () => 'Desde donde está la argolla D antes de la caída.'
	}
};

export const availableAsks: typeof en.availableAsks = {
	anchorage: {
		question: ({ anchorage }) => `¿Cuánto espacio libre hay por debajo ${de(anchorage)}?`,
		help: ({ name }) => `Desde allí hasta lo primero que ${name} puede tocar.`
	},
	connector: {
		question: () => '¿Cuánto espacio libre hay por debajo del conector de anclaje?',
		help: ({ name }) => `Desde su extremo de abajo hasta lo primero que ${name} puede tocar.`
	},
	surface: {
		question: ({ surface }) => `¿Cuánto espacio libre hay por debajo ${de(surface)}?`,
		help: ({ name, surface }) => `Desde ${surface} hasta lo primero que ${name} puede tocar.`
	},
	'd-ring': {
		question: ({ name }) => `¿Cuánto espacio libre hay por debajo de la argolla D de ${name}?`,
		help: () => 'Desde donde está la argolla D antes de la caída.'
	}
};

export const decision: typeof en.decision = {
	question: ({ name }) => `¿Dejaría usted que ${name} se amarre aquí?`,
	help: 'Solo cuenta junto con sus números.',
	tieOff: 'Amarrarse',
	doNotTieOff: 'No amarrarse',
	notStated: 'No se puede dar con esta etiqueta',
	notStatedHelp: 'Elija esto si la etiqueta no vale para el caso.'
};
