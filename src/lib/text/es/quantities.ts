import type * as en from '../en/quantities.ts';

export const quantities: typeof en.quantities = {
	rise: {
		name: 'Desnivel del anclaje sobre la argolla D',
		short: 'Desnivel',
		the: 'el desnivel',
		meaning: 'Lo que el anclaje está por encima de la argolla D. Es negativo si está por debajo.'
	},
	lineLength: {
		name: 'Línea: cuerda y conector de anclaje',
		short: 'Línea',
		the: 'la línea',
		meaning: 'La cuerda y el conector como una sola línea.'
	},
	tautDepth: {
		name: 'Profundidad a la que la línea queda tensa',
		short: 'Tensa a',
		the: 'la profundidad a la que la línea queda tensa',
		meaning: 'Lo que la argolla D está bajo el anclaje cuando la línea queda tensa.'
	},
	freeFall: {
		name: 'Caída libre',
		short: 'Caída libre',
		the: 'la caída libre',
		meaning: 'Lo que cae la argolla D hasta que la cuerda queda tensa.'
	},
	swingDrop: {
		name: 'Bajada del péndulo',
		short: 'Bajada del péndulo',
		the: 'la bajada del péndulo',
		meaning: 'Lo que el punto más bajo del péndulo está más hondo que el punto donde la línea queda tensa.'
	},
	stretchOut: {
		name: 'Deslizamiento y estiramiento',
		short: 'Deslizamiento y estiramiento',
		the: 'el deslizamiento y el estiramiento',
		meaning: 'Lo que cede el arnés: la argolla D se desliza y la correa se estira.'
	},
	extraStretch: {
		name: 'Estiramiento por encima de la cabeza',
		short: 'Estiramiento sobre la cabeza',
		the: 'el estiramiento por encima de la cabeza',
		meaning: 'La parte del deslizamiento y del estiramiento que sube la argolla D sobre la cabeza.'
	},
	headAboveDRing: {
		name: 'Cabeza sobre la argolla D',
		short: 'Cabeza sobre argolla D',
		the: 'la altura de la cabeza sobre la argolla D',
		meaning: 'La estatura menos la altura de la argolla D.'
	},
	straightening: {
		name: 'Enderezamiento del cuerpo',
		short: 'Enderezamiento',
		the: 'el enderezamiento del cuerpo',
		meaning: 'Lo que bajan las suelas cuando las piernas cuelgan a lo largo tras estar de rodillas.'
	},
	requiredClearance: {
		name: 'Espacio libre requerido',
		short: 'Hace falta',
		the: 'el espacio libre requerido',
		meaning: 'El espacio de abajo que pide todo el frenado, con el margen.'
	},
	highestBelow: {
		name: 'Lo más alto que hay debajo',
		short: 'Lo más alto debajo',
		the: 'lo más alto que hay debajo',
		meaning: 'La parte alta de lo primero que el cuerpo puede tocar, sobre el nivel inferior.'
	},
	availableClearance: {
		name: 'Espacio libre disponible',
		short: 'Hay',
		the: 'el espacio libre disponible',
		meaning: 'El espacio que hay hasta lo primero que el cuerpo puede tocar.'
	},
	spare: {
		name: 'Sobrante',
		short: 'Sobrante',
		the: 'el sobrante',
		meaning: 'Espacio libre disponible menos espacio libre requerido. Es negativo si no alcanza.'
	},
	reachDistance: {
		name: 'Distancia de la argolla D al anclaje',
		short: 'Distancia',
		the: 'la distancia de la argolla D al anclaje',
		meaning: 'El camino recto de la argolla D al anclaje.'
	},
	reachSpare: {
		name: 'Alcance sobrante',
		short: 'Alcance sobrante',
		the: 'el alcance sobrante',
		meaning: 'La línea menos la distancia al anclaje. Es negativo si la línea no llega.'
	},
	massAttached: {
		name: 'Masa en el arnés',
		short: 'Masa',
		the: 'la masa en el arnés',
		meaning: 'Todo lo que cae y cuelga del arnés: cuerpo, ropa, equipo, herramientas.'
	},
	lowestCapacity: {
		name: 'Menor capacidad',
		short: 'Capacidad',
		the: 'la menor capacidad',
		meaning: 'Lo que soporta la pieza más débil. Ella decide por el conjunto.'
	},
	capacitySpare: {
		name: 'Capacidad sobrante',
		short: 'Capacidad sobrante',
		the: 'la capacidad sobrante',
		meaning: 'La menor capacidad menos la masa en el arnés.'
	},
	totalFall: {
		name: 'Caída total de la argolla D',
		short: 'Caída total',
		the: 'la caída total',
		meaning: 'Caída libre, alargamiento, deslizamiento y estiramiento juntos.'
	},
	expectedElongation: {
		name: 'Alargamiento esperado',
		short: 'Alargamiento esperado',
		the: 'el alargamiento esperado',
		meaning: 'Lo que es probable que se alargue el absorbedor. Explica, y nunca acorta un espacio libre.'
	},
	arrestForce: {
		name: 'Fuerza de detención para planificar',
		short: 'Fuerza',
		the: 'la fuerza de detención',
		meaning: 'El mayor tirón que da la etiqueta para este caso.'
	},
	bodyWeights: {
		name: 'Fuerza de detención en pesos del cuerpo',
		short: 'Pesos del cuerpo',
		the: 'la fuerza en pesos del cuerpo',
		meaning: 'La fuerza de detención entre el peso de lo que cuelga del arnés.'
	},
	fallSpeed: {
		name: 'Velocidad cuando la línea queda tensa',
		short: 'Velocidad',
		the: 'la velocidad cuando la línea queda tensa',
		meaning: 'Lo rápido que cae el cuerpo al final de la caída libre.'
	},
	fallTime: {
		name: 'Tiempo de la caída libre',
		short: 'Tiempo',
		the: 'el tiempo de la caída libre',
		meaning: 'Desde el primer instante hasta que la línea queda tensa.'
	},
	swingSpeed: {
		name: 'Velocidad en lo más bajo del péndulo',
		short: 'Velocidad del péndulo',
		the: 'la velocidad del péndulo',
		meaning: 'Lo rápido que pasa el cuerpo bajo el anclaje, solo por la bajada del péndulo.'
	},
	tightSpeed: {
		name: 'Velocidad a lo largo de la línea cuando queda tensa',
		short: 'Velocidad en la línea',
		the: 'la velocidad a lo largo de la línea',
		meaning: 'La parte de la velocidad que frena el absorbedor.'
	},
	sidewaysSpeed: {
		name: 'Velocidad a través de la línea cuando queda tensa',
		short: 'Velocidad de lado',
		the: 'la velocidad a través de la línea',
		meaning: 'La parte de la velocidad que inicia el péndulo.'
	},
	speedAtObstacle: {
		name: 'Velocidad de lado ante algo en el péndulo',
		short: 'Velocidad al tocar',
		the: 'la velocidad de lado al tocar',
		meaning: 'Lo rápido que el péndulo puede llevar el cuerpo contra algo, como máximo.'
	},
	stopTime: {
		name: 'Tiempo del frenado',
		short: 'Frenado',
		the: 'el tiempo del frenado',
		meaning: 'Desde el primer tirón hasta que el cuerpo queda en reposo, con la fuerza promedio.'
	},
	hangingDepth: {
		name: 'Profundidad de las suelas con el cuerpo colgado',
		short: 'Suelas a',
		the: 'la profundidad a la que cuelgan las suelas',
		meaning: 'Desde el anclaje hasta las suelas tras el frenado, sin el margen.'
	},
	fallFactor: {
		name: 'Factor de caída',
		short: 'Factor de caída',
		the: 'el factor de caída',
		meaning: 'La caída libre entre el largo de la línea.'
	},
	largestMass: {
		name: 'Mayor masa para este alargamiento',
		short: 'Mayor masa',
		the: 'la mayor masa',
		meaning: 'La masa que la fuerza promedio frena dentro del alargamiento de la etiqueta.'
	},
	largestFreeFall: {
		name: 'Mayor caída libre para este alargamiento',
		short: 'Mayor caída libre',
		the: 'la mayor caída libre',
		meaning: 'La caída libre que la fuerza promedio frena dentro del alargamiento de la etiqueta.'
	}
};
