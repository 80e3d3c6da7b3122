import type { method as en } from '../en/method.ts';

export const method: typeof en = {
	title: 'Método y fuentes',
	lead: 'Aquí está cómo se calcula cada número y de dónde viene cada límite.',
	contents: 'En esta página',
	formulas: {
		heading: 'Fórmulas',
		text: 'Cada magnitud es una fórmula. La misma fórmula da la respuesta, los pasos, la cinta y la explicación de un error.',
		symbol: 'Símbolo',
		quantity: 'Magnitud',
		formula: 'Fórmula',
		meaning: 'Qué es',
		source: 'Fuente',
		givens: 'Datos',
		cautious: 'Lado prudente',
		cautiousMore: 'más',
		cautiousLess: 'menos',
		where: 'Cuándo'
	},
	forms: {
		plain: 'justo debajo del anclaje',
		connector: 'con un conector de anclaje',
		offset: 'con distancia lateral a lo largo del borde',
		kneeling: 'de rodillas',
		raised: 'en un lugar de pie elevado',
		'full-height': 'con la estatura completa',
		conditioned: 'mojado o congelado',
		obstacles: 'con algo debajo'
	},
	constants: { g: 'gravedad normal' },
	sources: {
		definition: '29 CFR 1926.500(b), definición de caída libre; luego geometría',
		geometry: 'Geometría',
		pythagoras: 'Geometría: Pitágoras',
		mechanics: 'Mecánica, sin resistencia del aire',
		work: 'Trabajo de una fuerza promedio constante; la usan CSA Z259.16 y ANSI Z359.6 (de memoria)',
		label: 'Se lee en la etiqueta',
		sum: 'Suma de todo lo que cuelga del arnés',
		least: 'La pieza más débil decide'
	},
	datums: {
		heading: 'Cuatro lugares desde donde medir',
		text: 'El mismo plan tiene cuatro valores correctos de espacio libre, uno desde cada lugar. Lo que sobra es igual desde los cuatro.'
	},
	customs: {
		heading: 'Dos formas de contar el cuerpo',
		text: 'Las hojas cuentan el cuerpo de dos formas. Cada pregunta dice cuál vale.'
	},
	caution: { heading: 'Lo que esto no es' },
	marking: {
		heading: 'Cómo se marcan las respuestas',
		text: [
			'Una respuesta está bien dentro de la mitad de la última cifra pedida.',
			'Del lado prudente se deja pasar un poco más. Del lado peligroso, solo lo que explica el redondeo.',
			'Una respuesta del lado peligroso se cuenta aparte del puntaje.',
			'Lo que no se puede leer no es un error. Se le pregunta otra vez.'
		]
	},
	diagnosis: {
		heading: 'Cómo se encuentra un error',
		text: [
			'Cada error conocido es un cambio en la fórmula. Se prueban todos con su número.',
			'Si uno encaja con claridad, se dice que así parece. Dos errores a la vez son solo una idea.',
			'Si varios encajan igual, se le hace una pregunta más.',
			'Si no encaja ninguno, se muestra el cálculo paso a paso.'
		],
		table: 'Todos los errores',
		slip: 'Error',
		side: 'Hacia dónde',
		sides: { unsafe: 'el lado peligroso', cautious: 'el lado prudente', either: 'cualquier lado' },
		often: 'Con qué frecuencia',
		tiers: { common: 'común', occasional: 'de vez en cuando', rare: 'raro' },
		oftenGuess: 'Cada cuánto ocurre un error lo estima el autor hasta que haya datos.'
	},
	checks: { heading: 'Puntos de geometría y de etiquetas', text: 'Valen con cualquier ley.' },
	rules: {
		heading: 'Tablas de reglas',
		text: 'Cada límite se muestra con su artículo, su fuente y cómo se conoce. El número es el que imprime la ley.',
		about: 'Sobre',
		limit: 'Límite',
		clause: 'Artículo',
		source: 'Fuente',
		known: 'Cómo se conoce'
	},
	practice: {
		heading: 'Margen y estiramiento',
		text: 'Esto es práctica, no ley. Las instrucciones del fabricante van primero.',
		value: 'Valor'
	},
	classes: { heading: 'Clases de absorbedores de energía', text: 'La etiqueta del equipo va antes que su clase.' },
	fields: { heading: 'Lo que dicen etiquetas e instrucciones', text: 'Los campos y el texto que pide cada uno.' },
	marksHeading: 'Cómo se conoce un número',
	playback: {
		heading: 'La caída que se muestra',
		text: [
			'El dibujo muestra el caso para planificar: lo más que dan las etiquetas.',
			'El tirón del dibujo es un promedio, para entender. Al revisar se usa el pico.',
			'Una caída real puede ser más corta. Nadie puede contar con eso.'
		]
	},
	scope: {
		heading: 'Lo que queda fuera',
		text: [
			'Solo se calcula una cuerda en un anclaje rígido, con absorbedor o sin él.',
			'Una línea sobre un borde se rechaza.',
			'Los otros sistemas se rechazan por su nombre.'
		]
	}
};
