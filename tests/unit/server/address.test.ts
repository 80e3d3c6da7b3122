import { describe, expect, it } from 'vitest';
import { publicAddress } from '#lib/server/index.ts';

const ASKED = new URL('http://127.0.0.1:3000/v/x?y=1');

describe('the address of the server', () => {
	it('is the one that is set, else the one that was asked', () => {
		expect(publicAddress({}, ASKED)).toBe('http://127.0.0.1:3000');
		expect(publicAddress({ UNDERFOOT_ADDRESS: '' }, ASKED)).toBe('http://127.0.0.1:3000');
		expect(publicAddress({ UNDERFOOT_ADDRESS: 'https://training.example.org' }, ASKED)).toBe('https://training.example.org');
		expect(publicAddress({ UNDERFOOT_ADDRESS: 'https://training.example.org/' }, ASKED)).toBe('https://training.example.org');
	});

	it.each(['training.example.org', 'https://training.example.org/underfoot', 'ftp://training.example.org', 'https://'])('%s is none, and it is said what is one', (set) => {
		expect(() => publicAddress({ UNDERFOOT_ADDRESS: set }, ASKED)).toThrow('UNDERFOOT_ADDRESS must be the address of the start page');
	});
});
