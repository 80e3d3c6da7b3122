import type { board as english } from '../en/board.ts';
import { pluralOf } from '../plural.ts';

const plural = pluralOf('es');

export const board: typeof english = {
	title: 'Pizarra',
	lead: 'Elija un sitio. El grupo lo ve en grande, con números nuevos.',
	sites: 'Sitios',
	noSites: 'Aún no hay ningún sitio que mostrar.',
	otherSite: 'Otro sitio',
	worker: 'la persona',
	noScript: 'La pizarra necesita scripts. En este navegador están apagados.',

	stops: { problem: 'Sitio', class: 'El grupo dice', answer: 'Número correcto', fall: 'La caída' },
	stopOf: ({ n, of }) => `${String(n)} de ${String(of)}`,
	picture: 'Dibujo',
	words: 'Palabras',
	whichAsk: 'Pregunta',
	call: 'Un número que dice el grupo',
	callHint: 'Entrar lo añade. Escape vuelve a las teclas.',
	callButton: 'Añadir',
	calledHeading: 'Lo que se dijo',
	noneCalled: 'Aún nada.',
	voices: ({ count }) => plural(count, { one: '1 voz', other: `${String(count)} voces` }),
	more: ({ value }) => `Una voz más para ${value}`,
	fewer: ({ value }) => `Una voz menos para ${value}`,
	full: 'La lista está llena. Quite uno primero.',
	stepOf: ({ n, of }) => `Paso ${String(n)} de ${String(of)}`,
	noWorking: 'Esta pregunta no tiene pasos.',
	calledBy: ({ value, count }) => plural(count, { one: `${value}, lo dijo 1`, other: `${value}, lo dijeron ${String(count)}` }),
	playOf: 'Qué caída se ve',
	noFall: 'Esta caída no se puede mostrar. Nada dice en qué distancia se detendría.',
	siteOnly: 'Solo este sitio',
	rightDecision: ({ decision }) => `Lo correcto es: ${decision}.`,

	keysOn: 'Teclas activas',
	keysOff: 'Teclas apagadas',
	deeds: { next: 'Paso siguiente', back: 'Paso atrás', problem: 'Otro problema', play: 'Ver', full: 'Pantalla completa' },
	keyNames: { next: '→', back: '←', problem: 'N', play: 'P', full: 'F' },
	leaveFull: 'Salir de pantalla completa',

	enter: 'Anotar un plan',
	change: 'Cambiar el plan',
	show: 'Mostrar el plan',
	drop: 'Volver al plan dado',
	ownPlan: 'Plan anotado aquí',
	watermark: 'formación',
	forTraining: 'Para formación. No es un plan de obra.',
	notPrinted: 'El dibujo no se imprime. Un plan anotado para formación no es un plan de obra.',
	enterHeading: 'Anotar un plan',
	enterHint: 'Cambie cualquier número. El dibujo lo sigue al salir del campo.',
	groups: { drawing: 'En el dibujo', gear: 'En el equipo', person: 'Persona y regla', facts: 'Lo que se sabe' },
	wrongHeading: 'El dibujo espera. Mire los campos marcados.',
	notWhole: 'Estos números no van juntos.',
	range: ({ from, to }) => `Eso no puede ser. Escriba un número de ${from} a ${to}.`,
	clashes: {
		'above-head': 'La argolla D estaría más alta que la cabeza. Compárela con la estatura.',
		'now-missing': 'Escriba a qué altura está la argolla D en esta postura.',
		'now-above': 'Una postura solo puede bajar la argolla D. Escriba un número menor.',
		'mass-range': 'La masa menor es más que la mayor. Revise las dos.',
		other: 'Esto no va con el resto del plan. Revíselo.'
	},
	facts: {
		rescue: { name: 'Rescate', states: { arranged: 'previsto', 'not-arranged': 'no previsto', unknown: 'no se sabe' } },
		connectors: { name: 'Conectores hechos el uno para el otro', states: { yes: 'sí', no: 'no', unknown: 'no se sabe' } },
		posture: { name: 'Postura', states: { standing: 'de pie', kneeling: 'de rodillas' } },
		condition: { name: 'Absorbedor', states: { dry: 'seco', 'wet-or-frozen': 'mojado o helado' } },
		persons: { name: 'Personas en este anclaje', states: { '1': '1', '2': '2', '3': '3', '4': '4' } },
		edge: { name: 'La línea pasa por un borde', states: { no: 'no', yes: 'sí' } },
		direction: { name: 'Hacia un lado', states: { 'along-edge': 'a lo largo del borde', 'away-from-edge': 'lejos del borde' } },
		obstacle: { name: 'Cosa de abajo', states: { there: 'está allí', 'can-come': 'puede llegar', none: 'no está' } }
	}
};
