import type * as en from '../en/steps.ts';

export const steps: typeof en.steps = {
	rise: 'La caída empieza en la argolla D, y desde allí cuenta la altura del anclaje.',
	lineLength: 'La cuerda cuelga del conector. Los dos juntos son la línea.',
	tautDepth: 'La línea va hacia un lado. En diagonal baja menos que su largo.',
	freeFall: 'La línea menos el desnivel es lo que se baja hasta que queda tensa.',
	swingDrop: 'El cuerpo se balancea hasta quedar bajo el anclaje, y allí cuelga toda la línea.',
	stretchOut: 'La argolla D se desliza y la correa se estira. El cuerpo baja las dos medidas.',
	extraStretch: 'La estatura completa ya cubre la argolla D hasta la cabeza. Solo se suma lo que pasa de allí.',
	headAboveDRing: 'La argolla D puede subir hasta la cabeza. Eso ya está en la estatura completa.',
	straightening: 'Las piernas estaban dobladas y cuelgan a lo largo al final. Las suelas bajan esa medida.',
	requiredClearance: 'Cada largo sigue al anterior. El margen va al final.',
	highestBelow: 'El cuerpo llega primero a lo más alto.',
	availableClearance: 'Lo que hay debajo quita su altura al espacio.',
	spare: 'Lo que hay, menos lo que hace falta. Por debajo de cero, no alcanza.',
	reachDistance: 'La cuerda debe llegar del anclaje a la argolla D para poder engancharse.',
	reachSpare: 'Una línea más corta que el camino no se puede montar.',
	massAttached: 'El absorbedor debe frenar todo lo que cuelga del arnés.',
	lowestCapacity: 'La pieza más débil falla primero, y por eso decide.',
	capacitySpare: 'La masa no debe pasar de lo que soporta la pieza más débil.',
	totalFall: 'Esto baja la argolla D en total.',
	expectedElongation: 'El trabajo de la fuerza toma la energía de la caída. El peso sigue actuando al frenar.',
	arrestForce: 'Planifique con la fuerza máxima: es la que puede herir o romper.',
	bodyWeights: 'Una fuerza se entiende mejor como tantas veces el propio peso.',
	fallSpeed: 'Cuanto más larga la caída libre, más rápido va el cuerpo cuando la línea queda tensa.',
	fallTime: 'Este es todo el tiempo que hay.',
	swingSpeed: 'El péndulo cambia bajada por velocidad, hacia un lado.',
	tightSpeed: 'La línea solo frena lo que va a lo largo de ella.',
	sidewaysSpeed: 'Lo que cruza la línea no se frena. Inicia el péndulo.',
	speedAtObstacle: 'Toda la bajada puede haberse vuelto velocidad hasta allí.',
	stopTime: 'El tirón menos el peso frena el cuerpo.',
	hangingDepth: 'Cada largo sigue al anterior, hasta las suelas.',
	fallFactor: 'Dice cuánto se cae por cada largo de línea.',
	largestMass: 'Una masa mayor pide más alargamiento del que da la etiqueta.',
	largestFreeFall: 'Una caída libre mayor pide más alargamiento del que da la etiqueta.'
};

export const freeFallSteps: typeof en.freeFallSteps = {
	above: 'No toda la cuerda es caída libre: el anclaje está por encima de la argolla D.',
	level: 'El anclaje y la argolla D están a la par, así que toda la línea es caída libre.',
	below: 'El anclaje está por debajo de la argolla D. La caída suma la bajada hasta él y la línea.',
	offset: 'La persona está a un lado, y la línea queda tensa antes de bajar todo su largo.'
};

export const requiredSteps: typeof en.requiredSteps = {
	anchorage: 'Desde el anclaje la cinta baja por la línea, el absorbedor y el cuerpo.',
	connector: 'Desde el conector la cinta baja por la cuerda, el absorbedor y el cuerpo.',
	surface: 'Las suelas empiezan en la superficie, y por eso el cuerpo no se suma.',
	'd-ring': 'Desde la argolla D la cinta baja por la caída y luego por el cuerpo que cuelga.'
};
