import type * as en from '../en/checks.ts';

const por = (amount: string | undefined): string => (amount === undefined ? '' : ` por ${amount}`);
const sobran = (amount: string | undefined): string => (amount === undefined ? '' : ` Sobran ${amount}.`);

export const ownChecks: typeof en.ownChecks = {
	reach: {
		name: 'Alcance: ¿se puede montar?',
		short: 'alcance',
		held: ({ amount }) => `La línea llega a la argolla D.${sobran(amount)}`,
		failed: ({ amount }) => `La línea no llega${por(amount)}. No se puede montar.`,
		unknown: 'No se sabe si la línea llega a la argolla D.'
	},
	'too-heavy': {
		name: 'Masa frente a la menor capacidad',
		short: 'demasiada masa para el equipo',
		held: ({ amount }) => `La masa está dentro de la menor capacidad.${sobran(amount)}`,
		failed: ({ amount }) => `La masa pasa de la menor capacidad${por(amount)}.`,
		unknown: 'No se conoce la masa o alguna capacidad.'
	},
	'too-light': {
		name: 'Masa frente a la mínima de la etiqueta',
		short: 'muy poca masa para el absorbedor',
		held: ({ amount }) => `La masa pasa de la mínima de la etiqueta.${sobran(amount)}`,
		failed: ({ amount }) => `La masa no llega a la mínima de la etiqueta${por(amount)}. El tirón puede ser muy fuerte.`,
		unknown: 'No se conoce la masa.'
	},
	'label-free-fall': {
		name: 'Caída libre frente a la etiqueta',
		short: 'caída libre mayor que la etiqueta',
		held: ({ amount }) => `La caída libre está dentro de la etiqueta.${sobran(amount)}`,
		failed: ({ amount }) => `La caída libre pasa de la etiqueta${por(amount)}. Sus cifras no valen.`,
		unknown: 'No se conoce la caída libre.'
	},
	clearance: {
		name: 'Espacio libre: requerido frente a disponible',
		short: 'espacio libre',
		held: ({ amount }) => `El espacio libre alcanza.${sobran(amount)}`,
		failed: ({ amount }) => `El espacio libre no alcanza${por(amount)}.`,
		unknown: 'No se conoce el espacio libre requerido o el espacio libre disponible.'
	},
	connectors: {
		name: 'Conectores hechos para ir juntos',
		short: 'conectores',
		held: () => 'Todos los conectores que se tocan están hechos para ir juntos.',
		failed: () => 'Se tocan dos conectores que no están hechos para ir juntos.',
		unknown: 'No se sabe si los conectores pueden ir juntos.'
	},
	rescue: {
		name: 'Rescate previsto',
		short: 'rescate',
		held: () => 'Hay un rescate rápido previsto.',
		failed: () => 'No hay rescate previsto.',
		unknown: 'No se sabe si hay un rescate previsto.'
	}
};

