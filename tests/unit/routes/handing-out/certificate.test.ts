/** The certificate as it is printed, read back from the PDF. What must stand on it: the laws' lists, reference "rules and limits", section 6.1. */
import { describe, expect, it } from 'vitest';
import { printCertificate, type PrintedCertificate } from '#lib/paper/index.ts';
import { personRecord, type Entry } from '#lib/records/index.ts';
import { entryHash } from '#lib/server/records/chain.ts';
import type { CertificateFacts } from '#lib/server/index.ts';
import { messages, recordMessages } from '#lib/text/index.ts';
import { certificateSheet, groupedCode, verifyAddress } from '../../../../src/routes/handing-out/certificate-sheet.ts';
import { packed, readPdf, type ReadPdf } from '../../../support/pdf-text.ts';
import { completedEntry, handsOnEntry, priorTrainingEntry } from '../../../support/record-entries.ts';

const PERSON = '11111111-1111-4111-8111-111111111111';
const ORIGIN = 'https://training.example.org';
const CODE = 'AnUmI3AKgO6VyGgTFxH-Jg';
const AT = new Date('2026-11-25T09:00:00.000Z');
const LAYOUTS = (['a4', 'letter'] as const).flatMap((size) => (['en', 'es'] as const).map((language) => [size, language] as const));

const COMPLETED = completedEntry(PERSON, '2026-03-03', {
	asked: 24,
	right: 23,
	unsafe: 1,
	tries: 2,
	zone: 'America/Denver',
	passRule: { id: 'staged', version: 1, provisional: true, rates: [{ right: 0.9, firstTry: 0.6, allowedTries: 0.86 }] },
	supervised: { trainer: PERSON, named: 'a'.repeat(64), identified: 'company card', place: 'Office 2' },
	validity: { months: 24, by: 'employer', until: '2028-03-03' }
});

function factsOf(entries: readonly Entry[], more: Partial<CertificateFacts> = {}): CertificateFacts {
	const record = personRecord(entries.map((entry, i) => ({ seq: i + 1207, hash: entryHash(i + 1, '0'.repeat(64), JSON.stringify(entry)), entry })));
	const [training] = record.trainings;
	if (training === undefined) throw new Error('no record');
	return {
		code: CODE,
		training,
		standing: 'valid',
		until: '2028-03-03',
		revokedOn: null,
		today: '2026-11-25',
		rules: COMPLETED.rules,
		employer: 'Norrfjord Inspection',
		person: { name: 'Wen Abara', number: 'D-203' },
		before: null,
		present: 'Tomás Herrero',
		signer: 'Helle Brandt',
		signedOn: '2026-03-04',
		head: { seq: 1311, hash: 'f'.repeat(64) },
		...more
	};
}

async function sheetOf(facts: CertificateFacts, language: 'en' | 'es' = 'en'): Promise<PrintedCertificate> {
	return certificateSheet(facts, { m: await messages(language), record: await recordMessages(language), language }, ORIGIN);
}

async function printed(sheet: PrintedCertificate, size: 'a4' | 'letter' = 'a4', language: 'en' | 'es' = 'en'): Promise<ReadPdf> {
	return readPdf(await printCertificate({ size, language, title: sheet.heading, at: AT, compress: false }, sheet));
}

const textOf = (pdf: ReadPdf): string => packed(pdf.pages.map(({ runs }) => runs.join(' ')).join(' '));

const WHOLE = factsOf([COMPLETED, handsOnEntry(PERSON, '2026-03-04')]);

