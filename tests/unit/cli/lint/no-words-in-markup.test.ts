import { noWordsInMarkup } from '../../../../src/cli/lint/no-words-in-markup.ts';
import { svelteTester } from './rule-tester.ts';

const page = (code: string) => ({ code, filename: 'page.svelte' });
const wrong = (code: string) => ({ ...page(code), errors: [{ messageId: 'words' }] });

svelteTester.run('no-words-in-markup', noWordsInMarkup, {
	valid: [
		page('<p>{t.problem.title}</p>'),
		page('<p>{t.problem.short({ by })}</p>'),
		page('<p>{text("problem.title")} → 1.40&nbsp;/ 2</p>'),
		page('<button type="submit" class="main wide" aria-label={t.check}>{t.check}</button>'),
		page('<button class={wide ? "wide" : "narrow"} aria-describedby="why">×</button>'),
		page('<script lang="ts">const name = "tape";</script><style>p { color: red }</style>'),
		page('<meta name="viewport" content="width=device-width" />')
	],
	invalid: [
		wrong('<p>Tie off</p>'),
		wrong('<button>{held ? "Tie off" : t.refuse}</button>'),
		wrong('<p>{`short by ${by}`}</p>'),
		wrong('<p>{by + " m"}</p>'),
		wrong('<button aria-label="Play the fall">▶</button>'),
		wrong('<img src="/a.svg" alt="A deck" />'),
		wrong('<input placeholder={"Free fall"} />'),
		wrong('<svelte:head><title>Underfoot</title></svelte:head>'),
		wrong('<svg><text x="1">free fall</text></svg>'),
		wrong('<meta name="description" content="A course" />')
	]
});