export const ruleChecks: typeof en.ruleChecks = {
	reach: {
		name: 'Alcance según la regla de aquí',
		short: 'alcance',
		held: ({ amount }) => `El alcance cumple.${sobran(amount)}`,
		failed: ({ amount }) => `El alcance no cumple${por(amount)}.`,
		unknown: 'No se conoce el alcance.'
	},
	capacity: {
		name: 'Masa según la regla de aquí',
		short: 'masa fuera de la regla',
		held: ({ amount }) => `La masa está dentro de la regla.${sobran(amount)}`,
		failed: ({ amount }) => `La masa pasa de la regla${por(amount)}.`,
		unknown: 'No se sabe si la regla admite esta masa.'
	},
	'free-fall': {
		name: 'Caída libre según la regla de aquí',
		short: 'caída libre',
		held: ({ amount }) => `La caída libre está dentro de la regla.${sobran(amount)}`,
		failed: ({ amount }) => `La caída libre pasa del límite${por(amount)}.`,
		unknown: 'No se sabe si la caída libre está dentro de la regla.'
	},
	clearance: {
		name: 'Sin contacto con un nivel inferior',
		short: 'contacto con un nivel inferior',
		held: ({ amount }) => `El cuerpo no toca nada abajo.${sobran(amount)}`,
		failed: ({ amount }) => `El cuerpo tocaría lo que hay debajo. No alcanza${por(amount)}.`,
		unknown: 'No se sabe si el cuerpo tocaría lo que hay debajo.'
	},
	force: {
		name: 'Fuerza de detención según la regla de aquí',
		short: 'fuerza de detención',
		held: ({ amount }) => `La fuerza de detención está dentro de la regla.${sobran(amount)}`,
		failed: ({ amount }) => `La fuerza de detención pasa del límite${por(amount)}.`,
		unknown: 'No se conoce la fuerza máxima de detención.'
	},
	deceleration: {
		name: 'Distancia de desaceleración según la regla de aquí',
		short: 'distancia de desaceleración',
		held: ({ amount }) => `La distancia declarada está dentro de la regla.${sobran(amount)}`,
		failed: ({ amount }) => `La distancia declarada pasa del límite${por(amount)}.`,
		unknown: 'Hace falta lo que declara el fabricante para esta masa y esta caída.'
	},
	'anchorage-strength': {
		name: 'Resistencia del anclaje',
		short: 'resistencia del anclaje',
		held: ({ amount }) => `El anclaje resiste lo que debe.${sobran(amount)}`,
		failed: ({ amount }) => `El anclaje resiste muy poco. No alcanza${por(amount)}.`,
		unknown: 'No se sabe si el anclaje resiste lo que debe.'
	},
	'anchorage-height': {
		name: 'Altura del anclaje',
		short: 'altura del anclaje',
		held: ({ amount }) => `El anclaje está a la altura debida.${sobran(amount)}`,
		failed: ({ amount }) => `El anclaje está muy bajo. No alcanza${por(amount)}.`,
		unknown: 'No se sabe si el anclaje está a la altura debida.'
	},
	'lanyard-length': {
		name: 'Largo de la cuerda',
		short: 'largo de la cuerda',
		held: ({ amount }) => `La cuerda está dentro de la regla.${sobran(amount)}`,
		failed: ({ amount }) => `La cuerda es muy larga. Se pasa${por(amount)}.`,
		unknown: 'No se conoce el largo de la cuerda.'
	},
	connectors: {
		name: 'Conectores según la regla de aquí',
		short: 'conectores',
		held: () => 'Todos los conectores que se tocan están hechos para ir juntos.',
		failed: () => 'Se tocan dos conectores que no están hechos para ir juntos.',
		unknown: 'No se sabe si los conectores pueden ir juntos.'
	},
	swing: {
		name: 'Distancia lateral según la regla de aquí',
		short: 'distancia lateral',
		held: ({ amount }) => `La distancia lateral está dentro de la regla.${sobran(amount)}`,
		failed: ({ amount }) => `La distancia lateral pasa del límite${por(amount)}. El péndulo es muy ancho.`,
		unknown: 'No se conoce la distancia lateral.'
	},
	edge: {
		name: 'La línea y el borde',
		short: 'línea sobre un borde',
		held: () => 'La línea no toca ningún borde.',
		failed: () => 'La línea toca un borde que puede cortarla.',
		unknown: 'No se sabe si la línea toca un borde.'
	},
	rescue: {
		name: 'Rescate según la regla de aquí',
		short: 'rescate',
		held: () => 'Hay un rescate rápido previsto.',
		failed: () => 'No hay rescate previsto.',
		unknown: 'No se sabe si hay un rescate previsto.'
	}
};

export const status: typeof en.status = { held: 'Cumple', failed: 'No cumple', unknown: 'No se sabe' };

export const systems: typeof en.systems = {
	'self-retracting-device': 'dispositivo retráctil',
	'horizontal-lifeline': 'línea de vida horizontal',
	'vertical-lifeline': 'línea de vida vertical',
	'travel-restraint': 'restricción de movimiento',
	'over-edge': 'línea sobre un borde',
	'powered-platform': 'plataforma motorizada',
	'climbing-rail': 'riel de ascenso',
	'rope-access': 'acceso por cuerdas',
	positioning: 'posicionamiento',
	'yielding-anchorage': 'anclaje que cede'
};

export const refusals: typeof en.refusals = {
	'line-over-edge': () => 'La línea pasaría sobre un borde. Esos planes piden equipo hecho para bordes y no se calculan aquí.',
	'away-from-edge': () => 'La persona está lejos del borde, y la línea pasaría sobre él. Esos planes no se calculan aquí.',
	'system-not-built': ({ what }) => `Este tipo de sistema aún no está en el programa: ${what}.`,
	'system-outside-scope': ({ what }) => `Este tipo de sistema no es parte de este programa: ${what}.`,
	'no-such-table': ({ what }) => `No hay ninguna tabla con este nombre: ${what}.`
};

export const absences: typeof en.absences = {
	missing: ({ what }) => `No se conoce: ${what}.`,
	'not-rigged': () => 'La línea no llega a la argolla D, y así no se puede montar nada.',
	'outside-label': () => 'No se puede dar con esta etiqueta: la masa o la caída libre está fuera de su rango.',
	'does-not-stop': () => 'La fuerza promedio es menor que el peso. Una caída así no se detiene.'
};
