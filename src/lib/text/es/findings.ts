/** Tareas sobre dibujos: equipo, situaciones, momentos de una caída. */
import type { Messages } from '../en/index.ts';
import { looks } from './finding-looks.ts';
import { notes } from './finding-notes.ts';

const UNFIT = 'Marque cada parte que no se debe usar así.';
const WRONG = 'Marque todo lo que está mal.';

export const findings: Messages['findings'] = {
	tasks: {
		'gear-harness': {
			title: 'Un arnés antes de ponérselo',
			lead: 'Usted toma el arnés de su gancho y mira cada parte.',
			ask: UNFIT,
			choose: '¿Qué hace con el arnés?'
		},
		'gear-lanyards': {
			title: 'Dos cuerdas con absorbedor',
			lead: 'En la mesa hay dos cuerdas. Usted necesita una.',
			ask: UNFIT,
			choose: '¿Cuál se puede usar?'
		},
		'gear-connectors': {
			title: 'Seis ganchos',
			lead: 'En el tablero cuelgan seis ganchos. Ninguna mano los toca.',
			ask: 'Marque cada gancho que no se debe usar.',
			choose: '¿Qué hace con este juego?'
		},
		'gear-worn-back': {
			title: 'Un arnés puesto, por detrás',
			lead: 'Su compañera le pide que le mire la espalda.',
			ask: 'Marque todo lo que no debe quedar así.',
			choose: '¿Qué hay que hacer antes del trabajo?'
		},
		'gear-worn-front': {
			title: 'Un arnés puesto, por delante',
			lead: 'Su compañera se puso el arnés. Usted mira el frente.',
			ask: 'Marque todo lo que no debe quedar así.',
			choose: '¿Qué hay que hacer antes del trabajo?'
		},
		'gear-swatches': {
			title: 'Seis partes de cerca',
			lead: 'Usted mira de cerca seis partes de un arnés.',
			ask: 'Marque cada parte que saca el arnés de uso.',
			choose: '¿Qué hace con el arnés?'
		},
		'site-roof-edge': {
			title: 'Al borde de un techo plano',
			lead: 'El trabajo va a empezar. La tarjeta de una placa dice quién la aprobó, y para una persona.',
			ask: WRONG,
			choose: '¿Deja que empiece el trabajo?'
		},
		'site-twin-legs': {
			title: 'Un mástil con cuerda de dos ramales',
			lead: 'A la izquierda, su próximo paso la lleva más allá de la brida. A la derecha trabaja, con un ramal en uso y otro libre.',
			ask: WRONG,
			choose: '¿Se puede seguir así?'
		},
		'site-hook-ups': {
			title: 'Seis modos de engancharse',
			lead: 'Seis ganchos, cada uno como recibiría la carga. Una tarjeta junto a una argolla dice lo que aprobó el fabricante.',
			ask: 'Marque cada uno que no debe cargarse así.',
			choose: '¿Deja que empiece el trabajo?'
		},
		'site-restraint': {
			title: 'Un techo visto desde arriba',
			lead: 'Ella trabaja en el medio del techo. El círculo de puntos es hasta donde la deja ir su línea.',
			ask: WRONG,
			choose: '¿Deja que empiece el trabajo?'
		},
		'site-rescue': {
			title: 'Antes del trabajo: el rescate',
			lead: 'La línea cortada muestra la altura del puesto de trabajo. Usted repasa el plan de rescate.',
			ask: 'Marque todo lo que falta o está mal.',
			choose: '¿Deja que empiece el trabajo?'
		},
		'site-steel': {
			title: 'Bajo una viga de acero',
			lead: 'Dos personas están amarradas a una viga. Usted ve cada viga de punta.',
			ask: WRONG,
			choose: '¿Deja que sigan?'
		},
		'moment-now': {
			title: 'Un momento de la caída',
			lead: 'La imagen está quieta. La cinta muestra los largos del plan.',
			ask: 'Marque cada largo que la caída está gastando o ya gastó.',
			choose: '¿Qué etapa de la caída es esta?'
		},
		'moment-used-up': {
			title: 'Cuánto falta',
			lead: 'La imagen está quieta. A la izquierda está lo que ya bajaron las suelas.',
			ask: 'Marque cada largo que ya se gastó por completo.',
			choose: '¿Cuánto bajan todavía las suelas hasta que ella cuelga quieta?'
		},
		'moment-pull': {
			title: 'Cinco momentos de una caída',
			lead: 'No están en el orden del tiempo. La línea cortada es la superficie de trabajo.',
			ask: 'Marque cada momento en que la cuerda jala de ella.',
			choose: '¿En qué momento va más rápido?'
		},
		'moment-faster': {
			title: 'Más rápido o más lento',
			lead: 'Seis momentos de una caída, no en el orden del tiempo. Uno tiene un marco.',
			ask: 'Marque cada momento en que va más rápido que en el marco.',
			choose: '¿En cuál de estos jala más la cuerda? Tome la fuerza promedio.'
		}
	},
	choices: {
		use: 'Usarlo',
		'put-right': 'Corregirlo, mirar otra vez y usarlo',
		'take-out': 'Sacarlo de uso',
		first: 'Solo la primera',
		second: 'Solo la segunda',
		both: 'Las dos',
		neither: 'Ninguna',
		'go-on': 'Seguir',
		stop: 'No seguir',
		standing: 'Todavía de pie',
		'free-fall': 'Caída libre',
		slowing: 'El absorbedor se abre, la caída se frena',
		hanging: 'Detenida, colgando',
		same: 'Igual en los dos'
	},
	stages: {
		standing: 'todavía de pie',
		'free-fall': 'en caída libre',
		slowing: 'el absorbedor se abre',
		hanging: 'detenida, colgando'
	},
	parts: {
		'shoulder-left': 'Tirante izquierdo',
		'shoulder-right': 'Tirante derecho',
		'back-ring': 'Argolla D de la espalda',
		'chest-buckle': 'Hebilla del pecho',
		label: 'Etiqueta',
		'stitch-left': 'Costura de la cadera izquierda',
		'stitch-right': 'Costura de la cadera derecha',
		'leg-left': 'Pernera izquierda',
		'leg-right': 'Pernera derecha',
		'first-hook': 'Primera cuerda, gancho',
		'first-seam': 'Primera cuerda, costura',
		'first-line': 'Primera cuerda, correa',
		'first-pack': 'Primera cuerda, paquete del absorbedor',
		'first-tag': 'Primera cuerda, etiqueta',
		'second-hook': 'Segunda cuerda, gancho',
		'second-seam': 'Segunda cuerda, costura',
		'second-line': 'Segunda cuerda, correa',
		'second-pack': 'Segunda cuerda, paquete del absorbedor',
		'second-tag': 'Segunda cuerda, etiqueta',
		'lanyard-end': 'Extremo de la cuerda',
		'seat-strap': 'Correa de asiento',
		'chest-strap': 'Correa del pecho',
		'leg-buckle-left': 'Hebilla de la pernera izquierda',
		'leg-buckle-right': 'Hebilla de la pernera derecha',
		'strap-end': 'Extremo de la correa del cinturón',
		anchorage: 'Anclaje',
		people: 'Personas en el anclaje',
		packs: 'Absorbedor',
		'edge-line': 'Línea en el borde',
		'rescue-post': 'Puesto de rescate',
		'leg-front': 'Al cambiar, primer ramal',
		'leg-back': 'Al cambiar, segundo ramal',
		'leg-holding': 'Al trabajar, ramal en uso',
		'leg-spare': 'Al trabajar, ramal libre',
		'side-north': 'Borde de arriba',
		'side-east': 'Borde de la derecha',
		'side-south': 'Borde de abajo',
		hole: 'Abertura del techo',
		names: 'Tablero de nombres',
		kit: 'Equipo de rescate',
		helper: 'Segunda persona',
		reach: 'Elevador',
		way: 'Piso debajo del puesto',
		'hold-first': 'Izquierda: sujeción a la viga',
		'hold-second': 'Derecha: sujeción a la viga',
		'packs-first': 'Izquierda: absorbedor',
		'packs-second': 'Derecha: absorbedor',
		'attachment-first': 'Izquierda: extremo en la persona',
		'attachment-second': 'Derecha: extremo en la persona',
		'free-fall': 'Caída libre',
		elongation: 'Alargamiento',
		stretch: 'Deslizamiento y estiramiento',
		margin: 'Margen'
	},
	counted: {
		hook: ({ n }) => `Gancho ${n}`,
		strap: ({ n }) => `Correa ${n}`,
		seam: ({ n }) => `Costura ${n}`,
		'hook-up': ({ n }) => `Gancho ${n}`,
		moment: ({ n }) => `Momento ${n}`
	},
	looks,
	notes,
	momentSeen: ({ soles, line }) => `Las suelas están ${soles} debajo de la superficie de trabajo. ${line}`,
	lineSlack: 'La cuerda cuelga en un arco.',
	lineTight: ({ run }) => `La cuerda está recta. El absorbedor se alargó ${run}.`,
	standsStill: 'Está de pie en la superficie de trabajo. La cuerda cuelga en un arco.',
	termSeen: ({ length }) => `${length} en la cinta.`,
	framed: ({ seen }) => `En el marco: ${seen}`,
	lengthsSeen: ({ lanyard, anchorage, dRing }) =>
		`La cuerda mide ${lanyard}. Antes de la caída, sobre la superficie de trabajo: anclaje a ${anchorage}, argolla D a ${dRing}.`,
	fallenSeen: ({ fallen }) => `Las suelas ya bajaron ${fallen}.`,
	nothing: 'Nada que marcar',
	list: 'Todas las partes en una lista',
	momentFacts: ({ stage, t, v, pull }) => `A los ${t}: ${stage}. Velocidad ${v}. La cuerda jala ${pull} veces su peso.`,
	averagePull: 'El jalón es un promedio, para entender. Nunca es el máximo.',
	right: 'Correcto. Usted vio todo.',
	missed: ({ count }) => (count === 1 ? 'Le faltó una.' : `Le faltaron ${String(count)}.`),
	extra: ({ count }) => (count === 1 ? 'Una marca de más.' : `${String(count)} marcas de más.`),
	wrongChoice: ({ right }) => `Lo correcto es: ${right}.`,
	marksRight: 'Sus marcas son correctas.',
	yourMark: 'usted la marcó',
	youMissed: 'le faltó',
	notToMark: 'no se marca',
	toMark: 'se marca',
	whatToDo: ({ act }) => `Qué hacer: ${act}`,
	source: ({ what }) => `Fuente: ${what}`,
	marks: {
		read: 'leído',
		secondary: 'leído en una copia',
		memory: 'de memoria',
		practice: 'práctica común, sin fuente'
	},
	makerDecides: 'Deciden las instrucciones del fabricante, la ley local y una persona competente.'
};