describe('a certificate', () => {
	it.each(LAYOUTS)('on %s in %s says all that law asks, on one page, with its fonts in it', async (size, language) => {
		const sheet = await sheetOf(WHOLE, language);
		const pdf = await printed(sheet, size, language);
		expect(pdf.pages).toHaveLength(1);
		const text = textOf(pdf);
		const { certificate: c } = await recordMessages(language);
		const m = await messages(language);
		const said = [
			// 29 CFR 1926.503(b): name or other identity, dates, signature of trainer or employer.
			'Wen Abara',
			'D-203',
			'Helle Brandt',
			c.capacities['competent-person'],
			// WAC 296-880-10015(5): subjects, name of the competent person; DESIGN, section 8: scope, and what was not covered.
			...Object.values(m.lessons.of).map(({ title }) => title),
			m.lessons.course.title,
			m.lessons.course.scope,
			...Object.values(m.lessons.course.notCovered),
			// The employer, the rules, the check with its pass rule and rates, who was present, how long it is valid and by what.
			'Norrfjord Inspection',
			'OSHA Technical Manual',
			c.result(COMPLETED),
			m.people.passRules.staged,
			c.marks.provisional,
			c.rate({ right: '90', passes: '86' }),
			'Tomás Herrero',
			'company card',
			'Office 2',
			'Training yard, bay 2',
			c.by.employer,
			c.basis.own,
			// Issue "completion records", and DESIGN, section 8: place in the chain, its head, what is claimed and what is not.
			new Intl.NumberFormat(language).format(1207),
			new Intl.NumberFormat(language).format(1311),
			WHOLE.training.hash,
			'f'.repeat(64),
			c.claim,
			c.noProof,
			m.verdict.caution,
			groupedCode(CODE),
			`${ORIGIN}/v`
		];
		expect(said.filter((one) => !text.includes(packed(one)))).toEqual([]);
		expect(text).not.toMatch(/undefined|NaN|\[object|\ufffd/);
		const fonts = [...pdf.raw.matchAll(/\/Type \/FontDescriptor[\s\S]*?endobj/g)].map(([one]) => one);
		expect(fonts.length).toBeGreaterThan(1);
		expect(fonts.filter((one) => !/\/FontFile\d? /.test(one))).toEqual([]);
		// Read by screen readers: tagged, in its language, with its title.
		expect(pdf.raw).toMatch(/\/StructTreeRoot/);
		expect(pdf.raw).toContain(`/Lang (${language})`);
		// The paper: ISO 216, ANSI/ASME Y14.1; from memory.
		expect(pdf.raw).toContain(size === 'a4' ? '/MediaBox [0 0 595.28 841.89]' : '/MediaBox [0 0 612 792]');
	});

	// O. Reg. 297/13, ss. 7, 8 and 10 (Ontario): an approved programme. OHS Code, s. 141 (Alberta): practice. By way of shared/records/law.json.
	it.each([
		['ca-ontario', 'approved-programme'],
		['ca-alberta', 'practice']
	] as const)('says under the law of %s what it is no proof of, on every paper, on one page', async (rules, what) => {
		const facts = factsOf([{ ...COMPLETED, rules }, handsOnEntry(PERSON, '2026-03-04')], { revokedOn: '2026-11-20', standing: 'revoked' });
		for (const [size, language] of LAYOUTS) {
			const { recordLaw } = await recordMessages(language);
			const pdf = await printed(await sheetOf(facts, language), size, language);
			expect(pdf.pages).toHaveLength(1);
			expect(textOf(pdf)).toContain(packed(recordLaw.notProofOf[what]));
		}
	});

	it('is the same, byte for byte, whenever it is made of the same', async () => {
		const sheet = await sheetOf(WHOLE);
		const options = { size: 'a4', language: 'en', title: 'x', at: AT } as const;
		const [one, other] = [await printCertificate(options, sheet), await printCertificate(options, sheet)];
		expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
	});

	it('is called a record of theory training until the hands-on part is signed, and says so across the sheet', async () => {
		const sheet = await sheetOf(factsOf([COMPLETED], { signer: null, signedOn: null, standing: 'theory-only' }));
		const text = textOf(await printed(sheet));
		expect(sheet.heading).toBe('Record of theory training');
		expect(text).toContain('THEORYONLY');
		expect(text).toContain(packed('Not signed yet'));
		expect(text).not.toContain(packed('Certificate of training'));
		expect(textOf(await printed(await sheetOf(WHOLE)))).not.toContain('THEORYONLY');
	});

	it('of a record that was taken back, or is over, says so in large words across the sheet', async () => {
		const revoked = textOf(await printed(await sheetOf({ ...WHOLE, standing: 'revoked', revokedOn: '2026-11-24' })));
		expect(revoked).toContain('REVOKED');
		expect(revoked).toContain(packed('November 24, 2026'));
		expect(textOf(await printed(await sheetOf({ ...WHOLE, standing: 'expired' })))).toContain('EXPIRED');
		expect(textOf(await printed(await sheetOf(WHOLE)))).not.toMatch(/REVOKED|EXPIRED/);
	});

	it('of prior training names it, the day on which it was judged adequate, and that it was the employer who did', async () => {
		const entry = priorTrainingEntry(PERSON, '2026-11-10');
		const text = textOf(await printed(await sheetOf(factsOf([entry], { present: null, signer: 'Orla Finch', until: '9999-12-31' }))));
		// 29 CFR 1926.503(b)(1): the date on which the employer found it adequate.
		for (const said of ['Record of training from before', 'Two days with the union', 'November 10, 2026', 'Orla Finch', 'employer', 'No fixed end']) expect(text).toContain(packed(said));
	});

	it('of prior training names the approved provider and programme where the proof does, on one page however long all of it is', async () => {
		const entry = priorTrainingEntry(PERSON, '2026-11-10');
		const approved = { provider: 'Quay Street Training', programme: '14-337' };
		const facts = (record: Partial<typeof entry.record>) => factsOf([{ ...entry, record: { ...entry.record, ...record } }], { present: null, signer: 'Orla Finch', until: '9999-12-31' });
		// O. Reg. 297/13, ss. 7, 8, 10: approved provider and programme; from memory.
		const text = textOf(await printed(await sheetOf(facts({ approved }))));
		for (const said of ['Approved provider', approved.provider, 'Approved programme', approved.programme]) expect(text).toContain(packed(said));
		expect(textOf(await printed(await sheetOf(facts({}))))).not.toContain(packed('Approved'));
		const words = (length: number) => 'Two days on the yard with hooks and slings. '.repeat(30).slice(0, length).trim();
		for (const [size, language] of LAYOUTS) {
			const pdf = await printed(await sheetOf(facts({ training: words(1000), approved: { provider: words(200), programme: 'W'.repeat(200) } }), language), size, language);
			expect(pdf.pages).toHaveLength(1);
			expect(textOf(pdf)).toContain('W'.repeat(200));
		}
	});

	it('holds on one page whatever the names are', async () => {
		const long = ['W'.repeat(200), 'Maximiliana von Hohenzollern-Wolfenbüttel '.repeat(5).slice(0, 200)];
		for (const [i, [size, language]] of LAYOUTS.entries()) {
			for (const name of long.slice(i % 2, (i % 2) + 1)) {
				const pdf = await printed(await sheetOf({ ...WHOLE, person: { name, number: '9'.repeat(40) }, before: { name, number: null }, signer: name, employer: name, present: name }, language), size, language);
				expect(pdf.pages).toHaveLength(1);
				// Nothing lies under the edge of the paper: the last line of the foot stands above it.
				const heights = [...(pdf.pages[0]?.operators.matchAll(/1 0 0 1 [\d.]+ (-?[\d.]+) Tm/g) ?? [])].map(([, y]) => Number(y));
				expect(Math.min(...heights)).toBeGreaterThan(20);
				expect(textOf(pdf)).toContain(packed(name));
			}
		}
	});

	it('says that an identity is erased', async () => {
		const text = textOf(await printed(await sheetOf({ ...WHOLE, person: null, signer: null })));
		expect(text).toContain(packed('Identity erased'));
		expect(text).not.toContain('Wen');
	});

	it('has a QR code that leads to the page of its code, and nothing else', async () => {
		const { qr } = await sheetOf(WHOLE);
		expect(qr.label).toContain(verifyAddress(ORIGIN, CODE));
		expect(verifyAddress(ORIGIN, CODE)).toBe(`${ORIGIN}/v/${CODE}`);
		// ISO/IEC 18004, from memory: version 4 has 33 modules, and the quiet zone four on each side.
		expect(qr.size).toBeLessThanOrEqual(33 + 8);
	});

	it.each([
		['Greek', 'Γεώργιος Παπαδόπουλος'],
		['Cyrillic', 'Владимир Ћирић'],
		['Hebrew', 'נאדיה'],
		['Arabic', 'محمد'],
		['Devanagari', 'प्रिया']
	])('prints %s letters from a font in the file, and no box in their place', async (_, name) => {
		const before = await printed(await sheetOf(WHOLE));
		const pdf = await printed(await sheetOf({ ...WHOLE, person: { name, number: null } }));
		expect(pdf.raw).toMatch(/\/BaseFont \/[A-Z]{6}\+NotoSans|\/BaseFont \/[A-Z]{6}\+Overpass/);
		// Each letter stands in a run of text: boxes for letters that no font has are drawn by lines.
		const lines = (one: ReadPdf): number => one.pages[0]?.operators.match(/ l\n/g)?.length ?? 0;
		expect(lines(pdf)).toBe(lines(before));
	});
});
