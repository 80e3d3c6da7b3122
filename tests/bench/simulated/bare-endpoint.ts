/**
 * What storing an answer costs at least: a plain HTTP server that makes one durable insert for each POST, of a
 * row like an answer's, into the same table on the same database, by one ready statement. It reads, draws and
 * grades nothing. Run as a process of its own: `node bare-endpoint.ts FILE`; prints its address.
 */
import { randomUUID } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { openDatabase } from '#lib/server/index.ts';
import type { NewAttempt } from '#lib/server/db/attempts.ts';

const file = process.argv[2];
if (file === undefined) throw new Error('name the file of the database');
const database = await openDatabase(`file:${file}`);
const now = new Date().toISOString();
const guest = randomUUID();
await database.insertInto('guest').values({ id: guest, token_hash: 'bare', created_at: now }).execute();

/** A row of the size that answers have; the sent body stands for the answers. */
function row(body: string): NewAttempt {
	return {
		id: randomUUID(),
		guest_id: guest,
		scenario_id: 'bridge-bearing',
		scenario_version: 1,
		draw_version: 1,
		slip_set_version: 1,
		engine_version: '1',
		seed: '1',
		accepted_try: 0,
		plan: 'p'.repeat(900),
		answers: body,
		result: 'r'.repeat(1400),
		language: 'en',
		units: 'metric',
		created_at: now
	};
}

const query = database.insertInto('attempt').values(row('')).returning('id').compile();
const columns = Object.keys(row('')) as readonly (keyof NewAttempt)[];

const server = createServer((request, response) => {
	const parts: Buffer[] = [];
	request.on('data', (part: Buffer) => parts.push(part));
	request.on('end', () => {
		const values = row(Buffer.concat(parts).toString('utf8'));
		const insert = { ...query, parameters: columns.map((column) => values[column]) };
		void database.executeQuery<{ id: string }>(insert).then(({ rows }) => {
			const body = JSON.stringify({ stored: rows[0]?.id });
			response.writeHead(201, { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) });
			response.end(body);
		});
	});
});
server.listen(0, '127.0.0.1', () => {
	const { port } = server.address() as AddressInfo;
	console.log(`Bare endpoint is at http://127.0.0.1:${port}`);
});
process.once('SIGTERM', () => {
	server.closeAllConnections();
	server.close(() => void database.destroy().then(() => process.exit(0)));
});
