import type { topics as en } from '../en/topics.ts';

export const topics: typeof en = {
	heading: 'Qué trata el curso y por qué en este orden',
	lead: [
		'Algunas leyes dan una lista de lo que la formación debe tratar. Aquí está cada tema, con las lecciones que lo tratan.',
		'Si un tema va más allá de este curso, la tabla dice quién se ocupa del resto.'
	],
	order: [
		'Casi todas las listas empiezan con el peligro. Por eso la primera lección muestra una caída.',
		'Luego van los números, en el orden en que un plan los pide. Primero la etiqueta. Siguen la caída libre, el espacio libre requerido y el disponible.',
		'La fuerza y el péndulo van después, porque los dos parten de la caída libre.',
		'Al final van el equipo, la gente, los lugares y el rescate. Allí hace falta todo lo anterior.'
	],
	columns: { item: 'Punto', topic: 'Tema', lessons: 'Lecciones', open: 'Queda para otros' },
	nothing: 'nada',
	noLesson: 'ninguna lección',
	open: {
		'hands-on': 'práctica con el equipo, junto a un formador',
		maker: 'las instrucciones del fabricante',
		employer: 'la empresa, para su propia obra',
		'other-system': 'otro sistema'
	},
	trainer: {
		'us-construction': 'Esta formación la debe dar una persona competente.',
		'us-general-industry': 'Esta formación la debe dar una persona calificada.',
		'ca-alberta': 'La práctica con el equipo es parte de esta lista.',
		'ca-offshore': 'El uso y la respuesta a emergencias se deben practicar.'
	},
	of: {
		'us-construction.hazards': 'Cuáles son los peligros de una caída',
		'us-construction.upkeep': 'Cómo se montan, cuidan, revisan y desmontan los sistemas',
		'us-construction.use': 'Cómo se usa cada tipo de sistema',
		'us-construction.monitor': 'El papel de quienes vigilan a otros',
		'us-construction.machines': 'Límites para máquinas en techos de poca pendiente',
		'us-construction.storage': 'Cómo se manejan y guardan equipo y materiales; protección arriba',
		'us-construction.plan': 'El papel de la persona en un plan contra caídas',
		'us-construction.law': 'Las reglas de esa parte de la ley',
		'us-general-industry.hazards': 'Los peligros de una caída y cómo verlos',
		'us-general-industry.procedures': 'Qué hacer para que los peligros sean pocos',
		'us-general-industry.upkeep': 'Cómo se montan, revisan, manejan, cuidan y desmontan los sistemas',
		'us-general-industry.use': 'Enganche, anclaje, amarre, revisión y guardado como dice el fabricante',
		'ca-alberta.law': 'La ley',
		'ca-alberta.plan': 'Qué es un plan contra caídas',
		'ca-alberta.methods': 'Los métodos de protección contra caídas',
		'ca-alberta.hazards': 'Cómo ver los peligros',
		'ca-alberta.anchorages': 'Cómo juzgar y elegir un anclaje',
		'ca-alberta.connecting': 'Las piezas que unen',
		'ca-alberta.body': 'Lo que una caída le hace al cuerpo: fuerza de detención, absorbedor, péndulo, caída libre',
		'ca-alberta.inspection': 'Revisión antes del uso',
		'ca-alberta.emergency': 'Qué hacer en una emergencia',
		'ca-alberta.practice': 'Práctica con el equipo',
		'ca-offshore.law': 'La ley y quién hace qué',
		'ca-offshore.hazards': 'Los peligros',
		'ca-offshore.order': 'El orden de las medidas',
		'ca-offshore.means': 'Medios de protección y dónde va cada uno',
		'ca-offshore.choice': 'Cómo elegir piezas y anclajes',
		'ca-offshore.body': 'Lo que la caída libre, el péndulo y el frenado le hacen al cuerpo: fuerza de detención, absorbedor',
		'ca-offshore.use': 'Uso, guardado y revisión, con práctica',
		'ca-offshore.emergency': 'Qué hacer en una emergencia, con práctica'
	}
};
