/** Lo que se ve de cada parte de un dibujo, sin juzgarlo. Por forma y por aspecto. */
import type { Messages } from '../en/index.ts';

export const looks: Messages['findings']['looks'] = {
	webbing: {
		even: 'Los bordes son rectos y el tejido de la correa es parejo.',
		dusty: 'El tejido es parejo bajo una capa fina de polvo.',
		creased: 'La correa tiene dos líneas donde estuvo doblada. Ningún hilo sobresale.',
		notch: 'Una muesca entra desde el borde, más allá de la mitad del ancho. A los lados salen hilos.',
		gloss: 'Una parte lisa, dura y brillante encoge los bordes. Tiene bolitas encima.',
		blotch: 'Una mancha pálida de borde nítido cubre el tejido. Está dura y tiene agujeros pequeños.',
		fuzz: 'A lo largo de los dos bordes salen fibras cortas. El tejido tiene lazos rotos.'
	},
	stitches: {
		rows: 'Todas las filas de la costura están completas, en un solo color.',
		'two-tone': 'Todas las filas están completas. La cruz es de un hilo más claro que el marco.',
		'rows-open': 'Cuelgan lazos largos de hilo. Las dos capas se abren en un extremo.',
		'rows-gap': 'En el medio queda una fila de agujeros pequeños sin hilo.'
	},
	ring: {
		round: 'El arco es parejo en toda la vuelta.',
		scuffed: 'El arco es parejo. La superficie tiene rayas finas.',
		oval: 'El arco se inclina a un lado y la base está estirada.',
		nick: 'El arco tiene una muesca tan honda como un tercio de la barra.',
		pits: 'Hay muchos hoyos pequeños en el arco. Entre ellos se levantan escamas.'
	},
	buckle: {
		frame: 'El marco es recto y plano.',
		scuffed: 'El marco es recto. Sus esquinas tienen rayas finas.',
		skewed: 'Los lados del marco están ondulados y torcidos.',
		crack: 'Una abertura irregular cruza un lado del marco.'
	},
	tag: {
		full: 'La etiqueta está. Se leen todas sus líneas.',
		dirty: 'La etiqueta está manchada. Se leen todas sus líneas.',
		blank: 'La etiqueta está gastada. Quedan unos pocos trazos.',
		stub: 'Donde iba la etiqueta cuelga una tira rota con dos hilos.'
	},
	pack: {
		shut: 'La funda está cerrada y su costura da toda la vuelta.',
		dusty: 'La funda tiene polvo y está cerrada. Su costura da toda la vuelta.',
		strip: 'La funda está cerrada. Una tira cuelga de su ventana.',
		torn: 'La funda está rota y abierta. De ella cuelga correa doblada.'
	},
	hook: {
		shut: 'El cierre llega a la punta. En el lomo hay una palanca.',
		scuffed: 'El cierre llega a la punta. En el lomo hay una palanca. El cuerpo tiene rayas finas.',
		gap: 'El cierre queda al lado de la punta. Entre los dos hay un hueco.',
		'gate-bent': 'El cierre está doblado como una S. Su extremo no llega a la punta.',
		crack: 'El cierre llega a la punta. Una línea irregular con ramas cruza el arco.',
		'no-catch': 'El cierre llega a la punta. Falta la palanca del lomo. Su resorte sobresale.',
		pits: 'El cierre llega a la punta. El cuerpo tiene muchos hoyos y escamas levantadas.'
	},
	line: {
		even: 'La correa está recta y su tejido es parejo.',
		dusty: 'La correa está recta bajo una capa fina de polvo.',
		knot: 'La correa da una vuelta sobre sí misma y pasa por su propio lazo.',
		notch: 'Una muesca entra desde el borde, más allá de la mitad del ancho. Salen hilos.',
		gloss: 'Una parte lisa, dura y brillante encoge los bordes. Tiene bolitas encima.',
		fuzz: 'A lo largo de los dos bordes salen fibras cortas. Hay lazos rotos.'
	},
	'worn-shoulder': {
		flat: 'El tirante va plano desde el hombro hacia abajo.',
		dusty: 'El tirante va plano. Tiene polvo.',
		twisted: 'El tirante da media vuelta y muestra el revés.',
		slipped: 'El tirante pasa sobre el brazo, al lado del hombro.',
		notch: 'El tirante va plano. Una muesca entra desde el borde y salen hilos.'
	},
	'worn-ring': {
		blades: 'La argolla está entre los omóplatos.',
		waist: 'La argolla está una mano arriba del cinturón.'
	},
	'worn-seat': {
		under: 'La correa pasa por debajo de las nalgas.',
		over: 'La correa cruza la espalda baja, arriba del cinturón.'
	},
	'worn-leg': {
		snug: 'La pernera va plana y pegada al muslo.',
		dusty: 'La pernera va pegada al muslo. Tiene polvo.',
		twisted: 'La pernera va pegada. Da media vuelta y muestra el revés.',
		loose: 'La pernera cuelga en un arco ancho. Al lado del muslo caben dos puños.',
		fuzz: 'La pernera va pegada. A lo largo de sus bordes salen fibras cortas.'
	},
	'worn-lanyard': {
		'on-ring': 'El gancho de la cuerda está en la argolla de la espalda.',
		'on-belt': 'El gancho de la cuerda está en una presilla al lado del cinturón.'
	},
	'worn-chest': {
		middle: 'La correa cruza en el medio del pecho.',
		belly: 'La correa cruza en el vientre, justo arriba del cinturón.',
		throat: 'La correa cruza justo debajo de la garganta.'
	},
	'worn-buckle': {
		through: 'La correa pasa sobre la barra y sale por el otro lado.',
		half: 'La correa termina dentro del marco. Nada sale por el otro lado.',
		skewed: 'La correa pasa. Los lados del marco están ondulados y torcidos.'
	},
	'worn-end': {
		held: 'El extremo de la correa va plano bajo dos pasadores.',
		hangs: 'El extremo de la correa cuelga hasta el muslo.'
	},
	anchorage: {
		'plate-tag': 'La línea está en la argolla de una placa con pernos. Al lado hay una tarjeta con nombre y fecha.',
		pipe: 'La línea rodea un tubo de ventilación delgado. No hay tarjeta.',
		rail: 'La línea está enganchada a una baranda de dos postes. No hay tarjeta.'
	},
	'edge-line': {
		clear: 'La línea termina mucho antes del borde del techo y no toca nada.',
		'on-edge': 'La línea se dobla sobre el borde vivo del techo y baja hasta una persona.'
	},
	people: {
		one: 'Una sola línea llega al anclaje.',
		two: 'Dos líneas llegan al mismo anclaje, de dos personas.'
	},
	packs: {
		one: 'Hay un paquete en la línea.',
		two: 'Hay dos paquetes en la línea, uno tras otro.'
	},
	'rescue-post': {
		ready: 'Una persona espera junto a un tablero escrito. Debajo hay una bolsa de equipo.',
		bare: 'El tablero está vacío. No hay nadie ni hay bolsa.'
	},
	'leg-back': {
		'next-eye': 'El gancho está en el ojo arriba de la brida.',
		hangs: 'El gancho cuelga libre debajo de la cadera.',
		'low-eye': 'El gancho está en el ojo a la altura de la rodilla.'
	},
	'leg-front': {
		'eye-above': 'El gancho está en el ojo sobre la cabeza, debajo de la brida.',
		'low-eye': 'El gancho está en el ojo a la altura de la rodilla.'
	},
	'leg-holding': {
		'eye-above': 'El gancho está en un ojo cerrado sobre la cabeza.',
		'low-eye': 'El gancho está en el ojo a la altura de la rodilla.',
		'open-arm': 'El gancho cuelga de un brazo que baja hacia un extremo abierto.'
	},
	'leg-spare': {
		'tear-tab': 'El gancho libre está en una lengüeta de tela con una línea de rotura.',
		'hip-ring': 'El gancho libre está en una argolla de metal cosida a la correa.'
	},
	'hook-up': {
		'eye-seated': 'El arco del gancho rodea la argolla de un perno de ojo. El cierre está libre.',
		'shackle-seated': 'El arco del gancho rodea un grillete. El cierre está libre.',
		'tip-on-flange': 'La punta del gancho se apoya en el ala de una viga. El cierre está abierto.',
		'gate-on-bar': 'El gancho recibe un tirón de lado. Su cierre se apoya en una barra redonda.',
		'hook-in-hook': 'El arco del gancho rodea el arco de otro gancho.',
		'two-in-ring': 'Dos ganchos comparten una argolla. Se apoyan uno en otro.',
		'round-and-back': 'La línea rodea una viga. Su gancho está puesto en la misma línea.',
		'round-to-ring': 'La línea rodea una viga. Su gancho está en una argolla con tarjeta, cosida a la línea.'
	},
	'roof-side': {
		'reach-short': 'El círculo de puntos termina antes de este borde.',
		'rail-past': 'El círculo de puntos pasa de este borde. A lo largo hay una baranda.',
		'reach-past': 'El círculo de puntos pasa de este borde. A lo largo no hay nada.'
	},
	'roof-hole': {
		'reach-short': 'El círculo de puntos termina antes de esta abertura.',
		covered: 'El círculo de puntos abarca esta abertura. La cubre una tapa atornillada.',
		'reach-past': 'El círculo de puntos abarca esta abertura. Nada la cubre.'
	},
	'rescue-names': {
		written: 'El tablero tiene tres líneas con nombres y números.',
		empty: 'El tablero tiene tres líneas sin nada escrito.'
	},
	'rescue-kit': {
		bag: 'Una bolsa de equipo cuelga de su gancho.',
		'bare-hook': 'El gancho de la bolsa está vacío.'
	},
	'rescue-helper': {
		stands: 'Una segunda persona está abajo con un radio.',
		nobody: 'Abajo no hay nadie.'
	},
	'rescue-reach': {
		reaches: 'La canasta del elevador está a la altura del puesto de trabajo.',
		short: 'El brazo del elevador está todo afuera. Su canasta queda muy por debajo del puesto.'
	},
	'rescue-way': {
		open: 'El piso debajo del puesto está despejado.',
		blocked: 'Hay cajas apiladas entre el elevador y el muro.'
	},
	'beam-hold': {
		clamp: 'Una mordaza sujeta las dos alas de la viga. El gancho está en su argolla, con una tarjeta.',
		'sling-sleeve': 'Una correa rodea la viga. En los cuatro bordes hay fundas gruesas.',
		'round-to-ring': 'La línea rodea la viga. Su gancho está en una argolla con tarjeta, cosida a la línea.',
		'sling-bare': 'Una correa rodea la viga. Se apoya sin nada en los bordes, y salen fibras.',
		conduit: 'El gancho está en un tubo de cables delgado que cuelga de la viga.',
		'round-and-back': 'La línea rodea la viga. Su gancho está puesto en la misma línea.'
	},
	attachment: {
		back: 'La línea termina en la argolla de la espalda.',
		hip: 'La línea termina en una argolla en la cadera.'
	},
	term: { plain: 'Un largo de la cinta.' },
	moment: { plain: 'Un momento de la caída.' }
};
