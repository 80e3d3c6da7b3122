import type { method as en } from '../en/method.ts';

export const method: typeof en = {
	formulas: {
		heading: 'Una fórmula para cada magnitud',
		text: ['Cada magnitud es una fórmula. La misma fórmula da la respuesta, los pasos, la cinta y la explicación de un error.']
	},
	datums: {
		heading: 'Cuatro lugares desde donde medir',
		text: ['El mismo plan tiene cuatro valores correctos de espacio libre, uno desde cada lugar.', 'Lo que sobra es igual desde los cuatro.']
	},
	customs: {
		heading: 'Dos formas de contar el cuerpo',
		text: ['Las hojas cuentan el cuerpo de dos formas. Cada pregunta dice cuál vale.']
	},
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
		]
	},
	limits: {
		heading: 'De dónde vienen los límites',
		text: [
			'Cada límite se muestra con su artículo, su fuente y cómo se conoce. El número es el que imprime la ley.',
			'El margen y el estiramiento son práctica, no ley. Las instrucciones del fabricante van primero.',
			'La etiqueta del equipo va antes que su clase.'
		]
	},
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
