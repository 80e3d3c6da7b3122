import type * as en from '../en/help.ts';

export const help: typeof en.help = {
	open: 'Ayuda',
	of: ({ n }) => `Ayuda con la pregunta ${String(n)}`,
	levels: { hint: 'Dónde mirar', step: 'La regla', worked: 'El cálculo' },
	showHint: 'Mostrar dónde mirar',
	showStep: 'Mostrar la regla',
	showWorked: 'Mostrar el cálculo',
	wait: 'Lea esto primero. En unos segundos se abre más ayuda.',
	counts: 'Un problema con ayuda no cuenta para la prueba. Vuelve con otros números.',
	counted: 'Aquí se usó ayuda. Este problema no cuenta.',
	symbols: 'Lo que significan las letras',
	hints: {
		freeFall: 'Lea el largo de la cuerda y las dos alturas. ¿Dónde está el anclaje: más alto que la argolla D, a su nivel o más bajo? De eso sale la caída libre.',
		swingDrop: 'Lea la distancia lateral. ¿Cuánto más bajo queda el cuerpo cuando cuelga debajo del anclaje?',
		massAttached: 'Sume lo que cae con el cuerpo. Lo que cuelga de la estructura no.',
		lowestCapacity: 'Lea la capacidad en cada etiqueta. El conjunto vale lo que su parte más débil.',
		arrestForce: 'Busque en la etiqueta del absorbedor la mayor fuerza. ¿El equipo está seco, mojado o congelado?',
		expectedElongation: 'El absorbedor debe tomar toda la caída. Busque la fuerza promedio, la masa y la caída libre.',
		bodyWeights: 'Halle primero la mayor fuerza. ¿Cuánto pesa el cuerpo con todo lo que lleva?',
		reachDistance: 'Mire el trecho de la argolla D al anclaje: hacia el lado y hacia arriba o abajo. La cuerda debe cubrirlo.'
	},
	required: {
		anchorage: 'Ponga el cero de su cinta en el anclaje. ¿Qué cuelga debajo cuando la caída terminó? No olvide el margen.',
		connector: 'Ponga el cero de su cinta en el extremo del conector. ¿Qué cuelga debajo cuando la caída terminó? No olvide el margen.',
		surface: 'Ponga el cero de su cinta en la superficie de trabajo. ¿Cuánto bajan las suelas desde ahí? No olvide el margen.',
		'd-ring': 'Ponga el cero de su cinta en la argolla D antes de la caída. ¿Cuánto baja, y qué parte del cuerpo queda debajo? No olvide el margen.'
	},
	available: {
		anchorage: 'Ponga el cero de su cinta en el anclaje. ¿Con qué toparía primero el cuerpo en todo su camino? ¿Puede haber algo ahí a veces?',
		connector: 'Ponga el cero de su cinta en el extremo del conector. ¿Con qué toparía primero el cuerpo en todo su camino? ¿Puede haber algo ahí a veces?',
		surface: 'Ponga el cero de su cinta en la superficie de trabajo. ¿Con qué toparía primero el cuerpo en todo su camino? ¿Puede haber algo ahí a veces?',
		'd-ring': 'Ponga el cero de su cinta en la argolla D antes de la caída. ¿Con qué toparía primero el cuerpo en todo su camino? ¿Puede haber algo ahí a veces?'
	},
	decision: 'Compare cada número con su límite. ¿Hay uno que falla, o uno que nadie puede demostrar?',
	decisionRule: 'Usted se amarra solo si se cumple cada punto revisado. Uno que falla, o uno que no se sabe, basta para no hacerlo.',
	picture: 'Recorra la lista de todas las partes, una tras otra. Lea lo que se ve de cada una.'
};
