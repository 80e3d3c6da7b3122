import { pluralOf } from '../plural.ts';
import type * as en from '../en/plan.ts';

const plural = pluralOf('es');

export const plan: typeof en.plan = {
	plates: {
		absorber: 'Cuerda con absorbedor de energía',
		lanyard: 'Cuerda sin absorbedor',
		harness: 'Arnés de cuerpo completo',
		connectors: 'Conectores',
		anchorage: 'Anclaje',
		worker: 'Persona',
		site: 'Sitio'
	},
	plateOf: ({ n, of }) => `etiqueta ${String(n)} de ${String(of)}`,
	upTo: ({ value }) => `hasta ${value}`,
	range: ({ from, to }) => `${from} a ${to}`,
	userWithTools: 'Usuario con herramientas',
	class: 'Clase',
	fromPractice: ({ table }) => `de la práctica: ${table}`,
	fromClass: ({ name }) => `de la clase: ${name}`,
	ruleHere: 'Regla de aquí',
	keepMargin: ({ value }) => `Deje un margen de ${value} bajo las suelas.`,
	posture: { standing: 'de pie', kneeling: 'de rodillas' },
	condition: { dry: 'seco', 'wet-or-frozen': 'mojado o congelado' },
	rescue: {
		arranged: 'Hay un rescate rápido previsto.',
		'not-arranged': 'No hay rescate previsto.',
		unknown: 'No se sabe si hay un rescate previsto.'
	},
	compatible: {
		yes: 'Los conectores están hechos para ir juntos.',
		no: 'Los conectores no están hechos para ir juntos.',
		unknown: 'No se sabe si los conectores pueden ir juntos.'
	},
	connectorLies: { hanging: 'cuelga', slack: 'está suelto' },
	persons: ({ count }) =>
		plural(count, { one: 'Una persona en este anclaje.', other: `${String(count)} personas en este anclaje.` }),
	obstacle: {
		always: ({ thing }) => `En la bajada: ${thing}.`,
		there: ({ thing }) => `Ahora sí, pero no siempre: ${thing}.`,
		canCome: ({ thing }) => `Ahora no, pero puede llegar: ${thing}.`,
		off: ({ thing }) => `A un lado: ${thing}.`
	},
	sometimes: 'a veces',
	drawing: {
		title: ({ site }) => `Dibujo del sitio: ${site}`,
		description: ({ name, surface, lowerLevel }) =>
			`Vista de lado, a escala. ${name} trabaja en ${surface}, sobre ${lowerLevel}. Todos los números están en la lista.`,
		scale: ({ length, unit }) => `${length}. Alzado a escala, medidas en ${unit}.`,
		units: { metric: 'metros', 'us-decimal': 'pies', 'us-inch': 'pies y pulgadas' }
	},
	list: {
		heading: 'Todos los números en una lista',
		given: 'Qué',
		value: 'Valor',
		where: 'Dónde está',
		inDrawing: 'dibujo',
		onLabel: 'etiqueta',
		inStory: 'historia',
		inRule: 'regla de aquí'
	}
};

export const labelFields: typeof en.labelFields = {
	maker: 'Fabricante',
	'type-and-serial': 'Tipo y número de serie',
	'standard-and-class': 'Norma y clase',
	'year-of-make': 'Fecha de fabricación',
	'mass-range': 'Usuario con herramientas, de y hasta',
	'free-fall-max': 'Caída libre, máxima',
	'deployment-max': 'Alargamiento, máximo',
	'deployment-factor': 'Factor de alargamiento',
	'average-force': 'Fuerza promedio',
	'arrest-force-max': 'Fuerza de detención, máxima',
	length: 'Largo',
	strength: 'Resistencia',
	'anchorage-needs': 'Lo que debe sostener el anclaje',
	'clearance-below': 'Espacio libre requerido debajo',
	'read-the-instructions': 'Lea las instrucciones',
	'inspection-record': 'Registro de inspecciones'
};
