import type { rules as en } from '../en/rules.ts';

export const rules: typeof en = {
	scope: {
		'us-construction': 'Obras de construcción según la ley federal',
		'us-general-industry': 'Industria general según la ley federal',
		'ca-ontario': 'Obras de construcción',
		'ca-alberta': 'Todo trabajo según el código de la provincia',
		'ca-quebec': 'Obras de construcción',
		eu: 'Equipo contra caídas y sus normas',
		uk: 'Todo trabajo en altura',
		au: 'Obras de construcción; números de ley de Queensland'
	},
	note: {
		albertaOrder: 'Primero van las barandas, luego la restricción de movimiento, luego la detención de caídas.',
		albertaTraining: 'La ley dice qué debe cubrir la capacitación. La práctica con el equipo es parte de ella.',
		allowableStress: 'Es una carga dentro del esfuerzo admisible del apoyo, no su carga de rotura.',
		anchorPerUser: 'Cada usuario más suma a la resistencia pedida. Es una carga de ensayo de la norma.',
		auRescue: 'La ley pide pasos de emergencia, con rescate, que se hayan probado.',
		below310: 'El propio límite ya es demasiado. Desde allí, alguien con esa facultad debe adaptar el sistema.',
		classE6: 'La fuerza mayor solo vale para la clase E6, usada como dicen su etiqueta y sus instrucciones.',
		clearZone: 'La zona despejada incluye también el péndulo.',
		en355Elongation: 'La norma limita la distancia de detención: dos largos de la cuerda más este valor.',
		europeNumbers: 'La ley no fija un número para el espacio libre. Los números vienen de normas y del fabricante.',
		factorTwo: 'Hay dos formas de cumplir: esta resistencia, o un sistema diseñado para el doble de la fuerza de detención.',
		fromStandard: 'El número viene de una norma, no de la ley misma.',
		highestPracticable: 'El anclaje no debe estar por debajo del hombro. La cuerda debe ser lo más corta que se pueda.',
		lengthWithAbsorber: 'El largo cuenta con el absorbedor y los conectores.',
		limitedFreeFall: 'La resistencia menor solo vale para una caída libre limitada, como la define la norma.',
		longerFreeFall: 'Más caída libre pide un diseño del fabricante para ese caso y ensayos con la fuerza bajo el límite.',
		noContact: 'La ley no fija un número. El cuerpo no debe tocar lo que hay debajo.',
		ontarioOrder: 'Primero van las barandas. Si no se puede: restricción de movimiento, limitación o detención de caídas, o una red.',
		ontarioTraining: 'El trabajo en altura pide un curso aprobado y capacitación para la obra misma.',
		quebecAngle: 'La ley nombra también un ángulo de 22°. Aquí no se revisa.',
		quebecOnePerson: 'Una persona por anclaje.',
		quebecOr: 'La ley une los dos con «o»: basta cumplir uno.',
		stretchAlsoQuoted: 'También se citan otras cifras. Use la del propio arnés si la declara.',
		testFall: 'Es la caída del ensayo. La etiqueta del equipo va primero.',
		testMass: 'Es la masa del ensayo, tomada como máxima. La etiqueta del equipo va primero.',
		ukOrder: 'La detención de caídas va al final. Es para donde no se pueden usar otros medios.',
		ukTraining: 'El usuario, y otros más, deben estar capacitados, también en rescate.',
		usConstructionTraining: 'Capacita una persona competente. El empleador guarda un registro firmado con nombre y fecha.',
		usGeneralTraining: 'Capacita una persona calificada, antes del trabajo y de un modo que se entienda.',
		withoutAbsorber: 'Este límite es para una línea sin absorbedor.'
	},
	marks: {
		read: { name: 'Leído', what: 'Leído en una copia del propio texto.' },
		'read-secondary': { name: 'Leído en una copia de otros', what: 'Leído en un texto que lo cita o lo resume, no en el propio texto.' },
		memory: {
			name: 'De memoria',
			what: 'Nadie lo ha buscado aún. No decide nada hasta que una persona competente de su organización lo confirme.'
		}
	},
	confidence: { high: 'certeza alta', medium: 'certeza media', low: 'certeza baja' },
	decidesNothing: 'no decide nada hasta que se confirme',
	crossCheckOnly: 'Se muestra para comparar. Ningún problema se basa en ella.',
	citation: ({ clause, title }) => `${clause}, ${title}`,
	lookedAt: ({ when }) => `consultado ${when}`,
	subjects: {
		harness: 'Arnés',
		connectors: 'Conectores',
		'component-strength': 'Resistencia de las piezas',
		'lanyard-length': 'Largo de la cuerda',
		'free-fall': 'Caída libre',
		'arrest-force': 'Fuerza de detención',
		deceleration: 'Distancia de desaceleración',
		capacity: 'Masa',
		'anchorage-strength': 'Resistencia del anclaje',
		'anchorage-independence': 'Anclaje aparte',
		'anchorage-height': 'Altura del anclaje',
		contact: 'Contacto abajo',
		swing: 'Péndulo',
		edge: 'Borde',
		attachment: 'Punto de enganche',
		rescue: 'Rescate',
		training: 'Capacitación',
		'order-of-measures': 'Orden de las medidas',
		numbers: 'Números',
		'trigger-height': 'Desde qué altura'
	},
	quantities: {
		freeFall: 'caída libre',
		peakForce: 'fuerza de detención',
		decelerationDistance: 'distancia de desaceleración',
		massAttached: 'masa en el arnés',
		anchorageStrength: 'resistencia del anclaje',
		strengthPerPerson: 'resistencia del anclaje por persona',
		componentStrength: 'resistencia de la pieza más débil',
		lanyardLength: 'largo de la cuerda',
		spare: 'espacio libre sobrante',
		anchorageAboveDRing: 'altura del anclaje sobre la argolla D',
		anchorageAboveShoulder: 'altura del anclaje sobre el hombro',
		offset: 'distancia lateral',
		fallHeight: 'altura sobre el nivel inferior'
	},
	facts: {
		absorber: ({ asked }) => (asked === true ? 'la línea tiene absorbedor de energía' : 'la línea no tiene absorbedor de energía'),
		makerTestedLongerFreeFall: ({ asked }) =>
			asked === true
				? 'el fabricante lo diseñó y ensayó para más caída libre'
				: 'el fabricante no lo ensayó para más caída libre',
		usedAsInstructed: ({ asked }) => (asked === true ? 'usado como dice la etiqueta' : 'no usado como dice la etiqueta'),
		systemAdaptedToMass: ({ asked }) => (asked === true ? 'el sistema está adaptado a la masa' : 'el sistema no está adaptado a la masa'),
		factorTwoDesign: ({ asked }) =>
			asked === true ? 'una persona calificada diseñó todo el sistema' : 'ninguna persona calificada diseñó todo el sistema',
		anchorageIndependent: ({ asked }) =>
			asked === true ? 'el anclaje no sostiene nada de la plataforma' : 'el anclaje sostiene también la plataforma',
		connectorsCompatible: ({ asked }) =>
			asked === true ? 'los conectores que se tocan están hechos para ir juntos' : 'los conectores que se tocan no están hechos para ir juntos',
		lineMeetsEdge: ({ asked }) => (asked === true ? 'la línea toca un borde' : 'la línea no toca ningún borde'),
		lineMayBeCut: ({ asked }) => (asked === true ? 'algo puede cortar la línea' : 'nada puede cortar la línea'),
		rescueArranged: ({ asked }) => (asked === true ? 'hay rescate previsto' : 'no hay rescate previsto'),
		limitedFreeFall: ({ asked }) => (asked === true ? 'la caída libre es limitada' : 'la caída libre no es limitada'),
		harness: ({ asked }) => (asked === 'full-body' ? 'se usa arnés de cuerpo completo' : 'se usa cinturón'),
		attachment: ({ asked }) =>
			asked === 'back' ? 'enganche en la espalda' : asked === 'above-head' ? 'enganche sobre la cabeza' : 'enganche en el pecho',
		workplace: ({ asked }) =>
			asked === 'scaffold'
				? 'en un andamio'
				: asked === 'steel-erection'
					? 'en montaje de acero'
					: asked === 'permanent'
						? 'en un área de trabajo fija'
						: 'en otro trabajo',
		persons: ({ asked }) => (asked === 1 ? 'una persona en el anclaje' : `${String(asked)} personas en el anclaje`),
		absorberClass: ({ asked }) => `absorbedor de clase ${String(asked)}`
	},
	atMost: ({ quantity, amount }) => `${quantity}: ${amount} como máximo`,
	atLeast: ({ quantity, amount }) => `${quantity}: ${amount} como mínimo`,
	below: ({ quantity, amount }) => `${quantity} por debajo de ${amount}`,
	above: ({ quantity, amount }) => `${quantity} por encima de ${amount}`,
	times: ({ times, quantity }) => `${times} × la ${quantity}`,
	noContact: 'sin contacto con lo que hay debajo',
	and: 'y',
	or: 'o',
	not: ({ what }) => `no: ${what}`,
	onlyIf: ({ condition }) => `Solo si ${condition}.`,
	from: ({ amount }) => `El deber empieza desde ${amount}.`,
	fromAbove: ({ amount }) => `El deber empieza por encima de ${amount}.`,
	tables: 'Tablas de reglas',
	practice: 'Margen y estiramiento: práctica, no ley',
	classes: 'Clases de absorbedores de energía',
	superseded: 'ya no se emite, sigue en uso'
};
