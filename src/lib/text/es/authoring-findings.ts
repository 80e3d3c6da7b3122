import type { FindingCode } from '#lib/scenario/index.ts';
import type { FindingWords } from '../parts-authoring.ts';

export const authoringFindings: Readonly<Record<FindingCode, FindingWords>> = {
	'seldom-drawn': {
		what: ({ share, which }) => `Solo ${share} de los sorteos dan un problema. Casi siempre: ${which}`,
		fix: () => 'Amplíe el rango que se nombra aquí, o afloje una regla.'
	},
	'many-tries': {
		what: ({ mean, most }) => `Un sorteo necesita ${mean} intentos en promedio, y hasta ${most}.`,
		fix: () => 'Amplíe el rango que se nombra aquí, o afloje una regla.'
	},
	'aim-not-met': {
		what: ({ which, why }) => `Ningún sorteo sale así: ${which}. ${why}`,
		fix: () => 'Quítelo, o amplíe los rangos hasta que pueda pasar.'
	},
	'check-always-fails': {
		what: ({ which }) => `Esta revisión falla en cada sorteo: ${which}.`,
		fix: () => 'Cambie la cifra o el rango que se nombra aquí, para que pueda cumplirse.'
	},
	'check-never-fails': {
		what: ({ which }) => `Esta revisión nunca falla, aunque algunos sorteos deben fallarla: ${which}.`,
		fix: () => 'Cambie el rango que se nombra aquí, o quite este resultado de la lista.'
	},
	'check-never-known': {
		what: ({ which }) => `Esta revisión no se puede juzgar en ningún sorteo: ${which}.`,
		fix: () => 'Ponga el número que falta.'
	},
	'plan-refused': {
		what: () => 'Los planes de este tipo no se calculan aquí.',
		fix: () => 'La línea no debe tocar un borde, y la distancia lateral va a lo largo del borde.'
	},
	lopsided: {
		what: ({ share }) => `En ${share} de los sorteos el plan pasa. Así se puede adivinar la decisión.`,
		fix: () => 'Deje que cerca de la mitad de los sorteos falle una revisión.'
	},
	'constraint-never-met': {
		what: ({ of, least, greatest }) => `Ningún sorteo cumple esta regla. ${of}: los sorteos dan de ${least} a ${greatest}.`,
		fix: () => 'Cambie la regla, o los rangos de los que depende.'
	},
	'constraints-clash': {
		what: ({ of, other }) => `Dos reglas chocan. Cada una se puede cumplir, pero nunca las dos: ${of}, y ${other}.`,
		fix: () => 'Afloje una de las dos, o quítela.'
	},
	'constraints-never-together': {
		what: ({ count }) => `Cada par de las ${count} reglas se puede cumplir, pero nunca todas.`,
		fix: () => 'Afloje una regla tras otra, hasta que haya sorteos que quepan.'
	},
	'constraint-never-binds': {
		what: ({ of }) => `Cada sorteo ya cumple esta regla: ${of}.`,
		fix: () => 'Quítela, o hágala más estricta.'
	},
	'ask-without-value': {
		what: ({ why }) => `En algunos sorteos esta pregunta no tiene respuesta. ${why}`,
		fix: () => 'Ponga lo que falta, o pregunte otra cosa.'
	},
	'often-not-stated': {
		what: ({ share }) => `En ${share} de los sorteos la etiqueta no permite dar la respuesta.`,
		fix: () => 'Reduzca la masa o la caída libre, o amplíe lo que vale para la etiqueta.'
	},
	'ask-without-slips': {
		what: () => 'Ningún error conocido cambia esta respuesta. No dice nada de lo que sale mal.',
		fix: () => 'Pregunte un número con más pasos, o deje variar más números.'
	},
	'narrow-answers': {
		what: ({ steps }) => `Las respuestas correctas están muy juntas: la mitad cabe en ${steps} pasos.`,
		fix: () => 'Amplíe el rango que se nombra aquí.'
	},
	'off-answer-grid': {
		what: ({ share }) => `En ${share} de los sorteos la respuesta correcta cae entre dos pasos.`,
		fix: () => 'Use aquí un paso más grande, o un paso más fino para la respuesta.'
	},
	'slips-alike': {
		what: ({ first, second, share }) => `Dos números no se distinguen en ${share} de los intentos: ${first}, y ${second}.`,
		fix: () => 'Cambie o amplíe el rango que se nombra aquí, para que los dos se separen.'
	},
	'declared-but-not-equal': {
		what: ({ first, second }) => `Estos errores figuran como iguales, pero no lo son: ${first}, y ${second}.`,
		fix: () => 'Quite el par.'
	},
	'slip-without-effect': {
		what: ({ first }) => `Este error nunca cambia el número: ${first}.`,
		fix: () => 'Deje variar el número del que trata, si quiere notarlo.'
	},
	'impossible-site': {
		what: ({ why }) => `Esto no puede ser: ${why}`,
		fix: ({ given }) => `Cambie este número: ${given}.`
	},
	'unusual-value': {
		what: ({ given, value, least, greatest }) => `${given}: ${value} está lejos de lo que se usa en el trabajo, de ${least} a ${greatest}.`,
		fix: () => 'Revise el número y su unidad.'
	},
	'one-value': {
		what: ({ given }) => `Este rango tiene un solo valor: ${given}.`,
		fix: () => 'Amplíelo, o déjelo en una sola cifra.'
	},
	'drawn-twice': {
		what: ({ given }) => `Dos sorteos ponen el mismo número: ${given}. Solo cuenta el último.`,
		fix: () => 'Quite uno de los dos.'
	},
	'decoy-counts': {
		what: ({ given }) => `Un cálculo usa este número, así que no confunde a nadie: ${given}.`,
		fix: () => 'Use otro número que no esté en ningún cálculo.'
	},
	'decoy-alike': {
		what: ({ which, share }) => `En ${share} de los sorteos este número es igual a otro: ${which}.`,
		fix: () => 'Dele una cifra que el otro nunca tenga.'
	},
	'fact-untold': {
		what: ({ which }) => `La historia no tiene frase para este estado: ${which}.`,
		fix: () => 'Escriba una. Déjela vacía si el dibujo dice lo suficiente.'
	},
	'state-never-drawn': {
		what: ({ which }) => `Ningún sorteo tiene este estado: ${which}. Todo plan con él se descarta.`,
		fix: () => 'Quite el estado, o permita un resultado que vaya con él.'
	},
	'slot-without-value': {
		what: ({ which }) => `Algunos sorteos no tienen con qué llenar esto: ${which}.`,
		fix: () => 'Ponga ese número, o quítelo del texto.'
	},
	'slot-in-one-language': {
		what: ({ which }) => `Solo uno de los idiomas dice esto: ${which}.`,
		fix: () => 'Dígalo en los dos.'
	},
	'name-untold': {
		what: () => 'Ningún texto nombra a la persona.',
		fix: () => 'Ponga el nombre de la persona en las dos primeras líneas.'
	},
	untranslated: {
		what: () => 'Este texto es igual en los dos idiomas.',
		fix: () => 'Escríbalo también en el otro idioma.'
	},
	'name-twice': {
		what: ({ name }) => `Este nombre está dos veces: ${name}.`,
		fix: () => 'Quite uno de los dos.'
	},
	'long-sentence': {
		what: ({ words }) => `Una frase tiene ${words} palabras. Hasta 20 se leen bien.`,
		fix: () => 'Haga de ella dos frases.'
	},
	'long-sentences': {
		what: ({ mean }) => `Las frases tienen ${mean} palabras en promedio. Hasta 15 se leen bien.`,
		fix: () => 'Haga dos frases de cada una larga.'
	},
	'hard-words': {
		what: () => 'La historia es difícil de leer.',
		fix: () => 'Use palabras más cortas y frases más cortas.'
	}
};
