import { withTitles } from '../parts.ts';
import { a, de } from '../nouns.ts';
import type { slips as en } from '../en/slips.ts';

export const slips: typeof en = withTitles<keyof typeof en>({
	/* Se responde otra pregunta. */
	'datum-anchorage': {
		label: 'Medido desde el anclaje',
		clause: ({ from }) => `su número empieza en el anclaje, no en ${from}`,
		why: ({ term }) => `Cada punto de partida da otro número. Aquí la diferencia es de ${term}.`,
		rule: 'Mida desde el nivel que nombra la pregunta.',
		hint: 'Busque el nivel en la pregunta. Ponga allí el inicio de la cinta.'
	},
	'datum-d-ring': {
		label: 'Medido desde la argolla D',
		clause: ({ from }) => `su número empieza en la argolla D, no en ${from}`,
		why: ({ term }) => `Cada punto de partida da otro número. Aquí la diferencia es de ${term}.`,
		rule: 'Mida desde el nivel que nombra la pregunta.',
		hint: 'Busque el nivel en la pregunta. Ponga allí el inicio de la cinta.'
	},
	'datum-surface': {
		label: 'Medido desde la superficie de trabajo',
		clause: ({ from }) => `su número empieza en la superficie de trabajo, no en ${from}`,
		why: ({ term }) => `Cada punto de partida da otro número. Aquí la diferencia es de ${term}.`,
		rule: 'Mida desde el nivel que nombra la pregunta.',
		hint: 'Busque el nivel en la pregunta. Ponga allí el inicio de la cinta.'
	},
	'limit-for-value': {
		label: 'El límite en lugar de la caída libre',
		clause: ({ value }) => `usted tomó la mayor caída libre permitida, ${value}, como la caída libre de aquí`,
		why: ({ name, right }) => `${name} caería ${right} aquí. El límite solo sirve para comparar.`,
		rule: 'Primero calcule la caída libre. Luego compare con el límite.',
		hint: 'Empiece con el largo de la cuerda y las dos alturas.'
	},
	/* Se deja de lado una magnitud entera. */
	'lanyard-for-free-fall': {
		label: 'Largo de la cuerda en lugar de la caída libre',
		clause: ({ value }) => `usted tomó toda la cuerda, ${value}, como caída libre`,
		why: ({ name, right }) => `Solo son iguales si el anclaje y la argolla D están a la par. Aquí ${name} cae ${right} hasta que la cuerda queda tensa.`,
		rule: 'La caída libre es el largo de la cuerda menos el desnivel del anclaje sobre la argolla D.',
		hint: '¿Cuánto está el anclaje por encima de la argolla D, o por debajo?'
	},
	'free-fall-for-line': {
		label: 'Caída libre en lugar de la cuerda',
		clause: ({ from }) => `usted contó la caída libre, pero desde ${from} cuenta toda la cuerda`,
		why: ({ term }) => `Desde allí la cinta baja a lo largo de toda la cuerda. La diferencia es de ${term}.`,
		rule: 'Desde el anclaje, cuente la cuerda. Desde la argolla D o la superficie, cuente la caída libre.',
		hint: 'Mire de dónde cuelga la cinta. ¿Qué recorre primero?'
	},
	'expected-elongation': {
		label: 'Alargamiento esperado en lugar del de la etiqueta',
		clause: () => 'usted calculó el alargamiento con la fuerza promedio',
		why: ({ term }) => `Eso es lo que se espera, no lo más que puede darse. La diferencia es de ${term}.`,
		rule: 'Planifique con el mayor alargamiento de la etiqueta.',
		hint: 'Lea el alargamiento en la etiqueta del absorbedor.'
	},
	/* Se lee mal un dato. */
	'other-class-elongation': {
		label: 'Alargamiento de otro absorbedor',
		clause: () => 'usted tomó el alargamiento de otro absorbedor',
		why: ({ name, term }) => `No es el que lleva ${name}. La diferencia es de ${term}.`,
		rule: 'Lea la etiqueta del absorbedor que se usa.',
		hint: '¿Qué absorbedor lleva esta cuerda?'
	},
	'other-margin': {
		label: 'Margen de otra práctica',
		clause: () => 'usted dejó el margen de otra práctica',
		why: ({ term }) => `El margen cambia de un lugar a otro. Aquí la diferencia es de ${term}.`,
		rule: 'Deje el margen que se pide en el sitio.',
		hint: 'Busque la regla que vale aquí.'
	},
	'stature-for-d-ring': {
		label: 'Estatura en lugar de la altura de la argolla D',
		clause: ({ name }) => `usted tomó la estatura de ${name}, no la altura de la argolla D`,
		why: ({ name }) => `La cuerda tira de la argolla D. Está en la espalda, muy por debajo de la cabeza de ${name}.`,
		rule: 'La cuerda tira de la argolla D: use su altura sobre las suelas.',
		hint: 'Busque la cota que termina en la argolla D.'
	},
	'posture-ignored': {
		label: 'No se vio que está de rodillas',
		clause: ({ name }) => `usted tomó la altura de la argolla D de pie, pero ${name} está de rodillas`,
		why: ({ term }) => `De rodillas, la argolla D baja y empieza más abajo. Eso cambia este paso en ${term}.`,
		rule: 'Antes de la caída, tome la argolla D donde está en esta postura.',
		hint: '¿A qué altura está la argolla D ahora?'
	},
	'kneeling-shortens-clearance': {
		label: 'El cuerpo contado de rodillas',
		clause: ({ name }) => `usted contó a ${name} de rodillas al final de la caída`,
		why: ({ name, term }) => `Tras la caída, ${name} cuelga a todo lo largo. A su cinta le faltan ${term}.`,
		rule: 'Estar de rodillas cambia el inicio de la caída. No acorta el cuerpo que cuelga.',
		hint: 'Imagine el final de la caída. ¿Cómo cuelgan las piernas?'
	},
	'wrong-floor': {
		label: 'Altura desde otro piso',
		clause: () => 'usted midió el anclaje desde otro piso',
		why: ({ name, term }) => `${name} no está en ese piso. Entre los dos hay ${term}.`,
		rule: 'Tome cada altura desde el nivel donde se está de pie.',
		hint: 'Siga la cota del anclaje hasta su extremo de abajo.'
	},
	'offset-ignored': {
		label: 'Falta la distancia lateral',
		clause: () => 'usted tomó la cuerda como si bajara a plomo',
		why: ({ name }) => `${name} está a un lado. Una cuerda en diagonal baja menos, así que queda tensa antes.`,
		rule: 'A un lado, la línea queda tensa a √(línea² − distancia lateral²) bajo el anclaje.',
		hint: 'Dibuje el triángulo: la línea, la distancia lateral, la profundidad.'
	},
	'offset-subtracted': {
		label: 'Distancia lateral restada de la línea',
		clause: () => 'usted restó la distancia lateral de la línea sin más',
		why: ({ right, value }) => `Los lados de un triángulo no se suman en fila. La línea baja ${right}, no ${value}.`,
		rule: 'A un lado, la línea queda tensa a √(línea² − distancia lateral²) bajo el anclaje.',
		hint: 'Eleve al cuadrado la línea y la distancia lateral. Reste y saque la raíz.'
	},
	'offset-for-swing-drop': {
		label: 'Distancia lateral en lugar de la bajada del péndulo',
		clause: () => 'usted tomó la distancia lateral como bajada del péndulo',
		why: ({ right }) => `La distancia lateral va de lado. La bajada del péndulo es de ${right}.`,
		rule: 'La bajada del péndulo es la línea menos la profundidad a la que queda tensa.',
		hint: '¿A qué profundidad está la argolla D con la línea tensa, y al final del péndulo?'
	},
	'average-for-peak': {
		label: 'Fuerza promedio en lugar de la máxima',
		clause: ({ value }) => `usted usó la fuerza promedio, ${value}, no la máxima`,
		why: ({ right }) => `El tirón sube más que su promedio. El cuerpo y el anclaje reciben el pico, ${right}.`,
		rule: 'Compare con la fuerza máxima de detención de la etiqueta.',
		hint: 'Busque en la etiqueta la fuerza máxima.'
	},
	'dry-for-conditioned': {
		label: 'Fuerza en seco en lugar de mojado o congelado',
		clause: ({ value }) => `usted tomó la fuerza de un absorbedor seco, ${value}`,
		why: ({ right }) => `Este está mojado o congelado y tira más: hasta ${right}.`,
		rule: 'Mojado o congelado, use la fuerza que la etiqueta da para ese caso.',
		hint: '¿Qué dice la historia sobre el tiempo?'
	},
	'strongest-capacity': {
		label: 'La pieza más fuerte en lugar de la más débil',
		clause: ({ value }) => `usted tomó ${value}, lo que soporta la pieza más fuerte`,
		why: ({ right }) => `La pieza más débil decide. Soporta ${right}.`,
		rule: 'La capacidad del conjunto es la menor de sus piezas.',
		hint: 'Compare la capacidad en cada etiqueta.'
	},
	/* Signos y orden. */
	'heights-wrong-way': {
		label: 'Alturas restadas al revés',
		clause: () => 'usted restó las dos alturas al revés',
		why: ({ right, value }) => `La caída libre es aquí de ${right}, no de ${value}. Un anclaje alto acorta la caída; uno bajo la alarga.`,
		rule: 'El desnivel es la altura del anclaje menos la de la argolla D. Réstelo de la línea.',
		hint: '¿Está el anclaje por encima de la argolla D, o por debajo?'
	},
	'anchorage-height-added': {
		label: 'Altura del anclaje con el signo cambiado',
		clause: () => 'usted sumó la altura del anclaje, y esa se resta',
		why: () => 'Un anclaje más alto queda más por encima de la argolla D. En su suma queda más por debajo.',
		rule: 'El desnivel es la altura del anclaje menos la de la argolla D. Se resta de la línea.',
		hint: 'Suba el anclaje en su mente. ¿Qué debe pasar con la caída libre?'
	},
	/* Faltan términos. */
	'heights-left-out': {
		label: 'Faltan las dos alturas',
		clause: () => 'en su caída libre faltan las alturas del anclaje y de la argolla D',
		why: ({ right, value }) => `La caída empieza en la argolla D, no en el anclaje. Es de ${right}, no de ${value}.`,
		rule: 'La caída libre es lo que baja la línea menos el desnivel del anclaje sobre la argolla D.',
		hint: '¿Dónde está la argolla D cuando empieza la caída?'
	},
	'd-ring-left-out': {
		label: 'Falta la altura de la argolla D',
		clause: () => 'en su número falta la altura de la argolla D',
		why: ({ name, term }) => `La caída de ${name} empieza en la argolla D, ${term} sobre la superficie. No empieza en las suelas.`,
		rule: 'El desnivel es la altura del anclaje menos la de la argolla D.',
		hint: '¿Dónde se une la cuerda al arnés?'
	},
	'standing-place-ignored': {
		label: 'No se vio el lugar donde está de pie',
		clause: ({ name }) => `usted puso a ${name} de pie en la propia superficie de trabajo`,
		why: ({ name, term }) => `Entre las suelas de ${name} y ese nivel hay ${term}. La argolla D va con ellas.`,
		rule: 'Sume la altura del lugar de pie a la de la argolla D.',
		hint: '¿Qué hay bajo las suelas?'
	},
	'connector-left-out': {
		label: 'Falta el conector de anclaje',
		clause: ({ term }) => `faltan los ${term} del conector de anclaje`,
		why: () => 'La cuerda cuelga del conector. Su largo cuenta en cada número a lo largo de la línea.',
		rule: 'Cuente el conector como parte de la línea, una vez.',
		hint: '¿Qué une la cuerda a la estructura?'
	},
	'elongation-left-out': {
		label: 'Falta el alargamiento',
		clause: ({ term }) => `los ${term} del absorbedor no están en su cinta`,
		why: ({ name, term }) => `El absorbedor frena a ${name} al abrirse. Eso toma hasta ${term}.`,
		rule: 'Sume el mayor alargamiento de la etiqueta.',
		hint: '¿Qué hace el absorbedor mientras frena la caída?'
	},
	'margin-left-out': {
		label: 'Falta el margen',
		clause: ({ term }) => `el margen de ${term} no está en su cinta`,
		why: ({ name }) => `Sin margen, las suelas de ${name} paran justo en lo primero que hay debajo. No queda nada para un error.`,
		rule: 'Deje libre el margen bajo las suelas.',
		hint: '¿Cuánto aire debe quedar al final?'
	},
	'body-left-out': {
		label: 'Falta el cuerpo',
		clause: () => 'el cuerpo por debajo de la argolla D no está en su cinta',
		why: ({ name, term }) => `${name} cuelga de la argolla D. Las suelas están ${term} más abajo, y llegan primero.`,
		rule: 'Desde el anclaje o la argolla D, sume el cuerpo hasta las suelas.',
		hint: '¿Qué parte del cuerpo llegaría primero al suelo?'
	},
	'stretch-left-out': {
		label: 'Faltan deslizamiento y estiramiento',
		clause: ({ term }) => `los ${term} que cede el arnés no están en su cinta`,
		why: ({ name }) => `La argolla D se desliza y la correa se estira. El cuerpo de ${name} baja esa misma medida.`,
		rule: 'Sume el deslizamiento de la argolla D y el estiramiento del arnés.',
		hint: '¿Qué hace el arnés cuando llega el tirón?'
	},
	'swing-drop-left-out': {
		label: 'Falta la bajada del péndulo',
		clause: ({ term }) => `la bajada del péndulo, ${term}, no está en su cinta`,
		why: ({ name }) => `${name} se balancea hasta quedar bajo el anclaje. El punto más bajo queda más hondo que el punto donde la línea se tensa.`,
		rule: 'A un lado, sume la bajada del péndulo.',
		hint: '¿Dónde tiene el péndulo su punto más bajo?'
	},
	'straightening-left-out': {
		label: 'Falta que el cuerpo se endereza',
		clause: ({ name }) => `lo que se enderezan las piernas de ${name} no está en su cinta`,
		why: ({ name, term }) => `${name} está de rodillas al inicio y cuelga a lo largo al final. Las suelas bajan ${term} más.`,
		rule: 'Desde la superficie, sume lo que bajan las piernas al enderezarse.',
		hint: 'Compare la altura de la argolla D de rodillas y de pie.'
	},
	'obstacle-overlooked': {
		label: 'Obstáculo no visto',
		clause: ({ thing }) => `usted midió más allá ${de(thing)}`,
		why: ({ name, thing, term }) => `${name} llegaría primero ${a(thing)}. Eso quita ${term} al espacio de abajo.`,
		rule: 'Mida hasta lo primero que el cuerpo puede tocar.',
		hint: '¿Qué hay en el camino, antes del nivel inferior?'
	},
	'sometimes-obstacle-ignored': {
		label: 'No se contó algo que puede llegar',
		clause: ({ thing }) => `usted dejó fuera ${thing}, porque ahora no hay nada allí`,
		why: ({ term }) => `Eso puede estar allí en una caída. El espacio de abajo es entonces ${term} menor.`,
		rule: 'Cuente lo que puede haber debajo en algún momento, a su mayor altura.',
		hint: '¿Qué puede llegar según la historia, y cuándo?'
	},
	'body-mass-alone': {
		label: 'Solo la masa del cuerpo',
		clause: ({ name }) => `usted contó solo el cuerpo de ${name}`,
		why: ({ term }) => `La ropa, el arnés y las herramientas que se llevan también caen. Suman ${term}.`,
		rule: 'Sume todo lo que cuelga de la persona: cuerpo, ropa, equipo, herramientas.',
		hint: '¿Qué más cuelga del arnés?'
	},
	'tools-left-out': {
		label: 'Faltan las herramientas',
		clause: ({ term }) => `faltan las herramientas que se llevan: ${term}`,
		why: ({ name }) => `Las herramientas del cinto caen con ${name}. El absorbedor también las frena.`,
		rule: 'Sume las herramientas que cuelgan de la persona.',
		hint: '¿Qué cuelga del cinto?'
	},
	'equipment-left-out': {
		label: 'Faltan el arnés y el equipo',
		clause: ({ term }) => `faltan el arnés y el equipo: ${term}`,
		why: ({ name }) => `El arnés, el casco y la cuerda caen con ${name}. El absorbedor también los frena.`,
		rule: 'Sume el arnés y el equipo puesto.',
		hint: '¿Qué lleva puesto la persona?'
	},
	'weight-ignored': {
		label: 'Falta el peso al frenar',
		clause: ({ name }) => `al frenar falta el peso de ${name}`,
		why: ({ right, value }) => `El peso sigue tirando mientras el absorbedor se abre. Se alarga ${right}, no ${value}.`,
		rule: 'Reste el peso de la fuerza promedio y luego divida.',
		hint: '¿Qué tira hacia abajo mientras el absorbedor tira hacia arriba?'
	},
	/* Términos dobles o de más. */
	'connector-twice': {
		label: 'Conector de anclaje contado dos veces',
		clause: ({ term }) => `los ${term} del conector de anclaje están dos veces en su número`,
		why: () => 'Cuelga una sola vez. Contar de más puede llevar a rechazar un amarre que cumple.',
		rule: 'Cuente el conector como parte de la línea, una vez.',
		hint: 'Siga la línea desde la estructura hasta la argolla D. ¿Por dónde pasa?'
	},
	'stretch-twice': {
		label: 'Deslizamiento y estiramiento contados dos veces',
		clause: ({ term }) => `los ${term} del arnés están dos veces en su cinta`,
		why: () => 'El arnés cede eso una sola vez. Contar de más puede llevar a rechazar un amarre que cumple.',
		rule: 'Sume el deslizamiento y el estiramiento una vez.',
		hint: 'Revise sus términos. ¿Hay uno dos veces?'
	},
	'elongation-in-free-fall': {
		label: 'Alargamiento contado en la caída libre',
		clause: ({ term }) => `usted contó los ${term} del absorbedor en la caída libre`,
		why: () => 'La caída libre termina cuando la cuerda queda tensa. Solo entonces el absorbedor empieza a abrirse.',
		rule: 'La caída libre termina donde empieza el tirón. El alargamiento viene después.',
		hint: '¿Qué ha hecho el absorbedor cuando la cuerda queda tensa?'
	},
	'slack-added': {
		label: 'Holgura sumada',
		clause: ({ term }) => `usted sumó ${term} de holgura a la caída libre`,
		why: () => 'La holgura es parte del largo de la cuerda. Ahora está dos veces en su número.',
		rule: 'El largo de la cuerda y las alturas ya incluyen la holgura.',
		hint: '¿De dónde viene la holgura?'
	},
	'body-from-surface': {
		label: 'Cuerpo contado desde la superficie',
		clause: ({ from }) => `usted sumó el cuerpo, pero desde ${from} hacia abajo ya está en la suma`,
		why: ({ name }) => `Las suelas de ${name} empiezan en ese nivel. Bajan lo mismo que la argolla D.`,
		rule: 'Desde la superficie de trabajo, no cuente el cuerpo.',
		hint: '¿Dónde están las suelas antes de la caída?'
	},
	'tethered-counted': {
		label: 'Herramientas atadas contadas',
		clause: ({ term }) => `usted contó ${term} de herramientas que cuelgan de la estructura`,
		why: ({ name }) => `No caen con ${name}. El arnés no las sostiene.`,
		rule: 'Deje fuera las herramientas atadas a la estructura.',
		hint: '¿Dónde está atada cada herramienta?'
	},
	'off-path-counted': {
		label: 'Algo fuera del camino contado',
		clause: ({ thing }) => `usted midió hasta ${thing}`,
		why: ({ name, thing }) => `El cuerpo de ${name} no pasa sobre ${thing}. Contar de menos puede llevar a rechazar un amarre que cumple.`,
		rule: 'Cuente lo que el cuerpo puede tocar en su camino, con el péndulo.',
		hint: '¿Qué ancho tiene el camino de la caída?'
	},
	'label-range-overlooked': {
		label: 'Etiqueta usada fuera de su rango',
		clause: () => 'usted dio un número, aunque la etiqueta no vale para este caso',
		why: ({ name }) => `Las cifras solo valen dentro del rango de masa y de caída libre de la etiqueta. Para ${name} no hay ninguna.`,
		rule: 'Fuera de la etiqueta no se puede dar un espacio libre. No se amarre.',
		hint: 'Compare la masa y la caída libre con la etiqueta.'
	}
});
